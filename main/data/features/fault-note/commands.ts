import type { Cause } from "#shared-lib/contract/fault-note.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { NoteStatus } from "#shared-lib/words.ts";
import { type Context, type Handlers, signerOf } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { attachFix } from "../visit/attach-fix.ts";
import { refuseSameKeys, toNoteColumns } from "./note-record.ts";

/** The cause of a new note that its fix ended: its only cause, or the one that says the same. */
function causeOfFix(causes: readonly Cause[], fix: StoredRecord): string | null {
  if (causes.length === 1) return causes[0]?.key ?? null;
  return causes.find((cause) => cause.title === fix.cause)?.key ?? null;
}

function setStatus(
  context: Context,
  { id, version, reason }: { id: string; version: number; reason: string },
  status: NoteStatus,
): { id: string; version: number } {
  const note = context.records.findAtVersion("fault note", id, version);
  if (note.status === status) {
    throw new SillbookError("state-refused", `Fault note ${note.number} is ${status} already.`, { id });
  }
  return context.records.update("fault note", note, {
    status,
    statusBy: signerOf(context).id,
    statusAt: context.now,
    statusReason: reason,
  });
}

export const faultNoteCommands: Handlers<
  | "faultNote.write"
  | "faultNote.change"
  | "faultNote.confirm"
  | "faultNote.withdraw"
  | "faultNote.backToDraft"
> = {
  "faultNote.write"(context, { fromFixId, ...fields }) {
    refuseSameKeys(fields, []);
    const fix = fromFixId ? context.records.find("recorded fix", fromFixId) : null;
    const number = context.device.noteNumber();
    const saved = context.records.insert("fault note", {
      ...toNoteColumns(fields),
      number,
      status: "draft",
      statusReason: "",
      edited: false,
    });
    if (fix) attachFix(context, fix, saved.id, causeOfFix(fields.causes, fix));
    return { ...saved, number };
  },

  /** A starter note that is changed becomes the company's own text: later starts of the program leave it alone. */
  "faultNote.change"(context, { id, version, fields }) {
    const note = context.records.findAtVersion("fault note", id, version);
    refuseSameKeys(fields, ["fields"]);
    const columns = toNoteColumns(fields);
    const differs = Object.entries(columns).some(
      ([field, value]) => JSON.stringify(value) !== JSON.stringify(note[field]),
    );
    return context.records.update(
      "fault note",
      note,
      differs && note.starterKey ? { ...columns, edited: true } : columns,
    );
  },

  "faultNote.confirm"(context, input) {
    return setStatus(context, input, "confirmed");
  },

  "faultNote.withdraw"(context, input) {
    return setStatus(context, input, "withdrawn");
  },

  "faultNote.backToDraft"(context, input) {
    return setStatus(context, input, "draft");
  },
};
