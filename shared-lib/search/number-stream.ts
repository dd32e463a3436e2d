import { grownUint8 } from "./growable.ts";

/**
 * Whole numbers from 0 to 2^31 - 1 one after the other, in one to five bytes each, small ones in one (LEB128: seven bits
 * a byte, lowest first, the top bit says that more follow).
 */
export class NumberStream {
  #bytes: Uint8Array<ArrayBuffer>;
  #end: number;

  constructor(bytes: Uint8Array<ArrayBuffer> = new Uint8Array(1024), end = 0) {
    this.#bytes = bytes;
    this.#end = end;
  }

  /** The bytes; those from `end` on have no meaning. */
  get bytes(): Uint8Array<ArrayBuffer> {
    return this.#bytes;
  }

  get end(): number {
    return this.#end;
  }

  push(value: number): void {
    this.#bytes = grownUint8(this.#bytes, this.#end + 5);
    this.#end = putNumber(this.#bytes, this.#end, value);
  }

  trim(): void {
    this.#bytes = this.#bytes.slice(0, this.#end);
  }
}

/** Writes one number and returns where the next one goes. */
export function putNumber(bytes: Uint8Array, at: number, value: number): number {
  let to = at;
  let rest = value;
  while (rest > 127) {
    bytes[to++] = (rest & 127) | 128;
    rest >>>= 7;
  }
  bytes[to++] = rest;
  return to;
}

/** How many bytes `putNumber` takes. */
export function lengthOfNumber(value: number): number {
  let length = 1;
  for (let rest = value >>> 7; rest !== 0; rest >>>= 7) length++;
  return length;
}
