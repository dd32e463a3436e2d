import { analyseText, type Token } from "./analyse-text.ts";
import { correctWord } from "./correct-word.ts";
import { floorTerm, isNumber, ordinalOf, ordinalTerm } from "./number-units.ts";
import { type QuerySettings, querySettings } from "./query-settings.ts";
import type { Alternative, Correction, QueryTerm, SearchQuery } from "./search-query.ts";
import { isStopWord } from "./stop-words.ts";
import { isTradeWord, readingLength, synonymsOf } from "./synonyms.ts";
import type { WordsInUse } from "./vocabulary.ts";
import { isWorkWord } from "./work-words.ts";

export interface QueryOptions {
  /** The last word is still being typed: words that begin with it count too, and it is not corrected. */
  readonly typing?: boolean;
  /** False: no word is corrected. */
  readonly corrections?: boolean;
  /** Words, as typed, that are not to be corrected: the person undid it. */
  readonly keep?: readonly string[];
  readonly synonyms?: boolean;
  readonly settings?: QuerySettings;
}

const longestQuery = 10_000;
const mostTerms = 32;
const mostCorrections = 20;
const mostCompletions = 12;
const shortestCompoundPart = 3;
const onlyLetters = /^\p{L}[\p{L}\p{M}]*$/u;

/** What one or more tokens of the query stand for: a word, or a number with its unit, or a marking. */
interface Unit {
  readonly term: string;
  readonly parts: readonly string[];
  readonly start: number;
  readonly end: number;
  readonly typed: string;
  read: string;
}

/**
 * Reads a query: words, numbers with units, markings; misspelt words corrected against the words in use; for each
 * everything that counts as it. A query without letters or digits gives no terms. Of a very long one the first
 * 10,000 characters are read, and of those the 32 terms that tell most.
 */
export function analyseQuery(text: string, words: WordsInUse, options: QueryOptions = {}): SearchQuery {
  const settings = options.settings ?? querySettings;
  const read = text.slice(0, longestQuery);
  const units = readUnits(read, analyseText(read));
  const last = options.typing && /[\p{L}\p{N}\p{M}]$/u.test(read) ? units.at(-1) : undefined;
  const chosen = chooseUnits(units, words);
  const corrections = correctUnits(chosen, last, words, options);
  const terms = buildTerms(chosen, last, words, settings, options.synonyms !== false);
  return {
    text,
    terms,
    corrections,
    alsoReadAs: otherReadings(terms, words),
    cut: read.length < text.length || chosen.length < units.length,
  };
}

/** Tokens that share a place, or that a whole reaches over, are one unit: "20 mm", "3rd flr", "X4:12". */
function readUnits(text: string, tokens: readonly Token[]): Unit[] {
  const units: Unit[] = [];
  for (let at = 0; at < tokens.length; ) {
    const first = tokens[at] as Token;
    let end = first.end;
    let next = at;
    while (next < tokens.length && (tokens[next] as Token).start < end) {
      end = Math.max(end, (tokens[next] as Token).end);
      next++;
    }
    const group = tokens.slice(at, Math.max(next, at + 1));
    const whole = group.find((token) => token.extra && token.end === end && token.end > first.end) ?? first;
    const parts = group.filter((token) => token !== whole).map((token) => token.term);
    const { start } = first;
    units.push({ term: whole.term, parts, start, end, typed: text.slice(start, end), read: whole.term });
    at += group.length;
  }
  return units;
}

/** Drops stop words only where phrases do not need them, later; here very long queries lose what tells least. */
function chooseUnits(units: readonly Unit[], words: WordsInUse): Unit[] {
  const seen = new Set<string>();
  const distinct = units.filter((unit) => {
    const isNew = !seen.has(unit.term) || isStopWord(unit.term);
    seen.add(unit.term);
    return isNew;
  });
  if (distinct.length <= 2 * mostTerms) {
    return distinct;
  }
  const rarity = (unit: Unit) => words.documentFrequency(unit.term) || Number.MAX_SAFE_INTEGER;
  const kept = new Set(
    distinct
      .filter((unit) => !isStopWord(unit.term))
      .sort((one, other) => rarity(one) - rarity(other))
      .slice(0, mostTerms),
  );
  return distinct.filter((unit) => kept.has(unit));
}

