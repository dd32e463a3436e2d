/** Chance that is the same at every run: mulberry32, a 32-bit generator with full period (T. Ettinger, public domain). */
export class SeededRandom {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, not including, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  }

  /** A whole number, both ends included. */
  integer(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<Item>(items: readonly Item[]): Item {
    const item = items[this.integer(0, items.length - 1)];
    if (item === undefined) throw new Error("nothing to pick from");
    return item;
  }

  pickWeighted<Item>(items: readonly Item[], weightOf: (item: Item) => number): Item {
    const total = items.reduce((sum, item) => sum + weightOf(item), 0);
    let left = this.next() * total;
    for (const item of items) {
      left -= weightOf(item);
      if (left < 0) return item;
    }
    return this.pick(items);
  }
}
