/** Something with a rank: true when `one` belongs before `other`. Must be a total order. */
export type Before<Item> = (one: Item, other: Item) => boolean;

/** Keeps the best `limit` of the items offered, in a heap with the worst kept item on top. */
export class TopHits<Item> {
  readonly #before: Before<Item>;
  readonly #limit: number;
  readonly #heap: Item[] = [];

  constructor(limit: number, before: Before<Item>) {
    this.#limit = limit;
    this.#before = before;
  }

  offer(item: Item): void {
    if (this.#heap.length < this.#limit) {
      this.#heap.push(item);
      this.#rise(this.#heap.length - 1);
    } else if (this.#limit > 0 && this.#before(item, this.#heap[0] as Item)) {
      this.#heap[0] = item;
      this.#sink();
    }
  }

  /** The worst item kept once the limit is reached: what is not before it need not be offered. */
  get worstKept(): Item | undefined {
    return this.#heap.length < this.#limit ? undefined : this.#heap[0];
  }

  /** The items kept, best first. */
  sorted(): Item[] {
    return [...this.#heap].sort((one, other) => (this.#before(one, other) ? -1 : 1));
  }

  #rise(from: number): void {
    const heap = this.#heap;
    for (let at = from; at > 0; ) {
      const parent = (at - 1) >> 1;
      if (!this.#before(heap[parent] as Item, heap[at] as Item)) {
        return;
      }
      this.#swap(at, parent);
      at = parent;
    }
  }

  #sink(): void {
    const heap = this.#heap;
    for (let at = 0; ; ) {
      const left = 2 * at + 1;
      let worst = at;
      for (const child of [left, left + 1]) {
        if (child < heap.length && this.#before(heap[worst] as Item, heap[child] as Item)) {
          worst = child;
        }
      }
      if (worst === at) {
        return;
      }
      this.#swap(at, worst);
      at = worst;
    }
  }

  #swap(one: number, other: number): void {
    const item = this.#heap[one] as Item;
    this.#heap[one] = this.#heap[other] as Item;
    this.#heap[other] = item;
  }
}
