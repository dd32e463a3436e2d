import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { analyseQuery } from "#shared-lib/search/analyse-query.ts";
import { explainHit } from "#shared-lib/search/explain-hit.ts";
import { type IndexShape, sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import type { Boost } from "#shared-lib/search/rank-documents.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import { fromRow, type StoredRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { notesStateSql, notesToSuggestSql } from "./fault-note.sql.ts";

export interface Suggestion {
  readonly noteId: string;
  readonly why: string;
}

/** The fields and weights of the program's own search, with what a note says of where it applies. */
const noteShape: IndexShape = {
  fields: sillbookIndexShape.fields,
  attributes: ["controllerFamily", "drive", "door", "status"],
};

const wordsOfAttribute: Readonly<Record<string, string>> = {
  controllerFamily: "same controller family",
  drive: "same kind of drive",
  door: "same kind of door",
};

interface NoteIndex {
  readonly state: string;
  readonly index: SearchIndex;
}
const indexes = new WeakMap<Store, NoteIndex>();

function indexNotes(store: Store): SearchIndex {
  const index = new SearchIndex(noteShape);
  const documents = store.all<Record<string, unknown>>(notesToSuggestSql).map((row) => {
    const record = fromRow("fault note", row);
    const note = record as unknown as FaultNoteFields & { status: string };
    return {
      key: record.id,
      kind: "note",
      fields: {
        title: note.title,
        symptom: note.symptoms.join(". "),
        cause: note.causes.map((cause) => `${cause.title}. ${cause.tell}`).join(" "),
        fix: note.causes.map((cause) => cause.fix).join(" "),
      },
      attributes: {
        controllerFamily: note.applies.controllerFamilies,
        drive: note.applies.drives,
        door: note.applies.doors,
        status: note.status,
      },
    };
  });
  index.addAll(documents);
  return index;
}

/** The index of all notes, made again when a note was added, changed or deleted: each of them raises the sum of versions. */
function noteIndex(store: Store): SearchIndex {
  const { count, versions } = store.get<{ count: number; versions: number }>(notesStateSql) ?? {
    count: 0,
    versions: 0,
  };
  const state = `${count} ${versions}`;
  const known = indexes.get(store);
  if (known?.state === state) return known.index;
  const index = indexNotes(store);
  indexes.set(store, { state, index });
  return index;
}

function boostsFor(lift: StoredRecord | null): Boost[] {
  const boost = (attribute: string, value: unknown, factor: number): Boost[] =>
    typeof value === "string" && value !== "" ? [{ attribute, anyOf: [value], factor }] : [];
  return [
    ...boost("controllerFamily", lift?.controllerFamily, 1.2),
    ...boost("drive", lift?.driveKind, 1.1),
    ...boost("door", lift?.doorKind, 1.1),
    // Found, so that nobody writes it again, but a note that was withdrawn is not the one to lean on.
    { attribute: "status", anyOf: ["withdrawn"], factor: 0.5 },
  ];
}

/** Notes that a text may belong to, best first; none where no word of it stands in any note. */
export function suggestNotes(
  store: Store,
  text: string,
  lift: StoredRecord | null,
  limit: number,
): Suggestion[] {
  const index = noteIndex(store);
  const query = analyseQuery(text, index.words);
  const { groups } = index.search(query, { limitPerKind: limit, boosts: boostsFor(lift) });
  return (groups[0]?.hits ?? []).map((hit) => {
    const reasons = explainHit(hit, query);
    const found = [...new Set(reasons.answered.flatMap((term) => term.found))].slice(0, 6).join(", ");
    const raised = reasons.raisedFor
      .map((name) => wordsOfAttribute[name])
      .filter((words) => words !== undefined);
    return {
      noteId: hit.key,
      why: [`${reasons.fields.join(" and ")}${found === "" ? "" : `: ${found}`}`, ...raised].join("; "),
    };
  });
}
