import type { LiftLine } from "#shared-lib/contract/lift.ts";
import type { ParsedInputOf } from "#shared-lib/contract/operations.ts";
import type { ResultKind } from "#shared-lib/contract/search.ts";
import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import { analyseText } from "#shared-lib/search/analyse-text.ts";
import type { AttributeFilter } from "#shared-lib/search/attribute-column.ts";
import { sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import type { Boost, HitGroup, SearchOptions } from "#shared-lib/search/rank-documents.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import type { SearchQuery } from "#shared-lib/search/search-query.ts";
import type { Store } from "../../store.ts";
import type { SearchIndexer } from "./indexer.ts";
import { matchTextSql } from "./search.sql.ts";
import { type DocumentRow, toSearchDocument } from "./search-documents.ts";

export type Filter = ParsedInputOf<"search.find">["filter"];

export interface RankedSearch {
  readonly text: string;
  readonly kinds?: readonly ResultKind[] | undefined;
  readonly filter: Filter;
  readonly context: LiftLine | null;
  readonly limitPerKind: number;
  readonly keepWords: readonly string[];
  readonly typing: boolean;
}

export interface RankedAnswer {
  readonly query: SearchQuery;
  readonly groups: readonly HitGroup[];
}

/** Factors on the score; a withdrawn note stays findable but stands behind the others. */
const boosts = { sameLift: 1.5, sameFamily: 1.2, confirmed: 1.15, withdrawn: 0.4 } as const;
const datedKinds: readonly ResultKind[] = ["fix", "callout", "check", "visit"];
const undatedKinds: readonly ResultKind[] = ["note", "calculator", "lift"];
const candidatesWhileWarming = 400;

/** Finds and ranks. While the ranked index is being built, the database's full-text index names the candidates. */
export function rankedSearch(store: Store, indexer: SearchIndexer, search: RankedSearch): RankedAnswer {
  const index = indexer.isWarm ? indexer.index : candidateIndex(store, indexer, search.text);
  const query = analyseQuery(search.text, index.words, { typing: search.typing, keep: search.keepWords });
  const options: SearchOptions = {
    limitPerKind: search.limitPerKind,
    filters: filtersOf(search.filter),
    boosts: boostsOf(search.context),
  };
  const wanted = search.kinds ?? [...undatedKinds, ...datedKinds];
  const dates = datesOf(search.filter);
  if (!dates) return { query, groups: index.search(query, { ...options, kinds: wanted }).groups };
  const groups = [
    ...index.search(query, { ...options, kinds: wanted.filter((kind) => undatedKinds.includes(kind)) })
      .groups,
    ...index.search(query, { ...options, kinds: wanted.filter((kind) => datedKinds.includes(kind)), dates })
      .groups,
  ];
  return { query, groups };
}

function filtersOf(filter: Filter): Record<string, AttributeFilter> {
  const filters: Record<string, AttributeFilter> = {};
  if (filter.siteId) filters.site = { anyOf: [filter.siteId], orUnset: true };
  if (filter.liftId) filters.lift = { anyOf: [filter.liftId], orUnset: true };
  if (filter.controllerFamily) filters.controllerFamily = { anyOf: [filter.controllerFamily], orUnset: true };
  if (filter.driveKind) filters.drive = { anyOf: [filter.driveKind], orUnset: true };
  if (filter.group) filters.faultGroup = { anyOf: [filter.group] };
  return filters;
}

function boostsOf(context: LiftLine | null): Boost[] {
  const always: Boost[] = [
    { attribute: "state", anyOf: ["confirmed"], factor: boosts.confirmed },
    { attribute: "state", anyOf: ["withdrawn"], factor: boosts.withdrawn },
  ];
  if (!context) return always;
  const family: Boost[] = context.controllerFamily
    ? [{ attribute: "controllerFamily", anyOf: [context.controllerFamily], factor: boosts.sameFamily }]
    : [];
  return [{ attribute: "lift", anyOf: [context.id], factor: boosts.sameLift }, ...family, ...always];
}

function datesOf(filter: Filter): SearchOptions["dates"] | null {
  if (!filter.since && !filter.until) return null;
  return {
    ...(filter.since ? { from: Date.parse(filter.since) } : {}),
    ...(filter.until ? { to: Date.parse(filter.until) } : {}),
  };
}

/** A small index over the calculators and what the full-text index names: all words first, else any of them. */
function candidateIndex(store: Store, indexer: SearchIndexer, text: string): SearchIndex {
  const words = [...new Set(analyseText(text.slice(0, 2000)).map(({ term }) => term))]
    .filter((term) => /^[\p{L}\p{N}]+$/u.test(term))
    .slice(0, 16);
  const index = new SearchIndex(sillbookIndexShape);
  index.addAll(indexer.calculatorDocuments);
  if (words.length === 0) return index;
  const find = (join: string): DocumentRow[] =>
    store.all<DocumentRow>(matchTextSql, {
      match: words.map((word) => `"${word}*"`).join(join),
      limit: candidatesWhileWarming,
    });
  const all = find(" ");
  const rows = all.length >= 20 ? all : [...all, ...find(" OR ")];
  index.addAll(rows.map(toSearchDocument));
  return index;
}
