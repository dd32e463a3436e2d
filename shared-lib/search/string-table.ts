import type { ByteReader, ByteWriter } from "./byte-file.ts";
import { grownInt32, grownUint8 } from "./growable.ts";

const widest = 255;

/**
 * Distinct strings, numbered from 0 in the order in which they came, in a few typed arrays: some ten bytes a string,
 * where a map of strings takes about a hundred. Strings are never taken out.
 */
export class StringTable {
  /** One byte a character, or two (low byte first) where `#wide` says so. */
  #bytes = new Uint8Array(1024);
  #starts = new Int32Array(257);
  #wide = new Uint8Array(256);
  #size = 0;
  /** Open addressing, at most half full: the number of a string plus 1, or 0. */
  #slots = new Int32Array(1024);

  get size(): number {
    return this.#size;
  }

  /** Bytes held. */
  get byteLength(): number {
    return this.#bytes.length + this.#wide.length + 4 * (this.#starts.length + this.#slots.length);
  }

  numberOf(text: string): number | undefined {
    const number = this.#slots[this.#slotOf(text)] as number;
    return number === 0 ? undefined : number - 1;
  }

  /** The number of a string, newly given where it has none. */
  intern(text: string): number {
    const slot = this.#slotOf(text);
    const known = this.#slots[slot] as number;
    if (known !== 0) return known - 1;
    const number = this.#size;
    this.#write(number, text);
    this.#size += 1;
    if (2 * this.#size > this.#slots.length) this.#rehash();
    else this.#slots[slot] = number + 1;
    return number;
  }

  /** @throws RangeError for a number that was not given */
  textOf(number: number): string {
    if (number < 0 || number >= this.#size) throw new RangeError(`There is no string number ${number}.`);
    const start = this.#starts[number] as number;
    const end = this.#starts[number + 1] as number;
    const step = this.#wide[number] === 1 ? 2 : 1;
    let text = "";
    for (let at = start; at < end; at += step) text += String.fromCharCode(this.#unit(at, step));
    return text;
  }

  /** Gives back room that was kept for more. */
  trim(): void {
    this.#bytes = this.#bytes.slice(0, this.#starts[this.#size]);
    this.#starts = this.#starts.slice(0, this.#size + 1);
    this.#wide = this.#wide.slice(0, this.#size);
  }

  write(writer: ByteWriter): void {
    writer.bytes(this.#bytes.subarray(0, this.#starts[this.#size]));
    writer.bytes(this.#starts.subarray(0, this.#size + 1));
    writer.bytes(this.#wide.subarray(0, this.#size));
    writer.bytes(this.#slots);
  }

  static read(reader: ByteReader): StringTable {
    const table = new StringTable();
    table.#bytes = reader.section();
    table.#starts = reader.int32();
    table.#wide = reader.section();
    table.#slots = reader.int32();
    table.#size = table.#wide.length;
    return table;
  }

  #unit(at: number, step: number): number {
    const low = this.#bytes[at] as number;
    return step === 1 ? low : low | ((this.#bytes[at + 1] as number) << 8);
  }

  #write(number: number, text: string): void {
    let wide = 0;
    for (let at = 0; at < text.length; at++) if (text.charCodeAt(at) > widest) wide = 1;
    const start = this.#starts[number] as number;
    const end = start + text.length * (wide + 1);
    this.#bytes = grownUint8(this.#bytes, end);
    this.#starts = grownInt32(this.#starts, number + 2);
    this.#wide = grownUint8(this.#wide, number + 1);
    for (let at = 0, to = start; at < text.length; at++) {
      const code = text.charCodeAt(at);
      this.#bytes[to++] = code & widest;
      if (wide === 1) this.#bytes[to++] = code >>> 8;
    }
    this.#starts[number + 1] = end;
    this.#wide[number] = wide;
  }

  /** The slot that holds the text, or the empty one where it would go. */
  #slotOf(text: string): number {
    const mask = this.#slots.length - 1;
    let slot = hashOf(text) & mask;
    for (;;) {
      const number = this.#slots[slot] as number;
      if (number === 0 || this.#holds(number - 1, text)) return slot;
      slot = (slot + 1) & mask;
    }
  }

  #holds(number: number, text: string): boolean {
    const start = this.#starts[number] as number;
    const step = this.#wide[number] === 1 ? 2 : 1;
    if ((this.#starts[number + 1] as number) - start !== step * text.length) return false;
    for (let at = 0; at < text.length; at++) {
      if (this.#unit(start + at * step, step) !== text.charCodeAt(at)) return false;
    }
    return true;
  }

  #rehash(): void {
    this.#slots = new Int32Array(2 * this.#slots.length);
    const mask = this.#slots.length - 1;
    for (let number = 0; number < this.#size; number++) {
      let slot = this.#hashOfNumber(number) & mask;
      while (this.#slots[slot] !== 0) slot = (slot + 1) & mask;
      this.#slots[slot] = number + 1;
    }
  }

  #hashOfNumber(number: number): number {
    const step = this.#wide[number] === 1 ? 2 : 1;
    const end = this.#starts[number + 1] as number;
    let hash = firstHash;
    for (let at = this.#starts[number] as number; at < end; at += step)
      hash = hashed(hash, this.#unit(at, step));
    return mixed(hash);
  }
}

// FNV-1a over the character codes; the last mixing spreads what differs only in the last character.
const firstHash = 0x811c9dc5;

function hashed(hash: number, code: number): number {
  return Math.imul(hash ^ code, 0x01000193);
}

function mixed(hash: number): number {
  const once = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return (once ^ (once >>> 13)) >>> 0;
}

function hashOf(text: string): number {
  let hash = firstHash;
  for (let at = 0; at < text.length; at++) hash = hashed(hash, text.charCodeAt(at));
  return mixed(hash);
}
