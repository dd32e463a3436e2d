import { editDistance } from "./edit-distance.ts";
import { grownInt32 } from "./growable.ts";
import { stemWord } from "./stem-word.ts";

/** What the analysis of a query needs to know about the words that are in use. */
export interface WordsInUse {
  /** In how many documents the term stands; 0 when in none. */
  documentFrequency(term: string): number;
  /** Other terms in use with the stem of this one. */
  inflections(term: string): readonly string[];
  /** Terms in use that begin with `prefix` and are longer, most frequent first. */
  completions(prefix: string, limit: number): readonly string[];
  /** Terms in use within `limit` edits, with the distance. */
  neighbours(word: string, limit: number): readonly { readonly term: string; readonly distance: number }[];
}

const tailLimit = 2048;

/**
 * The terms of an index: number of each, document frequencies, stems, and the look-ups a query needs. Term numbers
 * never change; a term whose documents are all gone stays with frequency 0 until the index is compacted.
 */
export class Vocabulary implements WordsInUse {
  readonly #numbers = new Map<string, number>();
  readonly #terms: string[] = [];
  /** The newest term of each stem, and from each term the one before it with the same stem; -1 ends it. */
  readonly #stemHeads = new Map<string, number>();
  #nextOfStem = new Int32Array(1024);
  #frequencies = new Int32Array(1024);
  #letters = new Int32Array(1024);
  /** Terms numbered below `#sortedCount`, in order of spelling; the newer ones are looked through one by one. */
  #sorted: string[] = [];
  #sortedCount = 0;
  #stemmedCount = 0;

  get size(): number {
    return this.#terms.length;
  }

  get terms(): readonly string[] {
    return this.#terms;
  }

  /** The number of a term, or undefined when it was never seen. */
  numberOf(term: string): number | undefined {
    return this.#numbers.get(term);
  }

  termOf(number: number): string {
    return this.#terms[number] ?? "";
  }

  /** The number of a term, newly given if it has none. */
  intern(term: string): number {
    const known = this.#numbers.get(term);
    if (known !== undefined) {
      return known;
    }
    const number = this.#terms.length;
    this.#terms.push(term);
    this.#numbers.set(term, number);
    this.#frequencies = grownInt32(this.#frequencies, number + 1);
    this.#letters = grownInt32(this.#letters, number + 1);
    this.#letters[number] = letterSet(term);
    return number;
  }

  frequencyOf(number: number): number {
    return this.#frequencies[number] ?? 0;
  }

  changeFrequency(number: number, by: number): void {
    this.#frequencies[number] = this.frequencyOf(number) + by;
  }

  documentFrequency(term: string): number {
    const number = this.#numbers.get(term);
    return number === undefined ? 0 : this.frequencyOf(number);
  }

  inflections(term: string): readonly string[] {
    this.#stemNewTerms();
    const found: string[] = [];
    let number = this.#stemHeads.get(stemWord(term)) ?? -1;
    for (; number >= 0; number = this.#nextOfStem[number] as number) {
      const other = this.termOf(number);
      if (other !== term && this.frequencyOf(number) > 0) {
        found.push(other);
      }
    }
    // In an order that does not depend on how the index grew, so that sums of weights come out the same.
    return found.sort();
  }

  completions(prefix: string, limit: number): readonly string[] {
    this.#sortNewTerms();
    const found: string[] = [];
    for (let at = this.#firstFrom(prefix); at < this.#sorted.length; at++) {
      const term = this.#sorted[at] as string;
      if (!term.startsWith(prefix)) {
        break;
      }
      found.push(term);
    }
    for (let number = this.#sortedCount; number < this.#terms.length; number++) {
      const term = this.termOf(number);
      if (term.startsWith(prefix)) {
        found.push(term);
      }
    }
    return found
      .filter((term) => term !== prefix && this.documentFrequency(term) > 0)
      .sort(
        (one, other) => this.documentFrequency(other) - this.documentFrequency(one) || (one < other ? -1 : 1),
      )
      .slice(0, limit);
  }

  neighbours(word: string, limit: number): readonly { readonly term: string; readonly distance: number }[] {
    const found: { term: string; distance: number }[] = [];
    const wanted = letterSet(word);
    for (let number = 0; number < this.#terms.length; number++) {
      // One edit changes at most two letters of the set: this alone rejects nearly every term.
      if (
        countBits(wanted ^ (this.#letters[number] as number)) > 2 * limit ||
        this.#frequencies[number] === 0
      ) {
        continue;
      }
      const term = this.#terms[number] as string;
      const distance = editDistance(word, term, limit);
      if (distance > 0 && distance <= limit) {
        found.push({ term, distance });
      }
    }
    return found;
  }

  /** Does now what the first query would otherwise wait for: stems and the order of spelling. */
  prepare(): void {
    this.#stemNewTerms();
    this.#sortNewTerms();
  }

  #stemNewTerms(): void {
    for (; this.#stemmedCount < this.#terms.length; this.#stemmedCount++) {
      const stem = stemWord(this.termOf(this.#stemmedCount));
      this.#nextOfStem = grownInt32(this.#nextOfStem, this.#stemmedCount + 1);
      this.#nextOfStem[this.#stemmedCount] = this.#stemHeads.get(stem) ?? -1;
      this.#stemHeads.set(stem, this.#stemmedCount);
    }
  }

  #sortNewTerms(): void {
    if (this.#terms.length - this.#sortedCount > tailLimit || this.#sortedCount === 0) {
      this.#sorted = [...this.#terms].sort((one, other) => (one < other ? -1 : 1));
      this.#sortedCount = this.#terms.length;
    }
  }

  #firstFrom(prefix: string): number {
    let low = 0;
    let high = this.#sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#sorted[middle] as string) < prefix) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}

/** Which letters a word has, as 32 bits; letters beyond a to z share the upper bits. */
function letterSet(word: string): number {
  let set = 0;
  for (let at = 0; at < word.length; at++) {
    const code = word.charCodeAt(at) - 97;
    set |= 1 << (code >= 0 && code < 26 ? code : 26 + (word.charCodeAt(at) % 6));
  }
  return set;
}

function countBits(value: number): number {
  let bits = value - ((value >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return Math.imul((bits + (bits >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
