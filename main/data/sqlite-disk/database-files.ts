import fs from "node:fs";
import path from "node:path";
import { type FaultPlan, plannedError, throwPlannedFault } from "./disk-faults.ts";
import { JournalRecord } from "./journal-records.ts";
import type { SystemCallTrace } from "./system-call-trace.ts";

export interface DatabaseFilesOptions {
  /** The real file; its journal lies beside it with `-journal` added. */
  readonly file: string;
  readonly readOnly: boolean;
  readonly faults?: FaultPlan | undefined;
  readonly trace?: SystemCallTrace | undefined;
}

/** A file (or the folder) that SQLite has open. */
export interface OpenFile {
  /** Undefined for a folder on Windows, which cannot be opened there. */
  readonly descriptor: number | undefined;
  readonly path: string;
  position: number;
  /** A journal that was ended durably and has not been written since: there is nothing to flush. */
  isRetired: boolean;
  /** A page record of the journal that SQLite has begun to write. */
  record: JournalRecord | undefined;
}

// Flags of `open` and commands of `fcntl` in the C library inside sql.js (musl).
const accessModes = 3;
const readWrite = 2;
const writeOnly = 1;
const create = 0o100;
const exclusive = 0o200;
const truncate = 0o1000;

// SQLite file format, "The Rollback Journal": the header's fields; the rest of its sector is padding.
const journalHeaderBytes = 28;

/** What SQLite does with the database file, its journal and their folder, on the real disk. Everything here throws. */
export class DatabaseFiles {
  syncCount = 0;
  readonly #options: DatabaseFilesOptions;
  #refusedWriting: Error | undefined;

  constructor(options: DatabaseFilesOptions) {
    this.#options = options;
  }

  get file(): string {
    return this.#options.file;
  }

