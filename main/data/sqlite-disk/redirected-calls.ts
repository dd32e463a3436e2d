import fs from "node:fs";
import path from "node:path";
import { type FaultPlan, plannedError, throwPlannedFault } from "./disk-faults.ts";
import type { SystemCallTrace } from "./system-call-trace.ts";
import { systemErrorCode, systemErrorNumber } from "./system-errors.ts";
import { WasmMemory } from "./wasm-memory.ts";

/** One function SQLite imports. The arguments are addresses and numbers (64-bit ones as bigint). */
export type SystemCall = (...values: never[]) => number;
export type SystemCalls = Record<string, SystemCall>;

/** The last real failure of the disk. SQLite itself reports only a text. */
export interface DiskFailure {
  readonly call: string;
  readonly code: string;
  readonly path: string;
}

export interface RedirectOptions {
  /** The real file; its journal lies beside it with `-journal` added. */
  readonly file: string;
  readonly readOnly: boolean;
  readonly faults?: FaultPlan | undefined;
  readonly trace?: SystemCallTrace | undefined;
}

interface OpenFile {
  readonly descriptor: number | undefined;
  readonly path: string;
  position: number;
  /** A journal that was ended durably and has not been written since: there is nothing to flush. */
  isRetired: boolean;
}

// sql.js gives every database a name of this form in its own (memory) file system. Each instance of the engine
// holds exactly one database, so the name need not be known beforehand.
const virtualName = /^\/?dbfile_\d+(-journal|-wal)?$/;

// Descriptors of real files start far above those of the memory file system, so the two never meet.
const firstDescriptor = 1 << 20;

// Flags of `open` and commands of `fcntl` in the C library inside sql.js (musl).
const accessModes = 3;
const readWrite = 2;
const writeOnly = 1;
const create = 0o100;
const exclusive = 0o200;
const truncate = 0o1000;
const getLock = 12;
const unlocked = 2;

// SQLite file format, "The Rollback Journal": the header's fields; the rest of its sector is padding.
const journalHeaderBytes = 28;

/**
 * Answers the system calls SQLite makes on the database file, its journal and their folder with `node:fs`, and passes
 * everything else to the memory file system of sql.js. No locks are taken: the lock of the data folder stands for them.
 */
export class RedirectedCalls {
  readonly memory = new WasmMemory();
  lastFailure: DiskFailure | undefined;
  syncCount = 0;
  readonly #options: RedirectOptions;
  readonly #open = new Map<number, OpenFile>();
  #nextDescriptor = firstDescriptor;
  #refusedWriting: Error | undefined;

  constructor(options: RedirectOptions) {
    this.#options = options;
  }

