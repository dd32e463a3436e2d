import { editDistance } from "./edit-distance.ts";
import { allTradeWords } from "./synonyms.ts";
import type { WordsInUse } from "./vocabulary.ts";

const onlyLetters = /^\p{L}+$/u;
const shortest = 4;
const twoEditsFrom = 6;
const costOfEdit = 4;
const costOfFirstLetter = 1;

/**
 * The word most likely meant by one that no document has: within one edit, two from six letters, the highest
 * ln(document frequency) - 4 x edits - 1 if the first letter differs. Words of the trade that no document has count
 * as in one. Undefined when nothing is near; numbers, markings and words under four letters are left alone.
 */
export function correctWord(word: string, words: WordsInUse): string | undefined {
  if (word.length < shortest || !onlyLetters.test(word)) {
    return undefined;
  }
  const limit = word.length >= twoEditsFrom ? 2 : 1;
  let best: string | undefined;
  let bestScore = Number.NEGATIVE_INFINITY;
  const consider = (term: string, distance: number) => {
    const frequency = Math.max(1, words.documentFrequency(term));
    const firstLetter = term.charAt(0) === word.charAt(0) ? 0 : costOfFirstLetter;
    const score = Math.log(frequency) - costOfEdit * distance - firstLetter;
    if (score > bestScore || (score === bestScore && best !== undefined && term < best)) {
      best = term;
      bestScore = score;
    }
  };
  for (const { term, distance } of words.neighbours(word, limit)) {
    if (onlyLetters.test(term) && term.length > 2) {
      consider(term, distance);
    }
  }
  for (const term of allTradeWords()) {
    const distance = term.length > 2 ? editDistance(word, term, limit) : limit + 1;
    if (distance <= limit && words.documentFrequency(term) === 0) {
      consider(term, distance);
    }
  }
  return best;
}
