import fs from "node:fs";
import { DatabaseFiles, type DatabaseFilesOptions, type OpenFile } from "./database-files.ts";
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

type OwnCall = (...values: unknown[]) => number;
type Replacements = Record<string, (own: OwnCall) => SystemCall>;

// sql.js gives every database a name of this form in its own (memory) file system. Each instance of the engine
// holds exactly one database, so the name need not be known beforehand.
const virtualName = /^\/?dbfile_\d+(-journal|-wal)?$/;

// Descriptors of real files start far above those of the memory file system, so the two never meet.
const firstDescriptor = 1 << 20;

// Of `fcntl` in the C library inside sql.js (musl).
const getLock = 12;
const unlocked = 2;

/**
 * Answers the system calls SQLite makes on the database file, its journal and their folder with `node:fs`, and passes
 * everything else to the memory file system of sql.js. No locks are taken: the lock of the data folder stands for them.
 */
export class RedirectedCalls {
  readonly memory = new WasmMemory();
  lastFailure: DiskFailure | undefined;
  readonly #files: DatabaseFiles;
  readonly #open = new Map<number, OpenFile>();
  #nextDescriptor = firstDescriptor;

  constructor(options: DatabaseFilesOptions) {
    this.#files = new DatabaseFiles(options);
  }

  get syncCount(): number {
    return this.#files.syncCount;
  }

  /** The imports of the engine with the redirected calls in place of its own. Throws if one is missing. */
  replaceIn(original: SystemCalls): SystemCalls {
    const replaced = { ...original };
    const replacements = { ...this.#pathCalls(), ...this.#descriptorCalls(), ...this.#metadataCalls() };
    for (const [name, build] of Object.entries(replacements)) {
      const own = original[name];
      if (!own)
        throw new Error(`This build of sql.js has no system call ${name}; it cannot be kept on the disk.`);
      replaced[name] = build(own as OwnCall);
    }
    return replaced;
  }

  /** Closes what SQLite left open, for example after a failed opening. */
  closeAll(): void {
    for (const file of this.#open.values()) this.#files.close(file);
    this.#open.clear();
  }

  #pathCalls(): Replacements {
    const stat: Replacements[string] = (own) => (name: number, address: number) => {
      const file = this.#realPath(name);
      return file === undefined ? own(name, address) : this.#stat(file, address);
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
        return file === undefined ? own(folder, name, address, flags) : this.#stat(file, address);
      },
      __syscall_faccessat: (own) => (folder: number, name: number, mode: number, flags: number) => {
        const file = this.#realPath(name);
        if (file === undefined) return own(folder, name, mode, flags);
        return -this.#attempt("access", file, () => fs.accessSync(file, mode));
      },
      __syscall_unlinkat: (own) => (folder: number, name: number, flags: number) => {
        const file = this.#realPath(name);
        if (file === undefined) return own(folder, name, flags);
        return -this.#attempt("remove", file, () => this.#files.remove(file));
      },
    };
  }

  #descriptorCalls(): Replacements {
    return {
      fd_close: (own) => (descriptor: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor);
        this.#open.delete(descriptor);
        return this.#attempt("close", file.path, () => this.#files.close(file));
      },
      fd_read: (own) => (descriptor: number, list: number, count: number, result: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, list, count, result);
        return this.#attempt("read", file.path, () => {
          const total = this.#files.read(file, this.memory.pieces(list, count));
          this.memory.view.setUint32(result, total, true);
        });
      },
      fd_write: (own) => (descriptor: number, list: number, count: number, result: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, list, count, result);
        return this.#attempt("write", file.path, () => {
          const total = this.#files.write(file, this.memory.pieces(list, count));
          this.memory.view.setUint32(result, total, true);
        });
      },
      fd_seek: (own) => (descriptor: number, offset: bigint, from: number, result: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, offset, from, result);
        return this.#attempt("seek", file.path, () => {
          const position = this.#files.seek(file, Number(offset), from);
          this.memory.view.setBigInt64(result, BigInt(position), true);
        });
      },
      fd_sync: (own) => (descriptor: number) => {
        const file = this.#open.get(descriptor);
        return file ? this.#attempt("sync", file.path, () => this.#files.sync(file)) : own(descriptor);
      },
    };
  }

  #metadataCalls(): Replacements {
    const nothingToDo: Replacements[string] =
      (own) =>
      (descriptor: number, ...values: number[]) =>
        this.#open.has(descriptor) ? 0 : own(descriptor, ...values);
    return {
      __syscall_ftruncate64: (own) => (descriptor: number, length: bigint) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, length);
        return -this.#attempt("truncate", file.path, () => this.#files.truncate(file, Number(length)));
      },
      __syscall_fstat64: (own) => (descriptor: number, address: number) => {
        const file = this.#open.get(descriptor);
        if (!file) return own(descriptor, address);
        return -this.#attempt("stat", file.path, () => {
          this.memory.writeStat(address, this.#files.facts(file));
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

  #stat(file: string, address: number): number {
    return -this.#attempt("stat", file, () => {
      this.memory.writeStat(address, fs.statSync(file, { bigint: true }));
    });
  }

  #openFile(file: string, flags: number): number {
    // Asked for on purpose, so no failure of the disk.
    if (file !== this.#files.folder && this.#files.refusesWriting(flags)) return -systemErrorNumber("EACCES");
    const descriptor = this.#nextDescriptor;
    const error = this.#attempt("open", file, () =>
      this.#open.set(descriptor, this.#files.open(file, flags)),
    );
    if (error !== 0) return -error;
    this.#nextDescriptor += 1;
    return descriptor;
  }

  #realPath(name: number): string | undefined {
    const found = virtualName.exec(this.memory.text(name));
    return found ? this.#files.file + (found[1] ?? "") : undefined;
  }

  // SQLite opens the folder of the journal to flush its entries; nothing else in sql.js opens the root.
  #folderPath(name: number): string | undefined {
    const text = this.memory.text(name);
    return text === "/" || text === "/." ? this.#files.folder : undefined;
  }

  /** Runs a call and answers 0 or an error number; nothing may be thrown through the engine. */
  #attempt(call: string, file: string, work: () => unknown): number {
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
