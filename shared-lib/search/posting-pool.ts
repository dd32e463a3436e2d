import { grownInt32 } from "./growable.ts";

/**
 * Where each term stands in the documents that came lately: per term a run of (document, counts) pairs in one shared
 * array, documents ascending.
 * `counts` packs how often the term stands in each of eight fields, 4 bits a field, 15 meaning "15 or more".
 * A run that is full moves to a place twice as long; the old place is kept for a run of that size.
 */
export class PostingPool {
  #pairs = new Int32Array(0);
  #used = 0;
  #starts = new Int32Array(0);
  #counts = new Int32Array(0);
  #capacities = new Int32Array(0);
  readonly #free = new Map<number, number[]>();
  #size = 0;

  get pairs(): Int32Array {
    return this.#pairs;
  }

  /** Index into `pairs` of a term's first pair. */
  startOf(term: number): number {
    return this.#starts[term] ?? 0;
  }

  /** Number of pairs of a term. */
  countOf(term: number): number {
    return this.#counts[term] ?? 0;
  }

  /** Number of postings of all terms. */
  get size(): number {
    return this.#size;
  }

  /** Bytes held by the typed arrays. */
  get bytes(): number {
    return 4 * (this.#pairs.length + this.#starts.length + this.#counts.length + this.#capacities.length);
  }

  /** Appends a posting; `document` is greater than every document of the term so far. */
  append(term: number, document: number, counts: number): void {
    this.#starts = grownInt32(this.#starts, term + 1);
    this.#counts = grownInt32(this.#counts, term + 1);
    this.#capacities = grownInt32(this.#capacities, term + 1);
    const count = this.#counts[term] as number;
    if (count === this.#capacities[term]) {
      this.#move(term, count);
    }
    const at = (this.#starts[term] as number) + 2 * count;
    this.#pairs[at] = document;
    this.#pairs[at + 1] = counts;
    this.#counts[term] = count + 1;
    this.#size += 1;
  }

  #move(term: number, count: number): void {
    const capacity = Math.max(2, 2 ** Math.ceil(Math.log2(count + 1)));
    const from = this.#starts[term] as number;
    const reused = this.#free.get(capacity)?.pop();
    const to = reused ?? this.#used;
    if (reused === undefined) {
      this.#used += 2 * capacity;
      this.#pairs = grownInt32(this.#pairs, this.#used);
    }
    this.#pairs.copyWithin(to, from, from + 2 * count);
    const oldCapacity = this.#capacities[term] as number;
    if (oldCapacity > 0) {
      const places = this.#free.get(oldCapacity) ?? [];
      places.push(from);
      this.#free.set(oldCapacity, places);
    }
    this.#starts[term] = to;
    this.#capacities[term] = capacity;
  }
}
