import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type StarterNote, starterNoteSchema } from "#shared-lib/starter-note.ts";
import { type LabelledSet, readLines } from "./labelled-set.ts";

interface OwnQuery {
  readonly id: string;
  readonly text: string;
  readonly relevant: Readonly<Record<string, number>>;
}

const lines = (texts: readonly (string | undefined)[]): string => texts.filter(Boolean).join("\n");

/**
 * The starter notes of the program with queries of our own: what people say or type, written from the titles of the
 * notes before any result was looked at, and not changed since. No setting was chosen on them.
 *
 * @param root folder of the project
 */
export function readOwnSet(root: string): LabelledSet {
  const notes = join(root, "main/data/starter-notes");
  const documents = readdirSync(notes)
    .filter((name) => name.endsWith(".json"))
    .map((name) => starterNoteSchema.parse(JSON.parse(readFileSync(join(notes, name), "utf8"))))
    .map(documentOf);
  const queries = readLines<OwnQuery>(join(root, "tests/bench/search-quality/own-set/queries.jsonl"));
  return {
    name: "own set",
    documents,
    queries: queries.map(({ id, text, relevant }) => ({
      id,
      text,
      without: new Set(),
      grades: new Map(Object.entries(relevant)),
    })),
  };
}

/** The fields as the program fills them for a fault note; `text` is what an engine without fields reads. */
function documentOf(note: StarterNote) {
  const fields = {
    title: note.title,
    symptom: lines(note.symptoms),
    cause: lines(note.causes.flatMap((cause) => [cause.title, cause.tell])),
    fix: lines(note.causes.map((cause) => cause.fix)),
    body: lines([note.applies.words, ...note.checks.flatMap((check) => [check.title, check.how])]),
  };
  const { title, ...rest } = fields;
  return { id: note.key, title, text: lines(Object.values(rest)), fields };
}
