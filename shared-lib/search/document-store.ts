import { analyseText } from "./analyse-text.ts";
import { AttributeColumn } from "./attribute-column.ts";
import type { ByteReader, ByteWriter } from "./byte-file.ts";
import { grownFloat64, grownInt32, grownUint16 } from "./growable.ts";
import type { IndexShape, SearchDocument } from "./index-shape.ts";
import type { Vocabulary } from "./vocabulary.ts";

/** Bits of a stream entry above the term number: a further reading at the position before, and the start of a field. */
export const extraFlag = 1 << 30;
export const fieldFlag = 1 << 29;
export const termMask = fieldFlag - 1;

const longestField = 65_535;

/**
 * The documents of an index by number: key, kind, date, attributes, field lengths, and the stream of term numbers in
 * the order of the text. The stream is what everything else can be rebuilt from, and what tells where words stand.
 */
export class DocumentStore {
  readonly shape: IndexShape;
  readonly kinds: AttributeColumn;
  readonly columns: ReadonlyMap<string, AttributeColumn>;
  readonly keys: string[] = [];
  readonly #numbers = new Map<string, number>();
  #alive = new Int32Array(256);
  #dates = new Float64Array(256);
  #lengths = new Uint16Array(1024);
  #starts = new Int32Array(257);
  #stream = new Int32Array(4096);
  /** Over live documents: the sum of lengths of each field, and how many have any words in it. */
  readonly lengthSums: Float64Array;
  readonly filledCounts: Float64Array;
  #liveCount = 0;

  constructor(shape: IndexShape, column: (index: number) => AttributeColumn = () => new AttributeColumn()) {
    this.shape = shape;
    this.kinds = column(0);
    this.columns = new Map(shape.attributes.map((name, index) => [name, column(index + 1)]));
    this.lengthSums = new Float64Array(shape.fields.length);
    this.filledCounts = new Float64Array(shape.fields.length);
  }

  /** Number of documents ever added, removed ones included; document numbers are below it. */
  get count(): number {
    return this.keys.length;
  }

  get liveCount(): number {
    return this.#liveCount;
  }

  get stream(): Int32Array {
    return this.#stream;
  }

