import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import type { ResultKind } from "#shared-lib/contract/search.ts";
import type { SearchDocument } from "#shared-lib/search/index-shape.ts";
import { fromRow } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { readCallout } from "./callout-document.ts";
import {
  checkDocumentSql,
  fixDocumentSql,
  liftDocumentSql,
  noteDocumentSql,
  visitDocumentSql,
} from "./search.sql.ts";

export type StoredKind = Exclude<ResultKind, "calculator">;

/** A row of `searchDocument`. */
export interface DocumentRow {
  readonly kind: StoredKind;
  readonly ref: string;
  readonly title: string;
  readonly symptom: string;
  readonly cause: string;
  readonly fix: string;
  readonly body: string;
  readonly place: string;
  readonly marking: string;
  readonly site: string;
  readonly lift: string;
  readonly controllerFamily: string;
  readonly drive: string;
  readonly faultGroup: string;
  readonly state: string;
  readonly at: string | null;
}

export const textFields = ["title", "symptom", "cause", "fix", "body", "place", "marking"] as const;
export type TextField = (typeof textFields)[number];

const documentSql: Readonly<Record<Exclude<StoredKind, "note" | "callout">, string>> = {
  fix: fixDocumentSql,
  lift: liftDocumentSql,
  check: checkDocumentSql,
  visit: visitDocumentSql,
};

/** What a record says to the search now; undefined when it is deleted. */
export function readDocument(store: Store, kind: StoredKind, id: string): DocumentRow | undefined {
  if (kind === "note") return readNote(store, id);
  if (kind === "callout") return readCallout(store, id);
  return store.get<DocumentRow>(documentSql[kind], { id });
}

function readNote(store: Store, id: string): DocumentRow | undefined {
  const row = store.get<Record<string, unknown>>(noteDocumentSql, { id });
  if (!row) return undefined;
  const note = fromRow("fault note", row) as unknown as FaultNoteFields & {
    number: string;
    faultGroup: string;
    status: string;
  };
  const lines = (texts: readonly (string | undefined)[]): string => texts.filter(Boolean).join("\n");
  return {
    kind: "note",
    ref: id,
    title: note.title,
    symptom: lines(note.symptoms),
    cause: lines(note.causes.flatMap((cause) => [cause.title, cause.tell])),
    fix: lines(note.causes.map((cause) => cause.fix)),
    body: lines([note.applies.words, ...note.checks.flatMap((check) => [check.title, check.how])]),
    place: "",
    marking: note.number,
    site: "",
    lift: "",
    controllerFamily: note.applies.controllerFamilies.join("\n"),
    drive: note.applies.drives.join("\n"),
    faultGroup: note.faultGroup,
    state: note.status,
    at: null,
  };
}

export function documentKey(kind: string, ref: string): string {
  return `${kind} ${ref}`;
}

/** A row as the ranked index takes it. */
export function toSearchDocument(row: DocumentRow): SearchDocument {
  const attribute = (text: string): string | readonly string[] | undefined =>
    text === "" ? undefined : text.includes("\n") ? text.split("\n") : text;
  const { title, symptom, cause, fix, body, place, marking } = row;
  return {
    key: documentKey(row.kind, row.ref),
    kind: row.kind,
    fields: { title, symptom, cause, fix, body, place, marking },
    attributes: {
      site: attribute(row.site),
      lift: attribute(row.lift),
      controllerFamily: attribute(row.controllerFamily),
      drive: attribute(row.drive),
      faultGroup: attribute(row.faultGroup),
      state: attribute(row.state),
    },
    ...(row.at ? { date: Date.parse(row.at) } : {}),
  };
}
