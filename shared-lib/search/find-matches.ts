import type { DocumentStore } from "./document-store.ts";
import { extraFlag, fieldFlag, termMask } from "./document-store.ts";
import { countSequence, type NumberedSequence, numberSequence } from "./find-sequences.ts";
import type { RankingSettings } from "./ranking-settings.ts";
import type { Reading, SearchQuery } from "./search-query.ts";
import type { Vocabulary } from "./vocabulary.ts";

interface Place {
  readonly queryTerm: number;
  readonly reading: Reading;
}

/** A query prepared for looking into single documents. */
export interface MatchLookup {
  readonly places: ReadonlyMap<number, readonly Place[]>;
  readonly sequences: readonly {
    readonly queryTerm: number;
    readonly reading: Reading;
    readonly terms: NumberedSequence;
  }[];
}

/** What of the query a document holds: for the line that says why it was found. */
export interface Match {
  /** Index into the query's terms. */
  readonly queryTerm: number;
  readonly fields: readonly string[];
  /** The words as the index keeps them, e.g. "elevator"; empty for phrases. */
  readonly words: readonly string[];
  readonly reading: Reading;
}

/** Turns the words of a query into term numbers once for many documents. */
export function prepareLookup(query: SearchQuery, vocabulary: Vocabulary): MatchLookup {
  const places = new Map<number, Place[]>();
  const sequences: { queryTerm: number; reading: Reading; terms: NumberedSequence }[] = [];
  for (const [queryTerm, { alternatives }] of query.terms.entries()) {
    for (const { sequence, reading } of alternatives) {
      const numbered = numberSequence(sequence, vocabulary);
      if (numbered && numbered.length > 1) {
        sequences.push({ queryTerm, reading, terms: numbered });
      } else if (numbered) {
        for (const number of numbered[0] ?? []) {
          const list = places.get(number) ?? [];
          if (!list.some((place) => place.queryTerm === queryTerm)) {
            places.set(number, [...list, { queryTerm, reading }]);
          }
        }
      }
    }
  }
  return { places, sequences };
}

/** Which query terms a document matches, in which fields, by which words. */
export function findMatches(
  lookup: MatchLookup,
  store: DocumentStore,
  vocabulary: Vocabulary,
  document: number,
): Match[] {
  const found = new Map<number, { fields: Set<string>; words: Set<string>; reading: Reading }>();
  const note = (queryTerm: number, field: number, reading: Reading, word?: string) => {
    const match = found.get(queryTerm) ?? { fields: new Set(), words: new Set(), reading };
    match.fields.add(store.shape.fields[field]?.name ?? "");
    if (word !== undefined) {
      match.words.add(word);
    }
    match.reading = reading === "typed" ? reading : match.reading;
    found.set(queryTerm, match);
  };
  let field = 0;
  for (const entry of store.entriesOf(document)) {
    if (entry & fieldFlag) {
      field = entry & termMask;
      continue;
    }
    for (const place of lookup.places.get(entry & termMask) ?? []) {
      note(place.queryTerm, field, place.reading, vocabulary.termOf(entry & termMask));
    }
  }
  for (const { queryTerm, reading, terms } of lookup.sequences) {
    const counts = countSequence(terms, store, document);
    for (let rest = counts, at = 0; rest !== 0; rest >>>= 4, at++) {
      if (rest & 15) {
        note(queryTerm, at, reading);
      }
    }
  }
  return [...found]
    .sort(([one], [other]) => one - other)
    .map(([queryTerm, { fields, words, reading }]) => ({
      queryTerm,
      fields: [...fields],
      words: [...words],
      reading,
    }));
}

/**
 * How near neighbouring query terms stand to each other in a document: for each term but the last, 1 over the least
 * distance in words to the next term within one field that is long enough, 0 beyond the reach.
 */
export function nearnessOf(
  lookup: MatchLookup,
  store: DocumentStore,
  document: number,
  termCount: number,
  settings: RankingSettings,
): Float64Array {
  const nearness = new Float64Array(Math.max(0, termCount - 1));
  if (nearness.length === 0 || !hasLongField(store, document, settings.nearnessFrom)) {
    return nearness;
  }
  const lastSeen = new Int32Array(termCount).fill(-1000);
  const reach = settings.nearnessReach;
  let position = 0;
  let longEnough = false;
  for (const entry of store.entriesOf(document)) {
    if (entry & fieldFlag) {
      position += 1000;
      longEnough = store.lengthOf(document, entry & termMask) >= settings.nearnessFrom;
      continue;
    }
    if (!longEnough) {
      continue;
    }
    position += entry & extraFlag ? 0 : 1;
    const places = lookup.places.get(entry & termMask) ?? [];
    for (const { queryTerm } of places) {
      bringNear(nearness, queryTerm - 1, position - (lastSeen[queryTerm - 1] ?? -1000), reach);
      bringNear(nearness, queryTerm, position - (lastSeen[queryTerm + 1] ?? -1000), reach);
    }
    for (const { queryTerm } of places) {
      lastSeen[queryTerm] = position;
    }
  }
  return nearness;
}

function hasLongField(store: DocumentStore, document: number, words: number): boolean {
  for (let field = 0; field < store.shape.fields.length; field++) {
    if (store.lengthOf(document, field) >= words) {
      return true;
    }
  }
  return false;
}

function bringNear(nearness: Float64Array, pair: number, distance: number, reach: number): void {
  if (pair >= 0 && pair < nearness.length && distance > 0 && distance <= reach) {
    nearness[pair] = Math.max(nearness[pair] as number, 1 / distance);
  }
}
