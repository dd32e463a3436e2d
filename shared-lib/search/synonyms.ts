import { analyseText } from "./analyse-text.ts";
import { stemWord } from "./stem-word.ts";
import { tradeWords, type WordGroup } from "./trade-words.ts";

/** Another reading of a word or phrase, as its words in order. */
export interface Synonym {
  readonly words: readonly string[];
  readonly closeness: WordGroup["closeness"];
}

interface Entry {
  readonly words: readonly string[];
  readonly groups: WordGroup[];
}

/** Words of the longest reading in the table. */
let longest = 1;
const entries = new Map<string, Entry>();
const singleWords = new Set<string>();
for (const group of tradeWords) {
  for (const reading of group.readings) {
    const words = wordsOf(reading);
    longest = Math.max(longest, words.length);
    const entry = entries.get(keyOf(words));
    if (entry) {
      entry.groups.push(group);
    } else {
      entries.set(keyOf(words), { words, groups: [group] });
    }
    for (const word of words) {
      singleWords.add(word);
    }
  }
}

/** True for a word that stands in the table of the trade, alone or in a phrase. */
export function isTradeWord(word: string): boolean {
  return singleWords.has(word);
}

/** Every single word in the table, for spelling. */
export function allTradeWords(): Iterable<string> {
  return singleWords;
}

/** How many of the words from `from` on form the longest reading in the table; 0 when none does. */
export function readingLength(words: readonly string[], from: number): number {
  for (let length = Math.min(longest, words.length - from); length > 0; length--) {
    if (entries.has(keyOf(words.slice(from, from + length)))) {
      return length;
    }
  }
  return 0;
}

/** Other readings of these words; inflections of a reading count as it. */
export function synonymsOf(words: readonly string[]): Synonym[] {
  const own = keyOf(words);
  const found = new Map<string, Synonym>();
  for (const group of entries.get(own)?.groups ?? []) {
    for (const reading of group.readings) {
      const other = wordsOf(reading);
      const key = keyOf(other);
      if (key !== own && found.get(key)?.closeness !== "same") {
        found.set(key, { words: other, closeness: group.closeness });
      }
    }
  }
  return [...found.values()];
}

function wordsOf(reading: string): string[] {
  return analyseText(reading)
    .filter((token) => !token.extra)
    .map((token) => token.term);
}

function keyOf(words: readonly string[]): string {
  return words.map(stemWord).join(" ");
}