function correctUnits(
  units: readonly Unit[],
  last: Unit | undefined,
  words: WordsInUse,
  options: QueryOptions,
): Correction[] {
  const corrections: Correction[] = [];
  const keep = new Set(options.keep?.map((word) => word.toLowerCase()));
  if (options.corrections === false) {
    return corrections;
  }
  let tried = 0;
  for (const unit of units) {
    const { term, typed, start, end } = unit;
    if (keep.has(typed.toLowerCase()) || isKnown(term, words) || splitsOf(term, words).length > 0) {
      continue;
    }
    if (unit === last && words.completions(term, 1).length > 0) {
      continue;
    }
    const read = tried++ < mostCorrections ? correctWord(term, words) : undefined;
    if (read !== undefined) {
      unit.read = read;
      corrections.push({ typed, read, start, end });
    }
  }
  return corrections;
}

function isKnown(term: string, words: WordsInUse): boolean {
  return (
    words.documentFrequency(term) > 0 ||
    isStopWord(term) ||
    isTradeWord(term) ||
    words.inflections(term).length > 0
  );
}

function buildTerms(
  units: readonly Unit[],
  last: Unit | undefined,
  words: WordsInUse,
  settings: QuerySettings,
  withSynonyms: boolean,
): QueryTerm[] {
  const terms: QueryTerm[] = [];
  const reads = units.map((unit) => unit.read);
  const onlyStopWords = reads.every(isStopWord);
  const inPhrase = new Set<Unit>();
  for (let at = 0; at < units.length; at++) {
    const unit = units[at] as Unit;
    const length = withSynonyms ? readingLength(reads, at) : 0;
    if (length > 1) {
      const phrase = units.slice(at, at + length);
      terms.push(phraseTerm(phrase, words, settings));
      for (const part of phrase) {
        inPhrase.add(part);
      }
    }
    if (isStopWord(unit.read) && !onlyStopWords) {
      continue;
    }
    const alternatives = alternativesOf(unit, words, settings, withSynonyms && !inPhrase.has(unit));
    alternatives.push(...joinsWith(units[at - 1], unit, units[at + 1], words, settings));
    if (unit === last) {
      alternatives.push(...completionsOf(unit, words, settings));
    }
    const alone = isWorkWord(unit.read) ? settings.workWord : 1;
    const weight = inPhrase.has(unit) ? settings.phraseWord : alone;
    terms.push({ text: unit.typed, start: unit.start, end: unit.end, weight, alternatives });
  }
  return terms.slice(0, mostTerms);
}

function phraseTerm(units: readonly Unit[], words: WordsInUse, settings: QuerySettings): QueryTerm {
  const first = units[0] as Unit;
  const end = (units.at(-1) as Unit).end;
  const reads = units.map((unit) => unit.read);
  const own: Alternative = { sequence: sequenceOf(reads, words), weight: 1, reading: "typed" };
  return {
    text: units.map((unit) => unit.typed).join(" "),
    start: first.start,
    end,
    weight: 1,
    alternatives: [own, ...synonymAlternatives(reads, words, settings)],
  };
}

function alternativesOf(
  unit: Unit,
  words: WordsInUse,
  settings: QuerySettings,
  withSynonyms: boolean,
): Alternative[] {
  const { term, read } = unit;
  const reading = read === term ? "typed" : "correction";
  const alternatives: Alternative[] = [{ sequence: [[read]], weight: 1, reading }];
  const inflections = words.inflections(read);
  if (inflections.length > 0) {
    alternatives.push({ sequence: [inflections], weight: settings.inflection, reading: "inflection" });
  }
  for (const [other, weight] of partsOf(unit, settings)) {
    alternatives.push({ sequence: [[other]], weight, reading: "part" });
  }
  for (const split of splitsOf(read, words)) {
    alternatives.push({ sequence: sequenceOf(split, words), weight: settings.compound, reading: "compound" });
  }
  if (withSynonyms) {
    alternatives.push(...synonymAlternatives([read], words, settings));
  }
  return alternatives;
}

