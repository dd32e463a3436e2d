import { stemWord } from "./stem-word.ts";

// Words for what was done or is to be done. Notes are full of them and they say little about what was wrong.
const words =
  "replace repair fix install fit check inspect investigate adjust rectify diagnose renew attend need please";

const stems: ReadonlySet<string> = new Set(words.split(" ").map(stemWord));

/** True for a word, in any of its forms, that names work rather than a thing or a trouble. */
export function isWorkWord(word: string): boolean {
  return stems.has(stemWord(word));
}