  /** The imports of the engine with the redirected calls in place of its own. Throws if one is missing. */
  replaceIn(original: SystemCalls): SystemCalls {
    const replaced = { ...original };
    for (const [name, build] of Object.entries(this.#replacements())) {
      const own = original[name];
      if (!own)
        throw new Error(`This build of sql.js has no system call ${name}; it cannot be kept on the disk.`);
      replaced[name] = build(own as (...values: unknown[]) => number) as SystemCall;
    }
    return replaced;
  }

  /** Closes what SQLite left open, for example after a failed opening. */
  closeAll(): void {
    for (const file of this.#open.values()) {
      if (file.descriptor !== undefined) fs.closeSync(file.descriptor);
    }
    this.#open.clear();
  }

  #replacements(): Record<string, (own: (...values: unknown[]) => number) => (...values: never[]) => number> {
    return { ...this.#pathCalls(), ...this.#descriptorCalls(), ...this.#metadataCalls() };
  }

  #pathCalls(): Record<string, (own: (...values: unknown[]) => number) => (...values: never[]) => number> {
    const stat =
      (own: (...values: unknown[]) => number) =>
      (name: number, address: number): number => {
        const file = this.#realPath(name);
        if (file === undefined) return own(name, address);
        return -this.#attempt("stat", file, () => {
          this.memory.writeStat(address, fs.statSync(file, { bigint: true }));
        });
      };
    return {
      __syscall_openat: (own) => (folder: number, name: number, flags: number, rest: number) => {
        const file = this.#realPath(name) ?? this.#folderPath(name);
        return file === undefined ? own(folder, name, flags, rest) : this.#openFile(file, flags);
      },
      __syscall_stat64: stat,
      __syscall_lstat64: stat,
      __syscall_newfstatat: (own) => (folder: number, name: number, address: number, flags: number) => {
        const file = this.#realPath(name);
        if (file === undefined) return own(folder, name, address, flags);
        return -this.#attempt("stat", file, () => {
          this.memory.writeStat(address, fs.statSync(file, { bigint: true }));
        });
      },
      __syscall_faccessat: (own) => (folder: number, name: number, mode: number, flags: number) => {
        const file = this.#realPath(name);
        if (file === undefined) return own(folder, name, mode, flags);
        return -this.#attempt("access", file, () => fs.accessSync(file, mode));
      },
      __syscall_unlinkat: (own) => (folder: number, name: number, flags: number) => {
        const file = this.#realPath(name);
        if (file === undefined) return own(folder, name, flags);
        return -this.#attempt("remove", file, () => {
          throwPlannedFault(this.#options.faults, "remove", file);
          fs.unlinkSync(file);
          this.#options.trace?.push({ call: "remove", path: file });
        });
      },
    };
  }

  #descriptorCalls(): Record<
    string,
    (own: (...values: unknown[]) => number) => (...values: never[]) => number
  > {
    return {
      fd_close: (own) => (descriptor: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor);
        this.#open.delete(descriptor);
        return this.#attempt("close", file.path, () => {
          if (file.descriptor !== undefined) fs.closeSync(file.descriptor);
        });
      },
      fd_read: (own) => (descriptor: number, list: number, count: number, result: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, list, count, result);
        return this.#attempt("read", file.path, () => {
          this.memory.view.setUint32(result, this.#read(file, list, count), true);
        });
      },
      fd_write: (own) => (descriptor: number, list: number, count: number, result: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, list, count, result);
        return this.#attempt("write", file.path, () => {
          this.memory.view.setUint32(result, this.#write(file, list, count), true);
        });
      },
      fd_seek: (own) => (descriptor: number, offset: bigint, from: number, result: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, offset, from, result);
        return this.#attempt("seek", file.path, () => {
          const start = from === 0 ? 0 : from === 1 ? file.position : fs.fstatSync(real(file)).size;
          file.position = start + Number(offset);
          this.memory.view.setBigInt64(result, BigInt(file.position), true);
        });
      },
      fd_sync: (own) => (descriptor: number) => {
        const file = this.#open.get(descriptor);
        return file ? this.#attempt("sync", file.path, () => this.#sync(file)) : own(descriptor);
      },
    };
  }

  #metadataCalls(): Record<
    string,
    (own: (...values: unknown[]) => number) => (...values: never[]) => number
  > {
    const nothingToDo =
      (own: (...values: unknown[]) => number) =>
      (descriptor: number, ...values: number[]): number =>
        this.#open.has(descriptor) ? 0 : own(descriptor, ...values);
    return {
      __syscall_ftruncate64: (own) => (descriptor: number, length: bigint) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, length);
        return -this.#attempt("truncate", file.path, () => {
          throwPlannedFault(this.#options.faults, "truncate", file.path);
          if (file.path === `${this.#options.file}-journal` && length === 0n) this.#retireJournal(file);
          this.#truncate(file, Number(length));
        });
      },
      __syscall_fstat64: (own) => (descriptor: number, address: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, address);
        return -this.#attempt("stat", file.path, () => {
          this.memory.writeStat(address, fs.fstatSync(real(file), { bigint: true }));
        });
      },
      __syscall_fcntl64: (own) => (descriptor: number, command: number, rest: number) => {
        if (!this.#open.has(descriptor)) return own(descriptor, command, rest);
        // A question for a foreign lock is answered with "none"; taking and giving one back succeed.
        if (command === getLock) {
          const { view } = this.memory;
          view.setInt16(view.getUint32(rest, true), unlocked, true);
        }
        return 0;
      },
      // Owner and rights of the real files are those of the person who runs the program.
      __syscall_fchmod: nothingToDo,
      __syscall_fchown32: nothingToDo,
    };
  }

  #openFile(file: string, flags: number): number {
    // Asked for on purpose, so no failure of the disk: SQLite then opens the file for reading.
    if (this.#options.readOnly && (flags & accessModes) !== 0) return -systemErrorNumber("EACCES");
    let opened = -1;
    const error = this.#attempt("open", file, () => {
      const isFolder = file === path.dirname(this.#options.file);
      const descriptor = isFolder ? openFolder(file) : this.#openForSqlite(file, flags);
      opened = this.#nextDescriptor++;
      this.#open.set(opened, { descriptor, path: file, position: 0, isRetired: false });
    });
    return error === 0 ? opened : -error;
  }

  #openForSqlite(file: string, flags: number): number {
    const { faults, trace } = this.#options;
    const access = flags & accessModes;
    const isDatabase = file === this.#options.file;
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

  #read(file: OpenFile, list: number, count: number): number {
    throwPlannedFault(this.#options.faults, "read", file.path);
    const { bytes } = this.memory;
    let total = 0;
    for (const piece of this.memory.pieces(list, count)) {
      const got = fs.readSync(real(file), bytes, piece.address, piece.length, file.position);
      file.position += got;
      total += got;
      if (got < piece.length) break;
    }
    return total;
  }

  // A short write is reported as such: SQLite itself writes the rest or learns why it cannot.
  #write(file: OpenFile, list: number, count: number): number {
    file.isRetired = false;
    const fault = this.#options.faults?.strike("write", file.path);
    let allowed = fault ? (fault.partialBytes ?? 0) : Number.POSITIVE_INFINITY;
    const { bytes } = this.memory;
    let total = 0;
    for (const { address, length } of this.memory.pieces(list, count)) {
      const wanted = Math.min(length, allowed);
      if (wanted === 0 && length > 0) break;
      const put = fs.writeSync(real(file), bytes, address, wanted, file.position);
      this.#options.trace?.push({
        call: "write",
        path: file.path,
        offset: file.position,
        data: bytes.slice(address, address + put),
      });
      file.position += put;
      total += put;
      allowed -= put;
      if (put < length) break;
    }
    if (fault) throw plannedError(fault, file.path);
    return total;
  }

  // To SQLite, emptying the journal is the commit; it flushes afterwards, and where that fails it reports an error for a
  // transaction that has already happened and can no longer be rolled back. So the journal is ended first, durably and
  // undoably: its header is overwritten and flushed (an ended journal is never played back), and is put back where
  // that fails. The flush that SQLite asks for next then has nothing to do, so a commit costs no more.
  #retireJournal(file: OpenFile): void {
    const header = Buffer.alloc(journalHeaderBytes);
    if (fs.readSync(real(file), header, 0, header.length, 0) === 0) return;
    try {
      this.#overwriteStart(file, Buffer.alloc(journalHeaderBytes));
      this.#sync(file);
      file.isRetired = true;
    } catch (error) {
      this.#overwriteStart(file, header);
      throw error;
    }
  }

  #truncate(file: OpenFile, length: number): void {
    try {
      fs.ftruncateSync(real(file), length);
      this.#options.trace?.push({ call: "truncate", path: file.path, length });
    } catch (error) {
      // The commit has happened; what is left of an ended journal only takes space.
      if (!file.isRetired) throw error;
    }
  }

  #overwriteStart(file: OpenFile, data: Uint8Array): void {
    fs.writeSync(real(file), data, 0, data.length, 0);
    this.#options.trace?.push({ call: "write", path: file.path, offset: 0, data });
  }

  #sync(file: OpenFile): void {
    if (file.isRetired) return;
    throwPlannedFault(this.#options.faults, "sync", file.path);
    if (file.path === this.#options.file) this.#requireFileInPlace(file);
    // Windows cannot open, and so cannot flush, a folder.
    if (file.descriptor !== undefined) fs.fsyncSync(file.descriptor);
    this.syncCount += 1;
    this.#options.trace?.push({ call: "sync", path: file.path });
  }

  // A file that was removed or replaced while it is open would take every commit and keep none.
  #requireFileInPlace(file: OpenFile): void {
    const held = fs.fstatSync(real(file), { bigint: true });
    const inPlace = fs.statSync(file.path, { bigint: true, throwIfNoEntry: false });
    if (inPlace?.ino !== held.ino || inPlace.dev !== held.dev) {
      throw Object.assign(new Error("the database file was removed or replaced while it was open"), {
        code: "EIO",
      });
    }
  }

  #realPath(name: number): string | undefined {
    const suffix = virtualName.exec(this.memory.text(name));
    return suffix ? this.#options.file + (suffix[1] ?? "") : undefined;
  }

  // SQLite opens the folder of the journal to flush its entries; nothing else in sql.js opens the root.
  #folderPath(name: number): string | undefined {
    const text = this.memory.text(name);
    return text === "/" || text === "/." ? path.dirname(this.#options.file) : undefined;
  }

  /** Runs a call and answers 0 or an error number; nothing may be thrown through the engine. */
  #attempt(call: string, file: string, work: () => void): number {
    try {
      work();
      return 0;
    } catch (error) {
      const code = systemErrorCode(error);
      // SQLite asks whether files exist; that one does not is no failure of the disk.
      if (code !== "ENOENT" || call === "write" || call === "sync")
        this.lastFailure = { call, code, path: file };
      return systemErrorNumber(code);
    }
  }
}

function real(file: OpenFile): number {
  if (file.descriptor === undefined)
    throw Object.assign(new Error("a folder is no file"), { code: "EISDIR" });
  return file.descriptor;
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
