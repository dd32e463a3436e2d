import { analyseText, type Token } from "#shared-lib/search/analyse-text.ts";
import type { IndexShape, SearchDocument } from "#shared-lib/search/index-shape.ts";
import { lengthShareOf, type RankingSettings } from "#shared-lib/search/ranking-settings.ts";
import type { QueryTerm, SearchQuery } from "#shared-lib/search/search-query.ts";

type Fields = readonly (readonly Token[])[];

const lengthOf = (tokens: readonly Token[]) => tokens.filter((token) => !token.extra).length;

function positionsOf(tokens: readonly Token[], words: readonly string[]): Set<number> {
  return new Set(tokens.filter((token) => words.includes(token.term)).map((token) => token.position));
}

/** Weighted occurrences of a query term in one field, counted in the plainest way. */
function countIn(tokens: readonly Token[], term: QueryTerm): number {
  const weights = new Map<string, number>();
  let sum = 0;
  for (const { sequence, weight } of term.alternatives) {
    const [only] = sequence;
    if (sequence.length === 1) {
      for (const word of only ?? []) {
        weights.set(word, Math.max(weight, weights.get(word) ?? 0));
      }
    } else {
      const places = sequence.map((words) => positionsOf(tokens, words));
      const starts = [...(places[0] ?? [])].filter((from) =>
        places.every((place, offset) => place.has(from + offset)),
      );
      sum += weight * Math.min(15, starts.length);
    }
  }
  for (const [word, weight] of weights) {
    sum += weight * Math.min(15, tokens.filter((token) => token.term === word).length);
  }
  return sum;
}

/** The word itself in all its forms, without what merely means the same. */
function ownForms(term: QueryTerm): string[] {
  const forms = term.alternatives
    .filter(({ reading }) => ["typed", "inflection", "correction", "completion"].includes(reading))
    .flatMap(({ sequence }) => (sequence.length === 1 ? (sequence[0] ?? []) : []));
  return [...new Set(forms)];
}

function nearness(fields: Fields, one: QueryTerm, other: QueryTerm, settings: RankingSettings): number {
  const singles = (term: QueryTerm) =>
    term.alternatives.flatMap(({ sequence }) => (sequence.length === 1 ? (sequence[0] ?? []) : []));
  let best = 0;
  const long = fields.filter((tokens) => lengthOf(tokens) >= settings.nearnessFrom);
  for (const tokens of long) {
    for (const from of positionsOf(tokens, singles(one))) {
      for (const to of positionsOf(tokens, singles(other))) {
        const distance = Math.abs(from - to);
        best = distance > 0 && distance <= settings.nearnessReach ? Math.max(best, 1 / distance) : best;
      }
    }
  }
  return best;
}

/** BM25F with nearness by its definition, over texts, with no index at all: key and score, best first. */
export function plainSearch(
  documents: readonly SearchDocument[],
  query: SearchQuery,
  shape: IndexShape,
  settings: RankingSettings,
): { key: string; score: number }[] {
  const analysed = documents.map((document) =>
    shape.fields.map((field) => analyseText(document.fields[field.name] ?? "")),
  );
  const averages = shape.fields.map((_, field) => {
    const lengths = analysed.map((fields) => lengthOf(fields[field] ?? [])).filter((length) => length > 0);
    return lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
  });
  const counted = query.terms.map((term) => {
    const frequencies = analysed.map((fields) =>
      shape.fields.reduce((sum, { weight }, field) => {
        const lengthShare = lengthShareOf(averages[field] as number, settings);
        const tokens = fields[field] ?? [];
        const count = countIn(tokens, term);
        const norm = 1 - lengthShare + (lengthShare * lengthOf(tokens)) / (averages[field] as number);
        return count === 0 ? sum : sum + (weight * count) / norm;
      }, 0),
    );
    const found = frequencies.filter((frequency) => frequency > 0).length;
    const own = ownForms(term).reduce((sum, word) => {
      return sum + analysed.filter((fields) => fields.flat().some((token) => token.term === word)).length;
    }, 0);
    const frequent = own === 0 ? found : Math.min(own, found);
    const rarity = Math.log(1 + (documents.length - frequent + 0.5) / (frequent + 0.5));
    return { frequencies, worth: term.weight * rarity };
  });
  const k = settings.saturation;
  const scored = documents.map((document, at) => {
    let score = 0;
    for (const { frequencies, worth } of counted) {
      const frequency = frequencies[at] as number;
      score += (worth * frequency * (k + 1)) / (frequency + k);
    }
    for (let pair = 0; score > 0 && pair + 1 < query.terms.length; pair++) {
      const near = nearness(
        analysed[at] as Fields,
        query.terms[pair] as QueryTerm,
        query.terms[pair + 1] as QueryTerm,
        settings,
      );
      const worth = Math.min(counted[pair]?.worth ?? 0, counted[pair + 1]?.worth ?? 0);
      score += settings.nearnessShare * near * worth;
    }
    return { key: document.key, score };
  });
  return scored
    .filter(({ score }) => score > 0)
    .sort((one, other) => other.score - one.score || (one.key < other.key ? -1 : 1));
}
