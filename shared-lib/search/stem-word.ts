const onlyLetters = /^[a-z]+$/;

/**
 * The stem under which the inflections of an English word meet: M. F. Porter, "An algorithm for suffix stripping",
 * Program 14 (1980), steps 1a to 5b. Words with digits, of other scripts, or under 4 letters are their own stem.
 * Stems group words; they are never shown or stored as terms.
 */
export function stemWord(word: string): string {
  if (word.length < 4 || word.length > 40 || !onlyLetters.test(word)) {
    return word;
  }
  return tidyEnd(derivationOff(derivationToCommon(yToI(pastOrGerundOff(pluralOff(word))))));
}

function isVowel(word: string, index: number): boolean {
  const letter = word.charAt(index);
  return letter === "y" ? index > 0 && !isVowel(word, index - 1) : "aeiou".includes(letter);
}

/** Porter's m: how many times a vowel group is followed by a consonant group. */
function measure(stem: string): number {
  let count = 0;
  let afterVowel = false;
  for (let index = 0; index < stem.length; index++) {
    const vowel = isVowel(stem, index);
    if (afterVowel && !vowel) {
      count++;
    }
    afterVowel = vowel;
  }
  return count;
}

function hasVowel(stem: string): boolean {
  for (let index = 0; index < stem.length; index++) {
    if (isVowel(stem, index)) {
      return true;
    }
  }
  return false;
}

function endsDoubled(word: string): boolean {
  const last = word.length - 1;
  return last > 0 && word.charAt(last) === word.charAt(last - 1) && !isVowel(word, last);
}

function endsShort(word: string): boolean {
  const last = word.length - 1;
  return (
    last > 1 &&
    !isVowel(word, last) &&
    isVowel(word, last - 1) &&
    !isVowel(word, last - 2) &&
    !"wxy".includes(word.charAt(last))
  );
}

function pluralOff(word: string): string {
  if (word.endsWith("sses") || word.endsWith("ies")) {
    return word.slice(0, -2);
  }
  return word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word;
}

function pastOrGerundOff(word: string): string {
  if (word.endsWith("eed")) {
    return measure(word.slice(0, -3)) > 0 ? word.slice(0, -1) : word;
  }
  const cut = word.endsWith("ed") ? 2 : word.endsWith("ing") ? 3 : 0;
  const stem = word.slice(0, word.length - cut);
  if (cut === 0 || !hasVowel(stem)) {
    return word;
  }
  if (stem.endsWith("at") || stem.endsWith("bl") || stem.endsWith("iz")) {
    return `${stem}e`;
  }
  if (endsDoubled(stem) && !"lsz".includes(stem.charAt(stem.length - 1))) {
    return stem.slice(0, -1);
  }
  return measure(stem) === 1 && endsShort(stem) ? `${stem}e` : stem;
}

function yToI(word: string): string {
  return word.endsWith("y") && hasVowel(word.slice(0, -1)) ? `${word.slice(0, -1)}i` : word;
}

// Longer endings stand before the shorter ones they contain.
const toCommon: readonly (readonly [string, string])[] = [
  ["ational", "ate"],
  ["ization", "ize"],
  ["iveness", "ive"],
  ["fulness", "ful"],
  ["ousness", "ous"],
  ["tional", "tion"],
  ["biliti", "ble"],
  ["entli", "ent"],
  ["ousli", "ous"],
  ["ation", "ate"],
  ["alism", "al"],
  ["aliti", "al"],
  ["iviti", "ive"],
  ["enci", "ence"],
  ["anci", "ance"],
  ["izer", "ize"],
  ["alli", "al"],
  ["ator", "ate"],
  ["logi", "log"],
  ["bli", "ble"],
  ["eli", "e"],
];
const toShorter: readonly (readonly [string, string])[] = [
  ["icate", "ic"],
  ["ative", ""],
  ["alize", "al"],
  ["iciti", "ic"],
  ["ical", "ic"],
  ["ness", ""],
  ["ful", ""],
];
const droppedEndings = "ement ance ence able ible ment ant ent ism ate iti ous ive ize ion al er ic ou".split(
  " ",
);

function replaceEnding(word: string, table: readonly (readonly [string, string])[]): string {
  for (const [ending, common] of table) {
    if (word.endsWith(ending)) {
      const stem = word.slice(0, -ending.length);
      return measure(stem) > 0 ? stem + common : word;
    }
  }
  return word;
}

function derivationToCommon(word: string): string {
  return replaceEnding(replaceEnding(word, toCommon), toShorter);
}

function derivationOff(word: string): string {
  const ending = droppedEndings.find((candidate) => word.endsWith(candidate));
  if (!ending) {
    return word;
  }
  const stem = word.slice(0, -ending.length);
  if (measure(stem) < 2 || (ending === "ion" && !/[st]$/.test(stem))) {
    return word;
  }
  return stem;
}

function tidyEnd(word: string): string {
  let result = word;
  if (result.endsWith("e")) {
    const stem = result.slice(0, -1);
    const count = measure(stem);
    if (count > 1 || (count === 1 && !endsShort(stem))) {
      result = stem;
    }
  }
  return result.endsWith("ll") && measure(result) > 1 ? result.slice(0, -1) : result;
}
