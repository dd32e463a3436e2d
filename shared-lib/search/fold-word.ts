// Letters that Unicode does not take apart, spelled the way people without that key type them.
const spelledOut: Readonly<Record<string, string>> = {
  ß: "ss",
  ø: "o",
  æ: "ae",
  œ: "oe",
  ł: "l",
  đ: "d",
  ð: "d",
  þ: "th",
  ı: "i",
};
const spelledOutLetters = /[ßøæœłđðþı]/g;
const marksOnLetters = /[\u0300-\u036f]+/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: the test for "only ASCII" has to name its range.
const onlyAscii = /^[\u0000-\u007f]*$/;

/**
 * Lower case without accents, so that "Türantrieb" and "turantrieb" are one word. Only the marks that sit on Latin,
 * Greek and Cyrillic letters go; the vowel signs of other scripts are part of the word and stay.
 */
export function foldWord(word: string): string {
  const lower = word.toLowerCase();
  if (onlyAscii.test(lower)) {
    return lower;
  }
  return lower
    .normalize("NFKD")
    .replace(marksOnLetters, "")
    .replace(spelledOutLetters, (letter) => spelledOut[letter] ?? letter)
    .normalize("NFC")
    .toLowerCase();
}
