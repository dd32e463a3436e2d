// SQLite file format, "The Rollback Journal": a page record is its number, the page, and a checksum, and SQLite writes each
// of the three by itself. It counts the record only when the third write has succeeded.
const numberBytes = 4;

/** Pieces of one page record of the journal, kept until it is whole, so that it takes one write instead of three. */
export class JournalRecord {
  readonly start: number;
  readonly #pieces: Buffer[] = [];
  #length = 0;

  constructor(start: number) {
    this.start = start;
  }

  /** Whether a write of so many bytes is the first piece of a record. */
  static begins(length: number): boolean {
    return length === numberBytes;
  }

  get end(): number {
    return this.start + this.#length;
  }

  /** Adds a piece and tells whether the record is whole now. The bytes are copied: they belong to the engine's memory. */
  add(pieces: readonly Uint8Array[]): boolean {
    const length = pieces.reduce((sum, piece) => sum + piece.length, 0);
    const isLast = this.#length > numberBytes && length === numberBytes;
    this.#pieces.push(...pieces.map((piece) => Buffer.from(piece)));
    this.#length += length;
    return isLast;
  }

  bytes(): Buffer {
    return Buffer.concat(this.#pieces, this.#length);
  }
}
