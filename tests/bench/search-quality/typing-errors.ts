import { isStopWord } from "#shared-lib/search/stop-words.ts";

/** A random sequence in [0, 1) from a seed (mulberry32). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const letters = "abcdefghijklmnopqrstuvwxyz";

function mistype(word: string, random: () => number): string {
  const at = Math.floor(random() * word.length);
  const letter = letters.charAt(Math.floor(random() * letters.length));
  switch (Math.floor(random() * 4)) {
    case 0:
      return word.slice(0, at) + word.slice(at + 1);
    case 1:
      return word.slice(0, at) + letter + word.slice(at);
    case 2:
      return word.slice(0, at) + letter + word.slice(at + 1);
    default: {
      const swapAt = Math.min(at, word.length - 2);
      return word.slice(0, swapAt) + word.charAt(swapAt + 1) + word.charAt(swapAt) + word.slice(swapAt + 2);
    }
  }
}

/** One random edit in one content word of four letters or more. */
export function withOneError(text: string, random: () => number): string {
  const words = text.split(" ");
  const choices = words.flatMap((word, index) =>
    /^[a-z]{4,}$/i.test(word) && !isStopWord(word.toLowerCase()) ? [index] : [],
  );
  const chosen = choices[Math.floor(random() * choices.length)];
  return words.map((word, index) => (index === chosen ? mistype(word, random) : word)).join(" ");
}

/** One random edit in every word over four letters. */
export function withAllErrors(text: string, random: () => number): string {
  return text.replace(/[a-z]{5,}/gi, (word) => mistype(word, random));
}
