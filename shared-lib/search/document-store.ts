import { analyseText } from "./analyse-text.ts";
import { AttributeColumn } from "./attribute-column.ts";
import type { ByteReader, ByteWriter } from "./byte-file.ts";
import { grownFloat64, grownInt32, grownUint8, grownUint16 } from "./growable.ts";
import type { IndexShape, SearchDocument } from "./index-shape.ts";
import { NumberStream } from "./number-stream.ts";
import { StringTable } from "./string-table.ts";
import type { Vocabulary } from "./vocabulary.ts";

/** Bits of an entry above the term number: a further reading at the position before, and the start of a field. */
export const extraFlag = 1 << 30;
export const fieldFlag = 1 << 29;
export const termMask = fieldFlag - 1;

const longestField = 65_535;

/**
 * The documents of an index by number: key, kind, date, attributes, field lengths, and the entries of each: its term
 * numbers in the order of the text. They are what everything else can be rebuilt from, and what tells where words stand.
 * They are kept packed, most in one or two bytes.
 */
export class DocumentStore {
  readonly shape: IndexShape;
  readonly kinds: AttributeColumn;
  readonly columns: ReadonlyMap<string, AttributeColumn>;
  #keys = new StringTable();
  /** By number of the key: the document that has it now, -1 where it is gone. */
  #documentOfKey = new Int32Array(256);
  #keyOfDocument = new Int32Array(256);
  #count = 0;
  #alive = new Uint8Array(256);
  #dates = new Float64Array(256);
  #lengths = new Uint16Array(1024);
  #starts = new Int32Array(257);
  #stream = new NumberStream();
  #entries = new Int32Array(256);
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
    return this.#count;
  }

  get liveCount(): number {
    return this.#liveCount;
  }

  get bytes(): number {
    const columns = (this.columns.size + 1) * 4 * this.count;
    return (
      columns +
      this.#keys.byteLength +
      this.#stream.bytes.length +
      this.#alive.length +
      8 * this.#dates.length +
      2 * this.#lengths.length +
      4 * (this.#starts.length + this.#documentOfKey.length + this.#keyOfDocument.length)
    );
  }

  numberOf(key: string): number | undefined {
    const known = this.#keys.numberOf(key);
    const document = known === undefined ? -1 : (this.#documentOfKey[known] as number);
    return document < 0 ? undefined : document;
  }

  keyOf(document: number): string {
    return this.#keys.textOf(this.#keyOfDocument[document] as number);
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

  /** The entries of a document: field marks and term numbers with their flags. Valid until the next call. */
  entriesOf(document: number): Int32Array {
    const { bytes } = this.#stream;
    const end = this.#starts[document + 1] as number;
    let at = this.#starts[document] as number;
    this.#entries = grownInt32(this.#entries, end - at);
    const entries = this.#entries;
    let count = 0;
    while (at < end) {
      let byte = bytes[at++] as number;
      let value = byte & 127;
      for (let shift = 7; byte > 127; shift += 7) {
        byte = bytes[at++] as number;
        value |= (byte & 127) << shift;
      }
      entries[count++] = (value >>> 2) | ((value & 1) << 30) | ((value & 2) << 28);
    }
    return entries.subarray(0, count);
  }

  #push(entry: number): void {
    const flags = (entry & extraFlag ? 1 : 0) | (entry & fieldFlag ? 2 : 0);
    this.#stream.push(((entry & termMask) << 2) | flags);
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
    for (const [field, { name }] of this.shape.fields.entries()) {
      const text = document.fields[name];
      if (text) {
        this.#writeField(number, field, text, vocabulary);
      }
    }
    this.#closeDocument(number);
    return number;
  }

  /** Adds a copy of a document of another store with the same shape; `renumber` maps that store's term numbers. */
  addCopy(other: DocumentStore, source: number, renumber: (term: number) => number): number {
    const number = this.#openDocument(other.keyOf(source), other.dateOf(source));
    this.kinds.set(number, other.kinds.valuesOf(source));
    for (const [name, column] of this.columns) {
      column.set(number, other.columns.get(name)?.valuesOf(source));
    }
    for (const entry of other.entriesOf(source)) {
      this.#push(entry & fieldFlag ? entry : renumber(entry & termMask) | (entry & extraFlag));
    }
    for (let field = 0; field < this.shape.fields.length; field++) {
      this.#setLength(number, field, other.lengthOf(source, field));
    }
    this.#closeDocument(number);
    return number;
  }

  /** Marks a document as gone. Its number is not used again. */
  remove(document: number): void {
    this.#documentOfKey[this.#keyOfDocument[document] as number] = -1;
    this.#alive[document] = 0;
    this.#liveCount--;
    for (let field = 0; field < this.shape.fields.length; field++) {
      this.#countLength(this.lengthOf(document, field), field, -1);
    }
  }

  /** Gives back room that was kept for more documents; done after many were added at once. */
  trim(): void {
    this.#keys.trim();
    this.#stream.trim();
    this.#lengths = this.#lengths.slice(0, this.count * this.shape.fields.length);
  }

  /** Writes all but the attributes; every document has to be alive. */
  write(writer: ByteWriter): void {
    this.#keys.write(writer);
    writer.bytes(this.#documentOfKey.subarray(0, this.#keys.size));
    writer.bytes(this.#keyOfDocument.subarray(0, this.count));
    writer.bytes(this.#dates.subarray(0, this.count));
    writer.bytes(this.#starts.subarray(0, this.count + 1));
    writer.bytes(this.#stream.bytes.subarray(0, this.#stream.end));
    writer.bytes(this.#lengths.subarray(0, this.count * this.shape.fields.length));
  }

  /** Reads what `write` wrote, and then the columns: that of the kinds as number 0, the attributes after it. */
  static read(
    shape: IndexShape,
    reader: ByteReader,
    column: (index: number) => AttributeColumn,
  ): DocumentStore {
    const keys = StringTable.read(reader);
    const documentOfKey = reader.int32();
    const keyOfDocument = reader.int32();
    const dates = reader.float64();
    const starts = reader.int32();
    const stream = reader.section();
    const lengths = reader.uint16();
    const store = new DocumentStore(shape, column);
    store.#keys = keys;
    store.#documentOfKey = documentOfKey;
    store.#keyOfDocument = keyOfDocument;
    store.#dates = dates;
    store.#starts = starts;
    store.#stream = new NumberStream(stream, stream.length);
    store.#lengths = lengths;
    store.#count = keyOfDocument.length;
    store.#liveCount = store.#count;
    store.#alive = new Uint8Array(store.#count).fill(1);
    for (let number = 0; number < store.#count; number++) {
      for (let field = 0; field < shape.fields.length; field++) {
        store.#countLength(store.lengthOf(number, field), field, 1);
      }
    }
    return store;
  }

  #openDocument(key: string, date: number): number {
    const number = this.#count++;
    const fields = this.shape.fields.length;
    const keyNumber = this.#keys.intern(key);
    this.#documentOfKey = grownInt32(this.#documentOfKey, keyNumber + 1);
    this.#documentOfKey[keyNumber] = number;
    this.#keyOfDocument = grownInt32(this.#keyOfDocument, number + 1);
    this.#keyOfDocument[number] = keyNumber;
    this.#alive = grownUint8(this.#alive, number + 1);
    this.#dates = grownFloat64(this.#dates, number + 1);
    this.#starts = grownInt32(this.#starts, number + 2);
    this.#lengths = grownUint16(this.#lengths, (number + 1) * fields);
    this.#dates[number] = date;
    return number;
  }

  #closeDocument(number: number): void {
    this.#alive[number] = 1;
    this.#liveCount++;
    this.#starts[number + 1] = this.#stream.end;
  }

  #writeField(number: number, field: number, text: string, vocabulary: Vocabulary): void {
    const tokens = analyseText(text);
    if (tokens.length === 0) {
      return;
    }
    let length = 0;
    this.#push(fieldFlag | field);
    for (const token of tokens) {
      length += token.extra ? 0 : 1;
      this.#push(vocabulary.intern(token.term) | (token.extra ? extraFlag : 0));
    }
    this.#setLength(number, field, Math.min(length, longestField));
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
