/** Why an alternative stands in for what was typed. */
export type Reading = "typed" | "inflection" | "synonym" | "correction" | "completion" | "compound" | "part";

/** True for readings that are the word itself in another form, not another word. */
export function isOwnForm(reading: Reading): boolean {
  return reading !== "synonym" && reading !== "compound" && reading !== "part";
}

/**
 * One way to read a query term: a sequence of places, each filled by any of some terms. One place is a plain word;
 * several must stand beside each other in one field ("wrong order").
 */
export interface Alternative {
  readonly sequence: readonly (readonly string[])[];
  /** 0 to 1, beside 1 for what was typed. */
  readonly weight: number;
  readonly reading: Reading;
}

/** One thing the person asked for, with everything that counts as it. */
export interface QueryTerm {
  /** As typed. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** What finding it is worth beside the other terms; 1 for an ordinary word. */
  readonly weight: number;
  readonly alternatives: readonly Alternative[];
}

/** A word that no document has, and what was read instead. */
export interface Correction {
  readonly typed: string;
  readonly read: string;
  readonly start: number;
  readonly end: number;
}

/** A query after analysis. Plain values: it can cross a worker border and be shown. */
export interface SearchQuery {
  readonly text: string;
  readonly terms: readonly QueryTerm[];
  readonly corrections: readonly Correction[];
  /** Other words that were read along, best first: for "Also read as: swapped, crossed, wrong order". */
  readonly alsoReadAs: readonly string[];
  /** True when the text was longer, or had more words, than is read. */
  readonly cut: boolean;
}
