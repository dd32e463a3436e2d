import { createHash } from "node:crypto";
import { type StarterNote, starterNoteBasis } from "#shared-lib/starter-note.ts";
import type { Context } from "../context.ts";
import type { DataCore } from "../data-core.ts";
import { installedStarterNotesSql } from "../features/fault-note/fault-note.sql.ts";
import type { Fields } from "../record-store.ts";

const files = import.meta.glob<StarterNote>("./*.json", { eager: true, import: "default" });

interface HashedNote {
  readonly note: StarterNote;
  readonly hash: string;
}

interface Installed {
  readonly id: string;
  readonly starterKey: string;
  readonly starterHash: string;
  readonly edited: number;
  readonly status: string;
  readonly deleted: number;
}

/** The notes that come with this version of the program, in order of their keys. */
export const builtInStarterNotes: readonly StarterNote[] = Object.values(files).sort((a, b) =>
  a.key < b.key ? -1 : 1,
);

function hashed(note: StarterNote): HashedNote {
  return { note, hash: createHash("sha256").update(JSON.stringify(note)).digest("hex") };
}

function columnsOf({ note, hash }: HashedNote): Fields {
  const { key, group, applies, basis: _basis, ...fields } = note;
  return {
    ...fields,
    faultGroup: group,
    applies: {
      drives: applies.drives,
      doors: applies.doors,
      controllerFamilies: [],
      words: applies.words ?? "",
    },
    starterKey: key,
    starterHash: hash,
  };
}

function insert(context: Context, note: HashedNote): void {
  context.records.insert("fault note", {
    ...columnsOf(note),
    number: context.device.noteNumber(),
    status: "draft",
    statusReason: starterNoteBasis,
    edited: false,
  });
}

/**
 * Brings the starter notes into the database as drafts: general practice that the company has not confirmed. Later
 * versions of the program update a note only while it is still as it came: not edited, not confirmed or withdrawn by a
 * person, who vouched for the text that was read, and not deleted. One transaction; none where nothing is to be done.
 */
export function installStarterNotes(
  core: DataCore,
  starterNotes: readonly StarterNote[] = builtInStarterNotes,
): void {
  const present = starterNotes.map(hashed);
  const installed = new Map(
    core.file.all<Installed>(installedStarterNotesSql).map((row) => [row.starterKey, row]),
  );
  const missing = present.filter(({ note }) => !installed.has(note.key));
  const changed = present.flatMap((next) => {
    const row = installed.get(next.note.key);
    const asItCame = row && row.edited === 0 && row.status === "draft" && row.deleted === 0;
    return asItCame && row.starterHash !== next.hash ? [{ id: row.id, next }] : [];
  });
  if (missing.length + changed.length === 0) return;
  core.write(null, (context) => {
    for (const note of missing) insert(context, note);
    for (const { id, next } of changed)
      context.records.update("fault note", context.records.find("fault note", id), columnsOf(next));
  });
}
