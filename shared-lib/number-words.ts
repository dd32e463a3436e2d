export type NumberReading =
  | { readonly kind: "empty" }
  | { readonly kind: "number"; readonly number: number }
  | { readonly kind: "unclear"; readonly problem: string };

/**
 * Reads a number as people type it: "−11", "-11", "+3.5", "3,5", "± 5", "1 000". A decimal comma is a decimal point;
 * "1,000" may be one or a thousand and is asked back instead of guessed.
 */
export function readNumber(text: string): NumberReading {
  const bare = text.trim();
  if (bare === "") return { kind: "empty" };
  const plain = bare
    .replace(/^±\s*/, "")
    .replace(/^[\u2212\u2013]\s*/, "-")
    .replace(/^([+-])\s+/, "$1")
    .replace(/(?<=\d)[\s\u00a0\u202f](?=\d{3}(?!\d))/g, "");
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(plain)) {
    const [whole, part] = plain.split(",");
    return {
      kind: "unclear",
      problem: `Is that ${whole}${part} or ${whole}.${part}? Write it without a comma.`,
    };
  }
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain)) {
    return { kind: "unclear", problem: `“${bare}” is not a number.` };
  }
  return { kind: "number", number: Number(plain.replace(",", ".")) };
}
