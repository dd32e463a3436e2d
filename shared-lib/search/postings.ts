import type { ByteReader, ByteWriter } from "./byte-file.ts";
import { grownInt32 } from "./growable.ts";
import { lengthOfNumber, putNumber } from "./number-stream.ts";
import { PostingPool } from "./posting-pool.ts";

/** Counts of one posting, packed as in `PostingPool`: few distinct ones, so each is kept under a small number. */
class CountCodes {
  readonly values: number[] = [];
  readonly #codes = new Map<number, number>();

  constructor(values: Iterable<number> = []) {
    for (const value of values) this.codeOf(value);
  }

  codeOf(counts: number): number {
    const known = this.#codes.get(counts);
    if (known !== undefined) return known;
    this.#codes.set(counts, this.values.length);
    this.values.push(counts);
    return this.values.length - 1;
  }
}

/**
 * Where each term stands. What was there when the postings were last laid out is packed: per term, documents ascending,
 * the distance to the one before and the code of the counts, two to three bytes a posting. What came since stands in a
 * pool that takes additions.
 */
export class Postings {
  #bytes: Uint8Array<ArrayBuffer>;
  /** Per term the first of its bytes; one more entry at the end. */
  #starts: Int32Array<ArrayBuffer>;
  #packedCounts: Int32Array<ArrayBuffer>;
  readonly #codes: CountCodes;
  readonly #packed: number;
  readonly #added = new PostingPool();
  #documents = new Int32Array(256);
  #counts = new Int32Array(256);

  private constructor(
    bytes: Uint8Array<ArrayBuffer>,
    starts: Int32Array<ArrayBuffer>,
    packedCounts: Int32Array<ArrayBuffer>,
    codes: CountCodes,
  ) {
    this.#bytes = bytes;
    this.#starts = starts;
    this.#packedCounts = packedCounts;
    this.#codes = codes;
    this.#packed = packedCounts.reduce((sum, count) => sum + count, 0);
  }

  static empty(): Postings {
    return new Postings(new Uint8Array(0), new Int32Array(1), new Int32Array(0), new CountCodes());
  }

  /**
   * Lays out postings anew.
   * @param terms number of terms
   * @param each calls back for every posting, documents ascending; it is run twice
   */
  static laidOut(
    terms: number,
    each: (visit: (term: number, document: number, counts: number) => void) => void,
  ): Postings {
    const codes = new CountCodes();
    const counts = new Int32Array(terms);
    const last = new Int32Array(terms).fill(-1);
    const sizes = new Int32Array(terms);
    each((term, document, packed) => {
      const distance = document - (last[term] as number);
      last[term] = document;
      counts[term] = (counts[term] as number) + 1;
      sizes[term] = (sizes[term] as number) + lengthOfNumber(distance) + lengthOfNumber(codes.codeOf(packed));
    });
    const starts = new Int32Array(terms + 1);
    for (let term = 0; term < terms; term++) {
      starts[term + 1] = (starts[term] as number) + (sizes[term] as number);
    }
    const bytes = new Uint8Array(starts[terms] as number);
    const ends = starts.slice(0, terms);
    last.fill(-1);
    each((term, document, packed) => {
      const at = putNumber(bytes, ends[term] as number, document - (last[term] as number));
      ends[term] = putNumber(bytes, at, codes.codeOf(packed));
      last[term] = document;
    });
    return new Postings(bytes, starts, counts, codes);
  }

  /** Appends a posting; `document` is greater than every document of the term so far. */
  append(term: number, document: number, counts: number): void {
    this.#added.append(term, document, counts);
  }

  /** Number of postings of a term. */
  countOf(term: number): number {
    return (this.#packedCounts[term] ?? 0) + this.#added.countOf(term);
  }

  /** How many postings were laid out, and how many came since. */
  get sizes(): { readonly packed: number; readonly added: number } {
    return { packed: this.#packed, added: this.#added.size };
  }

  /** Bytes held by the typed arrays. */
  get byteLength(): number {
    return this.#bytes.length + 4 * (this.#starts.length + this.#packedCounts.length) + this.#added.bytes;
  }

  /** What the last `read` found: as many entries as it said, documents ascending. */
  get documents(): Int32Array {
    return this.#documents;
  }

  /** Beside `documents`. */
  get counts(): Int32Array {
    return this.#counts;
  }

  /** Unpacks the postings of a term into `documents` and `counts`, and returns how many there are. */
  read(term: number): number {
    const packed = this.#packedCounts[term] ?? 0;
    const added = this.#added.countOf(term);
    this.#documents = grownInt32(this.#documents, packed + added);
    this.#counts = grownInt32(this.#counts, packed + added);
    this.#unpack(term, packed);
    const from = this.#added.startOf(term);
    for (let index = 0; index < added; index++) {
      this.#documents[packed + index] = this.#added.pairs[from + 2 * index] as number;
      this.#counts[packed + index] = this.#added.pairs[from + 2 * index + 1] as number;
    }
    return packed + added;
  }

  #unpack(term: number, count: number): void {
    const bytes = this.#bytes;
    const documents = this.#documents;
    const counts = this.#counts;
    const { values } = this.#codes;
    let at = this.#starts[term] ?? 0;
    let document = -1;
    for (let index = 0; index < count; index++) {
      let byte = bytes[at++] as number;
      let distance = byte & 127;
      for (let shift = 7; byte > 127; shift += 7) {
        byte = bytes[at++] as number;
        distance |= (byte & 127) << shift;
      }
      document += distance;
      byte = bytes[at++] as number;
      let code = byte & 127;
      for (let shift = 7; byte > 127; shift += 7) {
        byte = bytes[at++] as number;
        code |= (byte & 127) << shift;
      }
      documents[index] = document;
      counts[index] = values[code] as number;
    }
  }

  /** Writes what was laid out; nothing may have been added since. */
  write(writer: ByteWriter): void {
    writer.bytes(this.#bytes);
    writer.bytes(this.#starts);
    writer.bytes(this.#packedCounts);
    writer.bytes(Int32Array.from(this.#codes.values));
  }

  static read(reader: ByteReader): Postings {
    return new Postings(reader.section(), reader.int32(), reader.int32(), new CountCodes(reader.int32()));
  }
}
