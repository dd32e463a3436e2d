import { existsSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";

export interface LabelledDocument {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Title and text as the fields of the program's own index, where the set has them. */
  readonly fields?: Readonly<Record<string, string>>;
}

export interface LabelledQuery {
  readonly id: string;
  readonly text: string;
  /** Documents taken out of this query's ranking: the query's own record, and documents graded -1. */
  readonly without: ReadonlySet<string>;
  /** Grade by document, only those above 0. */
  readonly grades: ReadonlyMap<string, number>;
}

export interface LabelledSet {
  readonly name: string;
  readonly documents: readonly LabelledDocument[];
  readonly queries: readonly LabelledQuery[];
}

export function readLines<Row>(file: string): Row[] {
  return readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => JSON.parse(line) as Row);
}

/** Reads docs.jsonl, queries.jsonl and qrels.jsonl of a folder; undefined when the folder holds no such set. */
export function readLabelledSet(folder: string): LabelledSet | undefined {
  if (!existsSync(join(folder, "docs.jsonl"))) {
    return undefined;
  }
  const documents = readLines<LabelledDocument>(join(folder, "docs.jsonl"));
  const judgements = readLines<{ qid: string; docid: string; grade: number }>(join(folder, "qrels.jsonl"));
  const asked = readLines<{ id: string; text: string; self?: string; same?: string[] }>(
    join(folder, "queries.jsonl"),
  );
  const queries = asked.map(({ id, text, self, same }) => {
    const own = judgements.filter((judgement) => judgement.qid === id);
    const without = new Set(own.filter(({ grade }) => grade < 0).map(({ docid }) => docid));
    for (const key of [...(self ? [self] : []), ...(same ?? [])]) {
      without.add(key);
    }
    const relevant = own.filter(({ grade, docid }) => grade > 0 && !without.has(docid));
    return { id, text, without, grades: new Map(relevant.map(({ docid, grade }) => [docid, grade])) };
  });
  return { name: basename(folder), documents, queries: queries.filter(({ grades }) => grades.size > 0) };
}

/** The number in a query's id: even ones are for choosing settings, odd ones for the figures that are reported. */
export function isOdd(query: LabelledQuery): boolean {
  return Number(query.id.replace(/\D/g, "")) % 2 === 1;
}
