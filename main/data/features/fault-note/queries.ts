import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Handlers } from "../../context.ts";
import { listNotesSql, noteLinesByIdSql, proofOfNoteSql } from "./fault-note.sql.ts";
import { noteLines, toFaultNote } from "./note-record.ts";
import { suggestNotes } from "./suggest-notes.ts";

type Found = OutputOf<"faultNote.find">;

/** Distinct callouts by cause, the cause that ended most first. A callout that took two causes counts for both. */
function countCauses(proof: Found["proof"]): Found["counts"] {
  const callouts = new Map<string | null, Set<string>>();
  for (const { causeKey, calloutId } of proof) {
    if (calloutId === null) continue;
    const known = callouts.get(causeKey) ?? new Set();
    callouts.set(causeKey, known.add(calloutId));
  }
  return [...callouts]
    .map(([causeKey, ended]) => ({ causeKey, callouts: ended.size }))
    .sort((a, b) => b.callouts - a.callouts || String(a.causeKey).localeCompare(String(b.causeKey), "en"));
}

export const faultNoteQueries: Handlers<"faultNote.list" | "faultNote.find" | "faultNote.suggest"> = {
  "faultNote.list"(context, { group, status }) {
    const sql = listNotesSql(group !== undefined, status !== undefined);
    const parameters = { ...(group ? { group } : {}), ...(status ? { status } : {}) };
    return { notes: noteLines(context.store, sql, parameters) };
  },

  "faultNote.find"(context, { id }) {
    const note = toFaultNote(context, context.records.find("fault note", id));
    const proof = context.store.all<Found["proof"][number]>(proofOfNoteSql, { noteId: id });
    const callouts = new Set(
      proof.map(({ calloutId }) => calloutId).filter((calloutId) => calloutId !== null),
    );
    return {
      note,
      counts: countCauses(proof),
      callouts: callouts.size,
      lifts: new Set(proof.map(({ liftId }) => liftId)).size,
      proof,
    };
  },

  "faultNote.suggest"(context, { text, liftId, limit }) {
    const lift = liftId ? context.records.find("lift", liftId) : null;
    const suggestions = suggestNotes(context.store, text, lift, limit);
    const ids = JSON.stringify(suggestions.map(({ noteId }) => noteId));
    const lines = new Map(noteLines(context.store, noteLinesByIdSql, { ids }).map((line) => [line.id, line]));
    return {
      notes: suggestions.flatMap(({ noteId, why }) => {
        const line = lines.get(noteId);
        return line ? [{ ...line, why }] : [];
      }),
    };
  },
};
