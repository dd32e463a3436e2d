const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) {
    value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  }
  return value;
});

/** CRC-32 of bytes (ISO-HDLC, as in zip and png), unsigned. */
export function checksumOf(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (let at = 0; at < bytes.length; at++) {
    value = (crcTable[(value ^ (bytes[at] as number)) & 0xff] as number) ^ (value >>> 8);
  }
  return (value ^ 0xffffffff) >>> 0;
}

/**
 * Writes arrays and strings one after the other, each with its length before it and on an 8 byte border. Numbers are
 * in the machine's own byte order: what is written is read again on the same machine.
 */
export class ByteWriter {
  readonly #sections: Uint8Array[] = [];
  #length = 0;

  bytes(section: ArrayBufferView): void {
    const head = new Uint8Array(8);
    new Float64Array(head.buffer)[0] = section.byteLength;
    const padding = new Uint8Array((8 - (section.byteLength % 8)) % 8);
    const body = new Uint8Array(section.buffer, section.byteOffset, section.byteLength);
    this.#sections.push(head, body, padding);
    this.#length += head.length + body.length + padding.length;
  }

  text(value: string): void {
    this.bytes(Uint16Array.from({ length: value.length }, (_, at) => value.charCodeAt(at)));
  }

  /** Strings in one byte a character where all of them allow it, else in two. */
  strings(values: readonly string[]): void {
    const joined = values.join("");
    const codes = new Uint16Array(joined.length);
    let highest = 0;
    for (let at = 0; at < joined.length; at++) {
      codes[at] = joined.charCodeAt(at);
      highest = Math.max(highest, codes[at] as number);
    }
    this.bytes(Int32Array.from(values, (value) => value.length));
    this.bytes(Uint8Array.of(highest < 256 ? 1 : 2));
    this.bytes(highest < 256 ? Uint8Array.from(codes) : codes);
  }

  /** All sections in one array, behind `reserved` bytes for a header. */
  finish(reserved: number): Uint8Array<ArrayBuffer> {
    const result = new Uint8Array(reserved + this.#length);
    let at = reserved;
    for (const section of this.#sections) {
      result.set(section, at);
      at += section.length;
    }
    return result;
  }
}

/** Reads what ByteWriter wrote, in the same order. Throws RangeError where the bytes end too early. */
export class ByteReader {
  readonly #bytes: Uint8Array<ArrayBuffer>;
  #at: number;

  /** A copy is made, so that the caller's array may stand on any border and change later. */
  constructor(bytes: Uint8Array, from: number) {
    this.#bytes = new Uint8Array(bytes);
    this.#at = from;
  }

  section(): Uint8Array<ArrayBuffer> {
    const length = new Float64Array(this.#bytes.buffer, this.#at, 1)[0] as number;
    const section = new Uint8Array(this.#bytes.buffer, this.#at + 8, length);
    this.#at += 8 + length + ((8 - (length % 8)) % 8);
    return section;
  }

  int32(): Int32Array<ArrayBuffer> {
    const section = this.section();
    return new Int32Array(section.buffer, section.byteOffset, section.byteLength / 4);
  }

  uint16(): Uint16Array<ArrayBuffer> {
    const section = this.section();
    return new Uint16Array(section.buffer, section.byteOffset, section.byteLength / 2);
  }

  float64(): Float64Array<ArrayBuffer> {
    const section = this.section();
    return new Float64Array(section.buffer, section.byteOffset, section.byteLength / 8);
  }

  text(): string {
    return textOf(this.uint16(), 0, Number.POSITIVE_INFINITY);
  }

  strings(): string[] {
    const lengths = this.int32();
    const wide = this.section()[0] === 2;
    const codes = wide ? this.uint16() : this.section();
    const values: string[] = [];
    let at = 0;
    for (const length of lengths) {
      values.push(textOf(codes, at, at + length));
      at += length;
    }
    return values;
  }
}

function textOf(codes: Uint8Array | Uint16Array, from: number, to: number): string {
  let text = "";
  const end = Math.min(to, codes.length);
  // String.fromCharCode takes its characters as arguments, of which a call allows only so many.
  for (let at = from; at < end; at += 4096) {
    text += String.fromCharCode(...codes.subarray(at, Math.min(end, at + 4096)));
  }
  return text;
}
