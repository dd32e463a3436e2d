import { type ResultKind, resultKinds } from "#shared-lib/contract/search.ts";
import { explainHit } from "#shared-lib/search/explain-hit.ts";
import type { HitGroup } from "#shared-lib/search/rank-documents.ts";
import type { SearchQuery } from "#shared-lib/search/search-query.ts";
import type { Context, Handlers } from "../../context.ts";
import { findLiftLine } from "../lift/lift-lines.ts";
import { HitDescriber } from "./describe-hits.ts";
import { type RankedSearch, rankedSearch } from "./ranked-search.ts";

export const searchQueries: Handlers<"search.find"> = {
  "search.find"(context, { contextLiftId, limitPerKind, ...input }) {
    const search: RankedSearch = {
      ...input,
      limitPerKind,
      context: contextLiftId ? findLiftLine(context.store, contextLiftId) : null,
    };
    const { query, groups } = rankedSearch(context.store, context.search, search);
    const describer = new HitDescriber(context.store, query);
    const ordered = [...groups].sort((one, other) => placeOf(one, query) - placeOf(other, query));
    const described = ordered.map(({ kind, total, hits }) => ({
      kind: kind as ResultKind,
      total,
      hits: hits.map((hit) => describer.describe(hit)).filter((hit) => hit !== null),
    }));
    return {
      alsoReadAs: query.alsoReadAs.slice(0, 8),
      corrections: query.corrections.map(({ typed, read }) => ({ typed, readAs: read })),
      groups: described.filter(({ hits }) => hits.length > 0),
      advice: described.length === 0 ? adviceFor(context, search, query) : null,
      warming: !context.search.isWarm,
    };
  },
};

/** Groups stand in one order, so that results stay where they are while somebody types; a named lift comes first. */
function placeOf(group: HitGroup, query: SearchQuery): number {
  const best = group.hits[0];
  const asked = query.terms.filter((term) => term.weight === 1).length;
  if (group.kind === "lift" && best && asked > 0) {
    const { answered, unanswered } = explainHit(best, query);
    const named = answered.filter(({ fields }) => fields.includes("title") || fields.includes("place"));
    if (unanswered.length === 0 && named.length >= asked) return -1;
  }
  return resultKinds.indexOf(group.kind as ResultKind);
}

function adviceFor(context: Context, search: RankedSearch, query: SearchQuery): string {
  if (query.terms.length === 0)
    return "Type what the caller says, a part of a lift’s name, or what a display shows.";
  const filtered =
    Object.values(search.filter).some((value) => value !== undefined) || search.kinds !== undefined;
  if (filtered) {
    const without = rankedSearch(context.store, context.search, {
      ...search,
      filter: {},
      kinds: undefined,
      limitPerKind: 1,
    });
    const total = without.groups.reduce((sum, group) => sum + group.total, 0);
    if (total > 0) return `Nothing with these filters; ${total} without them. Take a filter away.`;
  }
  return "Nothing found. Try fewer words, or the words a caller would use: “stops too low”, “doors reopen”. What is found now can become a new note.";
}
