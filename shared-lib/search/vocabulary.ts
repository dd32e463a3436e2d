import type { ByteReader, ByteWriter } from "./byte-file.ts";
import { editDistance } from "./edit-distance.ts";
import { grownInt32 } from "./growable.ts";
import { stemWord } from "./stem-word.ts";
import { StringTable } from "./string-table.ts";

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
/** After every character that a term may hold. */
const lastCharacter = "\uffff";
const hasDigit = /\p{N}/u;

/**
 * The terms of an index: number of each, document frequencies, stems, and the look-ups a query needs. Term numbers
 * never change; a term whose documents are all gone stays with frequency 0 until the index is compacted.
 */
export class Vocabulary implements WordsInUse {
  #terms = new StringTable();
  /** The newest term of each stem, and from each term the one before it with the same stem; -1 ends it. */
  readonly #stemHeads = new Map<string, number>();
  #nextOfStem = new Int32Array(1024);
  #frequencies = new Int32Array(1024);
  #letters = new Int32Array(1024);
  /** The terms numbered below its length, in order of spelling; the newer ones are looked through one by one. */
  #sorted = new Int32Array(0);
  #stemmedCount = 0;

  get size(): number {
    return this.#terms.size;
  }

  /** Bytes held by typed arrays. */
  get byteLength(): number {
    const numbers = this.#frequencies.length + this.#letters.length + this.#nextOfStem.length;
    return this.#terms.byteLength + 4 * (numbers + this.#sorted.length);
  }

  /** The number of a term, or undefined when it was never seen. */
  numberOf(term: string): number | undefined {
    return this.#terms.numberOf(term);
  }

  termOf(number: number): string {
    return this.#terms.textOf(number);
  }

  /** The number of a term, newly given if it has none. */
  intern(term: string): number {
    const before = this.#terms.size;
    const number = this.#terms.intern(term);
    if (number === before) {
      this.#frequencies = grownInt32(this.#frequencies, number + 1);
      this.#letters = grownInt32(this.#letters, number + 1);
      this.#letters[number] = letterSet(term);
    }
    return number;
  }

  frequencyOf(number: number): number {
    return this.#frequencies[number] ?? 0;
  }

  changeFrequency(number: number, by: number): void {
    this.#frequencies[number] = this.frequencyOf(number) + by;
  }

  documentFrequency(term: string): number {
    const number = this.#terms.numberOf(term);
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
    const best = new MostFrequent(limit);
    const offer = (number: number): void => {
      const frequency = this.frequencyOf(number);
      if (frequency > 0 && best.takes(frequency)) {
        const term = this.termOf(number);
        if (term !== prefix) best.offer(term, frequency);
      }
    };
    const end = this.#firstFrom(prefix + lastCharacter);
    for (let at = this.#firstFrom(prefix); at < end; at++) {
      offer(this.#sorted[at] as number);
    }
    for (let number = this.#sorted.length; number < this.size; number++) {
      if (this.termOf(number).startsWith(prefix)) offer(number);
    }
    return best.terms;
  }

  neighbours(word: string, limit: number): readonly { readonly term: string; readonly distance: number }[] {
    const found: { term: string; distance: number }[] = [];
    const wanted = letterSet(word);
    for (let number = 0; number < this.size; number++) {
      // One edit changes at most two letters of the set: this alone rejects nearly every term.
      if (
        countBits(wanted ^ (this.#letters[number] as number)) > 2 * limit ||
        this.#frequencies[number] === 0
      ) {
        continue;
      }
      const term = this.termOf(number);
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

  /** Everything but the stems, which are soon found again. */
  write(writer: ByteWriter): void {
    this.prepare();
    this.#terms.write(writer);
    writer.bytes(this.#frequencies.subarray(0, this.size));
    writer.bytes(this.#letters.subarray(0, this.size));
    writer.bytes(this.#sorted);
  }

  static read(reader: ByteReader): Vocabulary {
    const vocabulary = new Vocabulary();
    vocabulary.#terms = StringTable.read(reader);
    vocabulary.#frequencies = reader.int32();
    vocabulary.#letters = reader.int32();
    vocabulary.#sorted = reader.int32();
    return vocabulary;
  }

  trim(): void {
    this.#terms.trim();
  }

  #stemNewTerms(): void {
    this.#nextOfStem = grownInt32(this.#nextOfStem, this.size);
    for (; this.#stemmedCount < this.size; this.#stemmedCount++) {
      const term = this.termOf(this.#stemmedCount);
      // Numbers and markings, of which there are many, have no other forms.
      const stem = hasDigit.test(term) ? undefined : stemWord(term);
      this.#nextOfStem[this.#stemmedCount] = stem === undefined ? -1 : (this.#stemHeads.get(stem) ?? -1);
      if (stem !== undefined) this.#stemHeads.set(stem, this.#stemmedCount);
    }
  }

  #sortNewTerms(): void {
    const sortedCount = this.#sorted.length;
    if (this.size - sortedCount <= tailLimit && sortedCount > 0) return;
    const newTerms = Array.from({ length: this.size - sortedCount }, (_, index) => ({
      number: sortedCount + index,
      term: this.termOf(sortedCount + index),
    })).sort((one, other) => (one.term < other.term ? -1 : 1));
    const merged = new Int32Array(this.size);
    let from = 0;
    let to = 0;
    for (const { number, term } of newTerms) {
      const before = this.#firstFrom(term);
      merged.set(this.#sorted.subarray(from, before), to);
      to += before - from;
      from = before;
      merged[to++] = number;
    }
    merged.set(this.#sorted.subarray(from), to);
    this.#sorted = merged;
  }

  /** Where in the order of spelling the first term stands that is not before `text`. */
  #firstFrom(text: string): number {
    let low = 0;
    let high = this.#sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.termOf(this.#sorted[middle] as number) < text) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}

/** The few most frequent of many terms; of equally frequent ones those spelled first. */
class MostFrequent {
  readonly #limit: number;
  readonly #kept: { readonly term: string; readonly frequency: number }[] = [];

  constructor(limit: number) {
    this.#limit = limit;
  }

  get terms(): readonly string[] {
    return this.#kept.map(({ term }) => term);
  }

  /** False where a term of that frequency would not be kept whatever its spelling. */
  takes(frequency: number): boolean {
    const last = this.#kept.at(-1);
    return this.#kept.length < this.#limit || (last !== undefined && frequency >= last.frequency);
  }

  offer(term: string, frequency: number): void {
    const place = this.#kept.findIndex(
      (kept) => kept.frequency < frequency || (kept.frequency === frequency && kept.term > term),
    );
    this.#kept.splice(place < 0 ? this.#kept.length : place, 0, { term, frequency });
    if (this.#kept.length > this.#limit) this.#kept.pop();
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
