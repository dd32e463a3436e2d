/** A typed array at least `needed` long holding what `array` held; grows by half so that adding stays cheap. */
export function grownInt32(array: Int32Array<ArrayBuffer>, needed: number): Int32Array<ArrayBuffer> {
  if (needed <= array.length) {
    return array;
  }
  const grown = new Int32Array(Math.max(needed, array.length + (array.length >> 1), 64));
  grown.set(array);
  return grown;
}

/** As `grownInt32`, for bytes, of which there are many: it grows by a quarter. */
export function grownUint8(array: Uint8Array<ArrayBuffer>, needed: number): Uint8Array<ArrayBuffer> {
  if (needed <= array.length) {
    return array;
  }
  const grown = new Uint8Array(Math.max(needed, array.length + (array.length >> 2), 64));
  grown.set(array);
  return grown;
}

/** As `grownInt32`, for unsigned 16 bit values. */
export function grownUint16(array: Uint16Array<ArrayBuffer>, needed: number): Uint16Array<ArrayBuffer> {
  if (needed <= array.length) {
    return array;
  }
  const grown = new Uint16Array(Math.max(needed, array.length + (array.length >> 1), 64));
  grown.set(array);
  return grown;
}

/** As `grownInt32`, for double precision values. */
export function grownFloat64(array: Float64Array<ArrayBuffer>, needed: number): Float64Array<ArrayBuffer> {
  if (needed <= array.length) {
    return array;
  }
  const grown = new Float64Array(Math.max(needed, array.length + (array.length >> 1), 64));
  grown.set(array);
  return grown;
}