/** Weaker readings of numbers and markings: "floor 3" is also "3rd", and "3" may be floor 3. */
function partsOf(unit: Unit, settings: QuerySettings): [term: string, weight: number][] {
  const { term, parts } = unit;
  const floor = /^floor:(\d+)$/.exec(term)?.[1];
  if (floor !== undefined) {
    return [
      [ordinalTerm(Number(floor)), 2 * settings.part],
      [floor, settings.part],
    ];
  }
  if (isNumber(term) && term.length <= 3) {
    return [[floorTerm(term), 2 * settings.part]];
  }
  const ordinal = ordinalOf(term);
  if (ordinal !== undefined) {
    const whole = ordinalTerm(ordinal);
    return [
      ...(whole === term ? [] : [[whole, 1] as [string, number]]),
      [floorTerm(ordinal), 2 * settings.part],
    ];
  }
  return parts.filter((part) => part !== term && /\p{N}/u.test(part)).map((part) => [part, settings.part]);
}

function synonymAlternatives(
  reads: readonly string[],
  words: WordsInUse,
  settings: QuerySettings,
): Alternative[] {
  const alternatives: Alternative[] = [];
  for (const { words: other, closeness } of synonymsOf(reads)) {
    const sequence = sequenceOf(other, words);
    if (sequence.every((place) => place.some((term) => words.documentFrequency(term) > 0))) {
      const weight = closeness === "same" ? settings.sameThing : settings.nearMeaning;
      alternatives.push({ sequence, weight, reading: "synonym" });
    }
  }
  return alternatives;
}

function sequenceOf(reads: readonly string[], words: WordsInUse): string[][] {
  return reads.map((read) => [read, ...words.inflections(read)]);
}

/** Ways to take a word apart into two that are in use: "doorzone" into "door zone". */
function splitsOf(word: string, words: WordsInUse): string[][] {
  const splits: string[][] = [];
  if (onlyLetters.test(word)) {
    for (let at = shortestCompoundPart; at <= word.length - shortestCompoundPart; at++) {
      const parts = [word.slice(0, at), word.slice(at)];
      if (parts.every((part) => words.documentFrequency(part) > 0)) {
        splits.push(parts);
      }
    }
  }
  return splits;
}

/** "over speed" also asks for "overspeed": each of the two words is answered by the joined one. */
function joinsWith(
  before: Unit | undefined,
  unit: Unit,
  after: Unit | undefined,
  words: WordsInUse,
  settings: QuerySettings,
): Alternative[] {
  return [before ? before.read + unit.read : "", after ? unit.read + after.read : ""]
    .filter((joined) => joined !== "" && words.documentFrequency(joined) > 0)
    .map((joined) => ({ sequence: [[joined]], weight: settings.compound, reading: "compound" }));
}

function completionsOf(unit: Unit, words: WordsInUse, settings: QuerySettings): Alternative[] {
  const completions = words.completions(unit.read, mostCompletions);
  return completions.length === 0
    ? []
    : [{ sequence: [completions], weight: settings.completion, reading: "completion" }];
}

function otherReadings(terms: readonly QueryTerm[], words: WordsInUse): string[] {
  const readings = terms.flatMap((term) =>
    term.alternatives
      .filter((alternative) => alternative.reading === "synonym")
      .map(({ sequence, weight }) => {
        const places = sequence.map((place) => place.find((word) => words.documentFrequency(word) > 0) ?? "");
        const rarest = Math.min(...places.map((place) => words.documentFrequency(place)));
        return { reading: places.join(" "), weight, rarest };
      }),
  );
  readings.sort((one, other) => other.weight - one.weight || other.rarest - one.rarest);
  return [...new Set(readings.map(({ reading }) => reading))];
}
