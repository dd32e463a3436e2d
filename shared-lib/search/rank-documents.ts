import type { AttributeFilter } from "./attribute-column.ts";
import { findMatches, type Match, nearnessOf, prepareLookup } from "./find-matches.ts";
import type { RankingSettings } from "./ranking-settings.ts";
import type { DocumentScorer, IndexParts, Scores } from "./score-documents.ts";
import type { SearchQuery } from "./search-query.ts";
import { TopHits } from "./top-hits.ts";

/** Documents whose attribute holds one of `anyOf` have their score multiplied by `factor` (same lift, confirmed). */
export interface Boost {
  readonly attribute: string;
  readonly anyOf: readonly string[];
  readonly factor: number;
}

/** Milliseconds since 1970, both ends included. */
export interface DateRange {
  readonly from?: number;
  readonly to?: number;
}

export interface SearchOptions {
  readonly limitPerKind: number;
  /** Kinds wanted; all when left out. */
  readonly kinds?: readonly string[];
  /** By attribute name; a document must pass every one. */
  readonly filters?: Readonly<Record<string, AttributeFilter>>;
  readonly dates?: DateRange;
  readonly boosts?: readonly Boost[];
  /** A further factor by key, for what attributes cannot say. Called for every document that matches. */
  readonly multiplier?: (key: string) => number;
  /** Keys left out, such as the record that is being written. */
  readonly without?: readonly string[];
}

export interface SearchHit {
  readonly key: string;
  readonly kind: string;
  readonly score: number;
  readonly date?: number;
  readonly matches: readonly Match[];
  /** Attributes of the boosts that raised it. */
  readonly boostedBy: readonly string[];
}

export interface HitGroup {
  readonly kind: string;
  /** How many documents of this kind match any term. */
  readonly total: number;
  readonly hits: readonly SearchHit[];
}

export interface SearchResult {
  /** Kinds with hits, the one with the best hit first. */
  readonly groups: readonly HitGroup[];
}

interface Candidate {
  readonly document: number;
  readonly factor: number;
  score: number;
}

interface Gathering {
  total: number;
  readonly top: TopHits<Candidate>;
}

/** Scores, filters, boosts and sorts: the ranking from end to end. */
export function rankDocuments(
  query: SearchQuery,
  options: SearchOptions,
  parts: IndexParts,
  scorer: DocumentScorer,
  settings: RankingSettings,
): SearchResult {
  if (query.terms.length === 0) {
    return { groups: [] };
  }
  const scores = scorer.score(query, parts, settings);
  const before = orderOf(parts);
  const gathered = gather(scores, options, parts, settings, before);
  const lookup = prepareLookup(query, parts.vocabulary);
  const groups = [...gathered].map(([kindCell, { total, top }]) => {
    const candidates = top.sorted();
    for (const candidate of candidates) {
      const nearness = nearnessOf(lookup, parts.store, candidate.document, query.terms.length, settings);
      candidate.score += candidate.factor * nearnessWorth(nearness, scores.worths, settings.nearnessShare);
    }
    const best = candidates
      .sort((one, other) => (before(one, other) ? -1 : 1))
      .slice(0, options.limitPerKind);
    const kind = parts.store.kinds.combinations[kindCell]?.[0] ?? "";
    const hits = best.map((candidate) => ({
      ...describe(candidate, kind, options, parts),
      matches: findMatches(lookup, parts.store, parts.vocabulary, candidate.document),
    }));
    return { kind, total, hits };
  });
  const bestScore = (group: HitGroup) => group.hits[0]?.score ?? 0;
  return {
    groups: groups.sort(
      (one, other) => bestScore(other) - bestScore(one) || (one.kind < other.kind ? -1 : 1),
    ),
  };
}

/** Best score first; equal ones newest first, then by key, so that the order never depends on how the index grew. */
function orderOf({ store }: IndexParts): (one: Candidate, other: Candidate) => boolean {
  return (one, other) => {
    if (one.score !== other.score) {
      return one.score > other.score;
    }
    const oneDate = store.dateOf(one.document);
    const otherDate = store.dateOf(other.document);
    if (oneDate !== otherDate && !(Number.isNaN(oneDate) && Number.isNaN(otherDate))) {
      return oneDate > otherDate || Number.isNaN(otherDate);
    }
    return store.keyOf(one.document) < store.keyOf(other.document);
  };
}

