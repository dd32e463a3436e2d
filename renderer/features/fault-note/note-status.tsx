import type { FaultNote } from "#shared-lib/contract/fault-note.ts";
import { Mark } from "../../ui/mark.tsx";

const marks = { draft: "note draft", confirmed: "note confirmed", withdrawn: "note withdrawn" } as const;

export function NoteStatusMark({ note }: { readonly note: Pick<FaultNote, "status"> }) {
  return <Mark kind={marks[note.status]} strong />;
}