  get bytes(): number {
    const columns = (this.columns.size + 2) * 4 * this.count;
    return (
      columns +
      8 * this.#dates.length +
      2 * this.#lengths.length +
      4 * (this.#starts.length + this.#stream.length)
    );
  }

  numberOf(key: string): number | undefined {
    return this.#numbers.get(key);
  }

  isAlive(document: number): boolean {
    return this.#alive[document] === 1;
  }

  /** Milliseconds since 1970, NaN without a date. */
  dateOf(document: number): number {
    return this.#dates[document] as number;
  }

  lengthOf(document: number, field: number): number {
    return this.#lengths[document * this.shape.fields.length + field] as number;
  }

  get lengths(): Uint16Array {
    return this.#lengths;
  }

  /** First stream entry of a document, and the one after its last. */
  startOf(document: number): number {
    return this.#starts[document] as number;
  }

  endOf(document: number): number {
    return this.#starts[document + 1] as number;
  }

  /** Average length of a field over the documents that have words in it; 1 when none has. */
  averageLength(field: number): number {
    const filled = this.filledCounts[field] as number;
    return filled === 0 ? 1 : (this.lengthSums[field] as number) / filled;
  }

  /** Adds a document whose key is not in the store and returns its number. */
  add(document: SearchDocument, vocabulary: Vocabulary): number {
    const number = this.#openDocument(document.key, document.date ?? Number.NaN);
    this.kinds.set(number, document.kind);
    for (const [name, column] of this.columns) {
      column.set(number, document.attributes?.[name]);
    }
    let end = this.startOf(number);
    for (const [field, { name }] of this.shape.fields.entries()) {
      const text = document.fields[name];
      if (text) {
        end = this.#writeField(number, field, text, end, vocabulary);
      }
    }
    this.#closeDocument(number, end);
    return number;
  }

  /** Adds a copy of a document of another store with the same shape; `renumber` maps that store's term numbers. */
  addCopy(other: DocumentStore, source: number, renumber: (term: number) => number): number {
    const number = this.#openDocument(other.keys[source] as string, other.dateOf(source));
    this.kinds.set(number, other.kinds.valuesOf(source));
    for (const [name, column] of this.columns) {
      column.set(number, other.columns.get(name)?.valuesOf(source));
    }
    let end = this.startOf(number);
    this.#stream = grownInt32(this.#stream, end + other.endOf(source) - other.startOf(source));
    for (let at = other.startOf(source); at < other.endOf(source); at++) {
      const entry = other.stream[at] as number;
      const renumbered = entry & fieldFlag ? entry : renumber(entry & termMask) | (entry & extraFlag);
      this.#stream[end++] = renumbered;
    }
    for (let field = 0; field < this.shape.fields.length; field++) {
      this.#setLength(number, field, other.lengthOf(source, field));
    }
    this.#closeDocument(number, end);
    return number;
  }

  /** Marks a document as gone. Its number is not used again. */
  remove(document: number): void {
    this.#numbers.delete(this.keys[document] as string);
    this.#alive[document] = 0;
    this.#liveCount--;
    for (let field = 0; field < this.shape.fields.length; field++) {
      this.#countLength(this.lengthOf(document, field), field, -1);
    }
  }

  /** Gives back room that was kept for more documents; done after many were added at once. */
  trim(): void {
    this.#stream = this.#stream.slice(0, this.#starts[this.count]);
    this.#lengths = this.#lengths.slice(0, this.count * this.shape.fields.length);
  }

  /** Writes all but the attributes; every document has to be alive. */
  write(writer: ByteWriter): void {
    writer.strings(this.keys);
    writer.bytes(this.#dates.subarray(0, this.count));
    writer.bytes(this.#starts.subarray(0, this.count + 1));
    writer.bytes(this.#stream.subarray(0, this.#starts[this.count]));
    writer.bytes(this.#lengths.subarray(0, this.count * this.shape.fields.length));
  }

  /** Reads what `write` wrote, and then the columns: that of the kinds as number 0, the attributes after it. */
  static read(
    shape: IndexShape,
    reader: ByteReader,
    column: (index: number) => AttributeColumn,
  ): DocumentStore {
    const keys = reader.strings();
    const dates = reader.float64();
    const starts = reader.int32();
    const stream = reader.int32();
    const lengths = reader.uint16();
    const store = new DocumentStore(shape, column);
    store.#dates = dates;
    store.#starts = starts;
    store.#stream = stream;
    store.#lengths = lengths;
    store.#alive = new Int32Array(keys.length).fill(1);
    store.#liveCount = keys.length;
    for (const [number, key] of keys.entries()) {
      store.keys.push(key);
      store.#numbers.set(key, number);
      for (let field = 0; field < shape.fields.length; field++) {
        store.#countLength(store.lengthOf(number, field), field, 1);
      }
    }
    return store;
  }

  #openDocument(key: string, date: number): number {
    const number = this.keys.length;
    const fields = this.shape.fields.length;
    this.keys.push(key);
    this.#numbers.set(key, number);
    this.#alive = grownInt32(this.#alive, number + 1);
    this.#dates = grownFloat64(this.#dates, number + 1);
    this.#starts = grownInt32(this.#starts, number + 2);
    this.#lengths = grownUint16(this.#lengths, (number + 1) * fields);
    this.#dates[number] = date;
    return number;
  }

  #closeDocument(number: number, end: number): void {
    this.#alive[number] = 1;
    this.#liveCount++;
    this.#starts[number + 1] = end;
  }

  #writeField(number: number, field: number, text: string, from: number, vocabulary: Vocabulary): number {
    const tokens = analyseText(text);
    if (tokens.length === 0) {
      return from;
    }
    let end = from;
    let length = 0;
    this.#stream = grownInt32(this.#stream, end + tokens.length + 1);
    this.#stream[end++] = fieldFlag | field;
    for (const token of tokens) {
      length += token.extra ? 0 : 1;
      this.#stream[end++] = vocabulary.intern(token.term) | (token.extra ? extraFlag : 0);
    }
    this.#setLength(number, field, Math.min(length, longestField));
    return end;
  }

  #setLength(number: number, field: number, length: number): void {
    this.#lengths[number * this.shape.fields.length + field] = length;
    this.#countLength(length, field, 1);
  }

  #countLength(length: number, field: number, sign: number): void {
    if (length > 0) {
      this.lengthSums[field] = (this.lengthSums[field] as number) + sign * length;
      this.filledCounts[field] = (this.filledCounts[field] as number) + sign;
    }
  }
}