function gather(
  scores: Scores,
  options: SearchOptions,
  parts: IndexParts,
  settings: RankingSettings,
  before: (one: Candidate, other: Candidate) => boolean,
): Map<number, Gathering> {
  const { store } = parts;
  const passes = filterOf(options, parts);
  const boosts = boostsOf(options, parts);
  const depth = Math.max(options.limitPerKind, settings.nearnessDepth);
  const byKind = store.kinds.combinations.map(
    (): Gathering => ({ total: 0, top: new TopHits(depth, before) }),
  );
  for (let index = 0; index < scores.touchedCount; index++) {
    const document = scores.touched[index] as number;
    if (passes && !passes(document)) {
      continue;
    }
    const gathering = byKind[store.kinds.cell(document)] as Gathering;
    gathering.total++;
    // Most documents lie below the worst kept one even at their best: no more is worked out for them.
    const worst = gathering.top.worstKept?.score ?? Number.NEGATIVE_INFINITY;
    const total = scores.totals[document] as number;
    if (total * boosts.highest < worst) {
      continue;
    }
    const factor = boosts.factorOf(document);
    const score = factor * total;
    if (score >= worst) {
      gathering.top.offer({ document, factor, score });
    }
  }
  return new Map([...byKind.entries()].filter(([, { total }]) => total > 0));
}

/** Undefined where every document passes. */
function filterOf(
  options: SearchOptions,
  { store }: IndexParts,
): ((document: number) => boolean) | undefined {
  const tests: ((document: number) => boolean)[] = [];
  if (options.kinds) {
    const passing = store.kinds.passing({ anyOf: options.kinds });
    tests.push((document) => passing[store.kinds.cell(document)] === 1);
  }
  for (const [name, filter] of Object.entries(options.filters ?? {})) {
    const column = store.columns.get(name);
    const passing = column?.passing(filter);
    tests.push((document) => column !== undefined && passing?.[column.cell(document)] === 1);
  }
  if (options.dates) {
    const { from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY } = options.dates;
    tests.push((document) => store.dateOf(document) >= from && store.dateOf(document) <= to);
  }
  if (options.without) {
    const without = new Set(options.without.map((key) => store.numberOf(key)));
    tests.push((document) => !without.has(document));
  }
  const [only] = tests;
  return tests.length <= 1 ? only : (document) => tests.every((test) => test(document));
}

/** What a score is multiplied by, and the most that this can be. */
function boostsOf(
  options: SearchOptions,
  { store }: IndexParts,
): { readonly highest: number; readonly factorOf: (document: number) => number } {
  const boosts = (options.boosts ?? []).flatMap((boost) => {
    const column = store.columns.get(boost.attribute);
    return column ? [{ column, passing: column.passing(boost), factor: boost.factor }] : [];
  });
  const { multiplier } = options;
  return {
    highest: multiplier
      ? Number.POSITIVE_INFINITY
      : boosts.reduce((highest, { factor }) => highest * Math.max(1, factor), 1),
    factorOf(document) {
      let factor = multiplier ? multiplier(store.keyOf(document)) : 1;
      for (const boost of boosts) {
        factor *= boost.passing[boost.column.cell(document)] === 1 ? boost.factor : 1;
      }
      return factor;
    },
  };
}

function nearnessWorth(nearness: Float64Array, worths: readonly number[], share: number): number {
  let sum = 0;
  for (let pair = 0; pair < nearness.length; pair++) {
    sum += (nearness[pair] as number) * Math.min(worths[pair] as number, worths[pair + 1] as number);
  }
  return share * sum;
}

function describe(
  candidate: Candidate,
  kind: string,
  options: SearchOptions,
  { store }: IndexParts,
): Omit<SearchHit, "matches"> {
  const date = store.dateOf(candidate.document);
  const boostedBy = (options.boosts ?? []).filter((boost) => {
    const held = store.columns.get(boost.attribute)?.valuesOf(candidate.document) ?? [];
    return held.some((value) => boost.anyOf.includes(value));
  });
  return {
    key: store.keyOf(candidate.document),
    kind,
    score: candidate.score,
    ...(Number.isNaN(date) ? {} : { date }),
    boostedBy: boostedBy.map((boost) => boost.attribute),
  };
}
