import { useState } from "react";
import type { FaultNote, FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { request } from "../../shell-client.ts";
import { type DraftState, useDraft } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { useWrite, type WriteState } from "../../use-write.ts";
import { fieldsOf, type NoteForm, readForm, toForm, withoutEmptyEntries } from "./note-form.ts";
import { changedFields, compareVersions, type NoteConflict } from "./note-merge.ts";
import type { FoundNote } from "./note-words.ts";

/** What somebody types over a note, and the version it was begun from. */
export interface NoteEdit {
  readonly version: number;
  readonly base: FaultNoteFields;
  readonly form: NoteForm;
}

export interface NoteEditState {
  /** Null while the note is only read. */
  readonly edit: NoteEdit | null;
  readonly draft: DraftState<NoteEdit | null>;
  readonly write: WriteState<"faultNote.change">;
  readonly problems: ReadonlyMap<string, string>;
  readonly conflict: NoteConflict | null;
  readonly start: () => void;
  /** Back to reading; what was typed stays as a draft. */
  readonly stop: () => void;
  readonly discard: () => void;
  readonly change: (change: Partial<NoteForm>) => void;
  readonly save: () => void;
  /** Shows both texts before anything is saved. */
  readonly showBoth: () => void;
  readonly saveMine: () => void;
  readonly takeTheirs: () => void;
}

const noProblems: ReadonlyMap<string, string> = new Map();

function editOf(note: FaultNote): NoteEdit {
  const base = fieldsOf(note);
  return { version: note.version, base, form: toForm(base) };
}

/** Editing one fault note. Nothing typed goes without being asked, and nothing newer is written over unseen. */
export function useNoteEdit(note: FaultNote): NoteEditState {
  const { person } = useProgram();
  const draft = useDraft<NoteEdit | null>(`fault note ${note.id} ${person?.id ?? ""}`, null);
  const write = useWrite("faultNote.change");
  const [begun, setBegun] = useState<NoteEdit | null>(null);
  const [problems, setProblems] = useState(noProblems);
  const [theirs, setTheirs] = useState<FaultNote | null>(null);
  const edit = begun === null ? null : (draft.value ?? begun);

  const close = () => {
    setBegun(null);
    setTheirs(null);
    setProblems(noProblems);
    write.clearError();
  };
  const lookAgain = async () => {
    const found: FoundNote | null = await request("faultNote.find", { id: note.id }).catch(() => null);
    if (found !== null) setTheirs(found.note);
  };
  const saveFrom = async (version: number) => {
    if (edit === null) return;
    const form = withoutEmptyEntries(edit.form);
    const reading = readForm(form);
    // Kept again in any case: another window on this machine may have dropped the draft when it saved.
    draft.set({ ...edit, form });
    setProblems(reading.kind === "problems" ? reading.problems : noProblems);
    if (reading.kind === "problems") return;
    const result = await saveChanged(write, { id: note.id, version, base: edit.base, mine: reading.fields });
    if (result === "saved") {
      await draft.drop();
      close();
    } else if (result === "overtaken") await lookAgain();
  };
  return {
    edit,
    draft,
    write,
    problems,
    conflict: edit === null || theirs === null ? null : conflictOf(edit, theirs),
    start: () => setBegun(editOf(note)),
    stop: close,
    discard: () => void draft.drop().then(close),
    change: (change) => {
      if (begun === null) return;
      draft.set((before) => {
        const now = before ?? begun;
        return { ...now, form: { ...now.form, ...change } };
      });
    },
    save: () => void saveFrom(edit?.version ?? note.version),
    showBoth: () => void lookAgain(),
    saveMine: () => void saveFrom(theirs?.version ?? note.version),
    takeTheirs: () => {
      if (theirs === null) return;
      draft.set(editOf(theirs));
      setTheirs(null);
      setProblems(noProblems);
    },
  };
}

interface Saving {
  readonly id: string;
  readonly version: number;
  readonly base: FaultNoteFields;
  readonly mine: FaultNoteFields;
}

/** "refused": the write's own error says why. */
async function saveChanged(
  write: WriteState<"faultNote.change">,
  { id, version, base, mine }: Saving,
): Promise<"saved" | "overtaken" | "refused"> {
  const fields = changedFields(base, mine);
  if (Object.keys(fields).length === 0) return "saved";
  const result = await write.run({ id, version, fields });
  if (result.ok) return "saved";
  if (result.error.code !== "version-conflict") return "refused";
  write.clearError();
  return "overtaken";
}

function conflictOf(edit: NoteEdit, theirs: FaultNote): NoteConflict {
  const reading = readForm(withoutEmptyEntries(edit.form));
  const mine = reading.kind === "fields" ? reading.fields : edit.base;
  return compareVersions(edit.base, mine, fieldsOf(theirs));
}
