import { useState } from "react";
import type { SillbookError } from "#shared-lib/errors.ts";
import type { ConflictField } from "../../ui/conflict-view.tsx";
import { useDraft } from "../../use-draft.ts";
import type { WriteResult } from "../../use-write.ts";
import { fieldProblemOf } from "../bridges/entry-parts.ts";
import {
  type RecordField,
  type RecordProblems,
  type RecordTexts,
  type RecordValues,
  readRecord,
  textsOf,
} from "./record-fields.ts";

export interface VersionedRecord {
  readonly id: string;
  readonly version: number;
}

interface EditDraft {
  readonly open: boolean;
  readonly version: number;
  readonly base: RecordTexts;
  readonly texts: RecordTexts;
  readonly tried: boolean;
}

interface RecordEditOptions {
  /** "lift" or "site"; the draft is kept by it and the id. */
  readonly entity: string;
  readonly fields: readonly RecordField[];
  readonly record: VersionedRecord;
  readonly save: (
    version: number,
    changed: Readonly<Record<string, unknown>>,
  ) => Promise<WriteResult<unknown>>;
}

export interface RecordEdit {
  readonly open: boolean;
  readonly ready: boolean;
  readonly texts: RecordTexts;
  readonly problems: RecordProblems;
  readonly error: SillbookError | undefined;
  readonly keptAt: string | null;
  readonly conflict: readonly ConflictField[] | null;
  readonly begin: () => void;
  readonly change: (key: string, text: string) => void;
  readonly save: () => Promise<void>;
  readonly saveMine: () => Promise<void>;
  readonly takeTheirs: () => void;
  readonly giveUp: () => Promise<void>;
}

/** Editing a record in place: kept as a draft, sent as the fields that changed, both texts shown on a conflict. */
export function useRecordEdit(options: RecordEditOptions): RecordEdit {
  const { entity, fields, record, save } = options;
  const start = (open: boolean): EditDraft => {
    const texts = textsOf(fields, record as unknown as RecordValues);
    return { open, version: record.version, base: texts, texts, tried: false };
  };
  const draft = useDraft<EditDraft>(`${entity}.change ${record.id}`, start(false));
  const [error, setError] = useState<SillbookError>();
  const [present, setPresent] = useState<(VersionedRecord & RecordValues) | null>(null);
  const { open, version, base, texts, tried } = draft.value;
  const reading = readRecord(fields, texts, base, new Date());

  const send = async (atVersion: number) => {
    draft.set((before) => ({ ...before, tried: true }));
    if (!reading.clean) return;
    setError(undefined);
    const result = await save(atVersion, reading.changed);
    if (result.ok) {
      setPresent(null);
      await draft.drop();
      return;
    }
    const newer = result.error.code === "version-conflict" ? result.error.details.present : undefined;
    setPresent(newer === undefined ? null : (newer as VersionedRecord & RecordValues));
    setError(newer === undefined ? result.error : undefined);
  };
  const takeTheirs = () => {
    if (present === null) return;
    const theirs = textsOf(fields, present);
    draft.set({ open: true, version: present.version, base: theirs, texts: theirs, tried: false });
    setPresent(null);
  };
  return {
    open,
    ready: draft.ready,
    texts,
    problems: problemsOf(fields, tried ? reading.problems : {}, error),
    error: error ?? draft.error,
    keptAt: draft.keptAt,
    conflict: present === null ? null : conflictFields(fields, { texts, base }, textsOf(fields, present)),
    begin: () => draft.set(start(true)),
    change: (key, text) => draft.set((before) => ({ ...before, texts: { ...before.texts, [key]: text } })),
    save: () => send(version),
    saveMine: () => send(present?.version ?? version),
    takeTheirs,
    giveUp: async () => {
      setError(undefined);
      setPresent(null);
      await draft.drop();
    },
  };
}

function problemsOf(
  fields: readonly RecordField[],
  own: RecordProblems,
  error: SillbookError | undefined,
): RecordProblems {
  return Object.fromEntries(
    fields.map(({ key }) => [key, own[key] ?? fieldProblemOf(error, `fields.${key}`)]),
  );
}

/** Only what this form would write stands against what was saved meanwhile. */
function conflictFields(
  fields: readonly RecordField[],
  mine: { readonly texts: RecordTexts; readonly base: RecordTexts },
  theirs: RecordTexts,
): readonly ConflictField[] {
  return fields
    .filter(({ key }) => mine.texts[key] !== mine.base[key] || theirs[key] !== mine.base[key])
    .map(({ key, label }) => ({ label, mine: mine.texts[key] ?? "", theirs: theirs[key] ?? "" }));
}