  get #journal(): string {
    return `${this.#options.file}-journal`;
  }

  get folder(): string {
    return path.dirname(this.#options.file);
  }

  /** Whether this opening is refused because the database is only to be read. SQLite then opens it for reading. */
  refusesWriting(flags: number): boolean {
    return this.#options.readOnly && (flags & accessModes) !== 0;
  }

  open(file: string, flags: number): OpenFile {
    const descriptor = file === this.folder ? openFolder(file) : this.#openDescriptor(file, flags);
    return { descriptor, path: file, position: 0, isRetired: false, record: undefined };
  }

  close(file: OpenFile): void {
    if (file.descriptor === undefined) return;
    try {
      this.#finishRecord(file);
      // An ended journal keeps its length while the database is open, because a file that neither grows nor shrinks is
      // flushed faster. A closed database has an empty one.
      if (file.isRetired) this.truncate(file, 0);
    } finally {
      fs.closeSync(file.descriptor);
    }
  }

  facts(file: OpenFile): fs.BigIntStats {
    this.#finishRecord(file);
    return fs.fstatSync(real(file), { bigint: true });
  }

  seek(file: OpenFile, offset: number, from: number): number {
    if (from !== 0 && from !== 1) this.#finishRecord(file);
    const start = from === 0 ? 0 : from === 1 ? file.position : fs.fstatSync(real(file)).size;
    file.position = start + offset;
    return file.position;
  }

  /** Fills the pieces in turn; ends early at the end of the file. Returns the number of bytes. */
  read(file: OpenFile, pieces: readonly Uint8Array[]): number {
    this.#finishRecord(file);
    throwPlannedFault(this.#options.faults, "read", file.path);
    let total = 0;
    for (const piece of pieces) {
      const got = fs.readSync(real(file), piece, 0, piece.length, file.position);
      file.position += got;
      total += got;
      if (got < piece.length) break;
    }
    return total;
  }

  /** A short write is reported as such: SQLite itself writes the rest or learns why it cannot. */
  write(file: OpenFile, pieces: readonly Uint8Array[]): number {
    const length = pieces.reduce((sum, piece) => sum + piece.length, 0);
    if (file.path === this.#journal) {
      if (file.record !== undefined && file.record.end !== file.position) this.#finishRecord(file);
      if (endsJournal(file, pieces)) return this.#retireJournal(file);
      if (file.record === undefined && JournalRecord.begins(length))
        file.record = new JournalRecord(file.position);
      if (file.record !== undefined) return this.#addToRecord(file, file.record, pieces, length);
    }
    return this.#put(file, pieces);
  }

  truncate(file: OpenFile, length: number): void {
    this.#finishRecord(file);
    try {
      throwPlannedFault(this.#options.faults, "truncate", file.path);
      fs.ftruncateSync(real(file), length);
      this.#options.trace?.push({ call: "truncate", path: file.path, length });
    } catch (error) {
      // The commit has happened; what is left of an ended journal only takes space.
      if (!file.isRetired) throw error;
    }
  }

  sync(file: OpenFile): void {
    if (file.isRetired) return;
    this.#finishRecord(file);
    throwPlannedFault(this.#options.faults, "sync", file.path);
    if (file.path === this.file) this.#requireInPlace(file);
    // Of a file, its bytes and its length are flushed, as SQLite itself does; of a folder, its entries.
    // Windows cannot open, and so cannot flush, a folder.
    if (file.path === this.folder) {
      if (file.descriptor !== undefined) fs.fsyncSync(file.descriptor);
    } else fs.fdatasyncSync(real(file));
    this.syncCount += 1;
    this.#options.trace?.push({ call: "sync", path: file.path });
  }

  remove(file: string): void {
    throwPlannedFault(this.#options.faults, "remove", file);
    fs.unlinkSync(file);
    this.#options.trace?.push({ call: "remove", path: file });
  }

  #openDescriptor(file: string, flags: number): number {
    const { faults, trace } = this.#options;
    const access = flags & accessModes;
    const isDatabase = file === this.file;
    // SQLite answers a refused opening by opening the file for reading only. That must not happen unasked: the person
    // would learn only at the first save that nothing can be saved.
    if (isDatabase && access === 0 && this.#refusedWriting) throw this.#refusedWriting;
    const isNew = (flags & create) !== 0 && !fs.existsSync(file);
    try {
      throwPlannedFault(faults, "open", file);
      const descriptor = fs.openSync(file, nodeFlags(flags), 0o600);
      if (isNew) trace?.push({ call: "create", path: file });
      return descriptor;
    } catch (error) {
      if (isDatabase && access !== 0 && error instanceof Error) this.#refusedWriting = error;
      throw error;
    }
  }

  #put(file: OpenFile, pieces: readonly Uint8Array[]): number {
    file.isRetired = false;
    const fault = this.#options.faults?.strike("write", file.path);
    let allowed = fault ? (fault.partialBytes ?? 0) : Number.POSITIVE_INFINITY;
    let total = 0;
    for (const piece of pieces) {
      const wanted = Math.min(piece.length, allowed);
      if (wanted === 0 && piece.length > 0) break;
      const put = fs.writeSync(real(file), piece, 0, wanted, file.position);
      const { trace } = this.#options;
      trace?.push({ call: "write", path: file.path, offset: file.position, data: piece.slice(0, put) });
      file.position += put;
      total += put;
      allowed -= put;
      if (put < piece.length) break;
    }
    if (fault) throw plannedError(fault, file.path);
    return total;
  }

  #addToRecord(file: OpenFile, record: JournalRecord, pieces: readonly Uint8Array[], length: number): number {
    const isWhole = record.add(pieces);
    file.position += length;
    if (isWhole) this.#finishRecord(file);
    return length;
  }

  /** Writes what was begun of a page record, whole or not. Afterwards the position is where SQLite believes it to be. */
  #finishRecord(file: OpenFile): void {
    const { record, position } = file;
    if (record === undefined) return;
    file.record = undefined;
    file.position = record.start;
    let rest = record.bytes();
    while (rest.length > 0) {
      const put = this.#put(file, [rest]);
      if (put === 0) throw Object.assign(new Error("nothing more could be written"), { code: "ENOSPC" });
      rest = rest.subarray(put);
    }
    file.position = position;
  }

  // To SQLite, zeros over the header of the journal are the commit; it flushes afterwards, and where that fails it reports
  // an error for a transaction that has already happened and can no longer be rolled back. So the journal is ended here
  // durably and undoably: the zeros are flushed with the write (an ended journal is never played back), and the header
  // is put back where that fails. The flush that SQLite asks for next then has nothing to do, so a commit costs no more.
  #retireJournal(file: OpenFile): number {
    const header = Buffer.alloc(journalHeaderBytes);
    fs.readSync(real(file), header, 0, header.length, 0);
    try {
      this.#put(file, [Buffer.alloc(journalHeaderBytes)]);
      this.sync(file);
      file.isRetired = true;
    } catch (error) {
      this.#overwriteStart(file, header);
      throw error;
    }
    return journalHeaderBytes;
  }

  #overwriteStart(file: OpenFile, data: Uint8Array): void {
    fs.writeSync(real(file), data, 0, data.length, 0);
    this.#options.trace?.push({ call: "write", path: file.path, offset: 0, data });
  }

  // A file that was removed or replaced while it is open would take every commit and keep none.
  #requireInPlace(file: OpenFile): void {
    const held = fs.fstatSync(real(file), { bigint: true });
    const inPlace = fs.statSync(file.path, { bigint: true, throwIfNoEntry: false });
    if (inPlace?.ino !== held.ino || inPlace.dev !== held.dev) {
      throw Object.assign(new Error("the database file was removed or replaced while it was open"), {
        code: "EIO",
      });
    }
  }
}

function real(file: OpenFile): number {
  if (file.descriptor === undefined)
    throw Object.assign(new Error("a folder is no file"), { code: "EISDIR" });
  return file.descriptor;
}

/** How SQLite ends a journal that it keeps: zeros over its header. */
function endsJournal(file: OpenFile, pieces: readonly Uint8Array[]): boolean {
  const [header] = pieces;
  return (
    file.position === 0 &&
    pieces.length === 1 &&
    header?.length === journalHeaderBytes &&
    header.every((byte) => byte === 0)
  );
}

function openFolder(folder: string): number | undefined {
  return process.platform === "win32" ? undefined : fs.openSync(folder, fs.constants.O_RDONLY);
}

function nodeFlags(flags: number): number {
  const { O_RDWR, O_WRONLY, O_RDONLY, O_CREAT, O_EXCL, O_TRUNC } = fs.constants;
  const access = flags & accessModes;
  let result = access === readWrite ? O_RDWR : access === writeOnly ? O_WRONLY : O_RDONLY;
  if (flags & create) result |= O_CREAT;
  if (flags & exclusive) result |= O_EXCL;
  if (flags & truncate) result |= O_TRUNC;
  return result;
}
