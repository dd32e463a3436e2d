import { analyseText, type Token } from "./analyse-text.ts";
import type { SearchQuery } from "./search-query.ts";

/** A stretch of text to be marked, as offsets; `end` is after the last character. */
export interface MarkRange {
  readonly start: number;
  readonly end: number;
}

/** What is to be marked for one query, worked out once for many texts. */
export class Marker {
  readonly #words = new Set<string>();
  readonly #phrases: ReadonlySet<string>[][] = [];

  constructor(query: SearchQuery) {
    for (const { sequence } of query.terms.flatMap((term) => term.alternatives)) {
      if (sequence.length === 1) {
        for (const word of sequence[0] ?? []) {
          this.#words.add(word);
        }
      } else {
        this.#phrases.push(sequence.map((place) => new Set(place)));
      }
    }
  }

  /**
   * Every word, number or phrase of a text that counts as something in the query. Ranges are in order and never overlap.
   */
  mark(text: string): MarkRange[] {
    const tokens = analyseText(text);
    const ranges: MarkRange[] = tokens.filter((token) => this.#words.has(token.term));
    const present = new Set(tokens.map(({ term }) => term));
    for (const phrase of this.#phrases) {
      if (phrase.every((place) => hasAny(place, present))) {
        ranges.push(...phraseRanges(tokens, phrase));
      }
    }
    return merged(ranges);
  }
}

function hasAny(place: ReadonlySet<string>, present: ReadonlySet<string>): boolean {
  for (const term of place) {
    if (present.has(term)) {
      return true;
    }
  }
  return false;
}

function phraseRanges(tokens: readonly Token[], phrase: readonly ReadonlySet<string>[]): MarkRange[] {
  const ranges: MarkRange[] = [];
  const places: Token[][] = [];
  for (const token of tokens) {
    const place = places[token.position] ?? [];
    places[token.position] = [...place, token];
  }
  for (let from = 0; from + phrase.length <= places.length; from++) {
    const stands = phrase.every((terms, offset) =>
      places[from + offset]?.some(({ term }) => terms.has(term)),
    );
    const first = places[from]?.[0];
    const last = places[from + phrase.length - 1]?.[0];
    if (stands && first && last) {
      ranges.push({ start: first.start, end: last.end });
    }
  }
  return ranges;
}

function merged(ranges: readonly MarkRange[]): MarkRange[] {
  const result: { start: number; end: number }[] = [];
  for (const { start, end } of [...ranges].sort((one, other) => one.start - other.start)) {
    const last = result.at(-1);
    if (last && start < last.end) {
      last.end = Math.max(last.end, end);
    } else {
      result.push({ start, end });
    }
  }
  return result;
}
