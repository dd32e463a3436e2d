import { SillbookError } from "../errors.ts";

export type TextEncoding = "UTF-8" | "UTF-16 LE" | "UTF-16 BE" | "Windows-1252";

interface Decoder {
  decode(bytes: Uint8Array): string;
}
// Node and browsers both have it; the types of this folder know neither.
const { TextDecoder } = globalThis as unknown as {
  readonly TextDecoder: new (label: string, options?: { readonly fatal?: boolean }) => Decoder;
};

const labels = {
  "UTF-8": "utf-8",
  "UTF-16 LE": "utf-16le",
  "UTF-16 BE": "utf-16be",
  "Windows-1252": "windows-1252",
} as const;

/**
 * The text of a file and how it was written: by its byte order mark, by the zero bytes of UTF-16, as UTF-8 where every byte
 * fits it, else as Windows-1252.
 * @throws SillbookError input-invalid where it is no text
 */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly encoding: TextEncoding } {
  const encoding = findEncoding(bytes);
  const text = new TextDecoder(labels[encoding]).decode(bytes);
  if (text.includes("\u0000")) {
    throw new SillbookError(
      "input-invalid",
      "This is not a text file: it holds zero bytes. Nothing was changed. Save the table as CSV or XLSX and try again.",
    );
  }
  return { text, encoding };
}

function findEncoding(bytes: Uint8Array): TextEncoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "UTF-16 LE";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "UTF-16 BE";
  const sample = bytes.subarray(0, 4096);
  const zeros = [0, 0];
  for (const [at, byte] of sample.entries()) {
    if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  }
  const [even = 0, odd = 0] = zeros;
  // Latin letters in UTF-16 have a zero byte each, on one side only.
  if (odd > sample.length / 8 && even < odd / 8) return "UTF-16 LE";
  if (even > sample.length / 8 && odd < even / 8) return "UTF-16 BE";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return "UTF-8";
  } catch {
    return "Windows-1252";
  }
}
