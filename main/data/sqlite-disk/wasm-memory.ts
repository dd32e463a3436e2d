/** What `WebAssembly.Memory` offers here (the Node types leave WebAssembly out). */
export interface GrowingMemory {
  readonly buffer: ArrayBuffer;
}

const zeroByte = 0;
const statBytes = 96;
const folderOrFileBlock = 4096;

/** What is known of a file, from `fs.statSync(path, { bigint: true })`. */
export interface FileFacts {
  readonly dev: bigint;
  readonly mode: bigint;
  readonly nlink: bigint;
  readonly size: bigint;
  readonly blocks: bigint;
  readonly ino: bigint;
  readonly atimeMs: bigint;
  readonly mtimeMs: bigint;
  readonly ctimeMs: bigint;
}

/** Reads and writes the structures that SQLite passes by address. The memory may grow (and move) between two calls. */
export class WasmMemory {
  #memory: GrowingMemory | undefined;
  #bytes = new Uint8Array(0);
  #view = new DataView(new ArrayBuffer(0));

  attach(memory: GrowingMemory): void {
    this.#memory = memory;
  }

  get bytes(): Uint8Array<ArrayBuffer> {
    this.#refresh();
    return this.#bytes;
  }

  get view(): DataView {
    this.#refresh();
    return this.#view;
  }

  byteLength(): number {
    return this.#memory?.buffer.byteLength ?? 0;
  }

  /** A zero-terminated UTF-8 text. */
  text(address: number): string {
    const { bytes } = this;
    const end = bytes.indexOf(zeroByte, address);
    return Buffer.from(bytes.buffer, address, end - address).toString("utf8");
  }

  /** The pieces of memory named by a scatter/gather list: `count` pairs of address and length, 32 bit each. */
  pieces(list: number, count: number): Uint8Array[] {
    const { bytes, view } = this;
    return Array.from({ length: count }, (_, index) => {
      const address = view.getUint32(list + 8 * index, true);
      return bytes.subarray(address, address + view.getUint32(list + 8 * index + 4, true));
    });
  }

  /** Fills a `struct stat` of the C library inside sql.js (wasm32, 64-bit size, time and inode). */
  writeStat(address: number, facts: FileFacts): void {
    this.bytes.fill(0, address, address + statBytes);
    const { view } = this;
    view.setUint32(address, Number(BigInt.asUintN(32, facts.dev)), true);
    view.setUint32(address + 4, Number(BigInt.asUintN(32, facts.mode)), true);
    view.setUint32(address + 8, Number(BigInt.asUintN(32, facts.nlink)), true);
    view.setBigInt64(address + 24, facts.size, true);
    view.setInt32(address + 32, folderOrFileBlock, true);
    view.setInt32(address + 36, Number(BigInt.asIntN(32, facts.blocks)), true);
    view.setBigInt64(address + 40, facts.atimeMs / 1000n, true);
    view.setBigInt64(address + 56, facts.mtimeMs / 1000n, true);
    view.setBigInt64(address + 72, facts.ctimeMs / 1000n, true);
    view.setBigInt64(address + 88, BigInt.asIntN(64, facts.ino), true);
  }

  #refresh(): void {
    const buffer = this.#memory?.buffer;
    if (!buffer) throw new Error("The memory of the database engine is not attached.");
    if (this.#bytes.buffer !== buffer) {
      this.#bytes = new Uint8Array(buffer);
      this.#view = new DataView(buffer);
    }
  }
}
