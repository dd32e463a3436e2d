import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { fieldLabels, fieldText, type NoteFieldName, noteFieldNames } from "./note-text.ts";

function same(name: NoteFieldName, one: FaultNoteFields, other: FaultNoteFields): boolean {
  return JSON.stringify(one[name]) === JSON.stringify(other[name]);
}

/** Only what was changed since `base`: a field nobody touched here cannot overwrite another's. */
export function changedFields(base: FaultNoteFields, mine: FaultNoteFields): Partial<FaultNoteFields> {
  const names = noteFieldNames.filter((name) => !same(name, base, mine));
  return Object.fromEntries(names.map((name) => [name, mine[name]]));
}

export interface NoteConflict {
  /** Fields in which saving mine would put another text in the place of the newer one. */
  readonly fields: readonly { readonly label: string; readonly mine: string; readonly theirs: string }[];
  /** Labels of what they changed and I did not: it stays as they saved it. */
  readonly kept: readonly string[];
}

/** Mine against what was saved meanwhile, both made from `base`. */
export function compareVersions(
  base: FaultNoteFields,
  mine: FaultNoteFields,
  theirs: FaultNoteFields,
): NoteConflict {
  const touched = noteFieldNames.filter((name) => !same(name, base, mine));
  return {
    fields: touched
      .filter((name) => !same(name, mine, theirs))
      .map((name) => ({
        label: fieldLabels[name],
        mine: fieldText(name, mine),
        theirs: fieldText(name, theirs),
      })),
    kept: noteFieldNames
      .filter((name) => !touched.includes(name) && !same(name, base, theirs))
      .map((name) => fieldLabels[name]),
  };
}
