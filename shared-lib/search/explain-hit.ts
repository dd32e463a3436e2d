import type { SearchHit } from "./rank-documents.ts";
import type { QueryTerm, Reading, SearchQuery } from "./search-query.ts";

/** One thing of the query that a hit answers. */
export interface AnsweredTerm {
  /** As typed. */
  readonly asked: string;
  /** The words found for it; empty when a phrase was found. */
  readonly found: readonly string[];
  readonly fields: readonly string[];
  readonly reading: Reading;
}

/** Why a hit was found, as facts for the line below its title; the words are the screen's. */
export interface HitReasons {
  readonly answered: readonly AnsweredTerm[];
  /** What was typed and is not in this document in any reading. */
  readonly unanswered: readonly string[];
  /** Fields with matches, the one answering most first. */
  readonly fields: readonly string[];
  /** Attributes for which it was raised, such as "lift" or "controllerFamily". */
  readonly raisedFor: readonly string[];
}

/** Tells why a hit stands where it does. */
export function explainHit(hit: SearchHit, query: SearchQuery): HitReasons {
  const answered = hit.matches.map((match) => ({
    asked: query.terms[match.queryTerm]?.text ?? "",
    found: match.words,
    fields: match.fields,
    reading: match.reading,
  }));
  const answers = hit.matches.flatMap((match) => query.terms[match.queryTerm] ?? []);
  const counts = new Map<string, number>();
  for (const field of hit.matches.flatMap((match) => match.fields)) {
    counts.set(field, (counts.get(field) ?? 0) + 1);
  }
  return {
    answered,
    unanswered: query.terms
      .filter((term) => !answers.some((other) => covers(other, term)))
      .map(({ text }) => text),
    fields: [...counts].sort(([, one], [, other]) => other - one).map(([field]) => field),
    raisedFor: hit.boostedBy,
  };
}

/** A phrase that was found answers its words, and a word that was found its part of the phrase. */
function covers(answer: QueryTerm, term: QueryTerm): boolean {
  return answer.start < term.end && term.start < answer.end;
}
