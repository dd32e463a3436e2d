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
 * Writes arrays and texts one after the other, each with its length before it and on an 8 byte border. Numbers are
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

  /** The arrays it gives are views of `bytes` where those stand on an 8 byte border, else of a copy. */
  constructor(bytes: Uint8Array<ArrayBuffer>, from: number) {
    this.#bytes = bytes.byteOffset % 8 === 0 ? bytes : new Uint8Array(bytes);
    this.#at = from;
  }

  section(): Uint8Array<ArrayBuffer> {
    const length = new Float64Array(this.#bytes.buffer, this.#bytes.byteOffset + this.#at, 1)[0] as number;
    const section = new Uint8Array(this.#bytes.buffer, this.#bytes.byteOffset + this.#at + 8, length);
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
    return textOf(this.uint16());
  }
}

function textOf(codes: Uint16Array): string {
  let text = "";
  // String.fromCharCode takes its characters as arguments, of which a call allows only so many.
  for (let at = 0; at < codes.length; at += 4096) {
    text += String.fromCharCode(...codes.subarray(at, at + 4096));
  }
  return text;
}
