import { z } from "zod";

/** How sure a limit or formula is, and where it is from. */
export const sourceStatuses = [
  "published",
  "second-hand",
  "from memory",
  "derived",
  "site",
  "common practice",
] as const;

export const sourceSchema = z.object({
  status: z.enum(sourceStatuses),
  /** "EN 81-20", empty where there is none. */
  document: z.string(),
  edition: z.string(),
  clause: z.string(),
  words: z.string(),
});
export type Source = z.infer<typeof sourceSchema>;
export type SourceStatus = (typeof sourceStatuses)[number];

export const derived = (words: string): Source => ({
  status: "derived",
  document: "",
  edition: "",
  clause: "",
  words,
});

export const site = (words: string): Source => ({
  status: "site",
  document: "",
  edition: "",
  clause: "",
  words,
});

/** A clause with its edition: national and later editions can differ, so a limit is never shown without it. */
export function clause(
  status: SourceStatus,
  document: string,
  edition: string,
  clauseNumber: string,
  words: string,
): Source {
  return { status, document, edition, clause: clauseNumber, words };
}

const reliance: Record<SourceStatus, string> = {
  published: "",
  "second-hand": "from notes on the clause, compare the current text",
  "from memory": "from memory, check against the current text",
  derived: "derived",
  site: "",
  "common practice": "common practice, no source",
};

/** "EN 81-20:2020, 5.3.8.1 (from notes on the clause, compare the current text)" */
export function writeSource(source: Source): string {
  const document = source.edition === "" ? source.document : `${source.document}:${source.edition}`;
  const place = [document, source.clause].filter((part) => part !== "").join(", ");
  const named = place === "" ? source.words : place;
  const how = reliance[source.status];
  return how === "" ? named : `${named} (${how})`;
}

/** Stands at the end of every verdict. */
export const whoDecides = "Local codes and licensed practice decide.";
