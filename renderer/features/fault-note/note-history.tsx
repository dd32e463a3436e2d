import { useState } from "react";
import type { FaultNoteFields } from "#shared-lib/contract/fault-note.ts";
import { faultNoteFieldsSchema } from "#shared-lib/contract/fault-note.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import type { MarkKind } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Timeline, type TimelineItem } from "../../ui/timeline.tsx";
import { useWrite } from "../../use-write.ts";
import { fieldLabels, fieldText, type NoteFieldName, noteFieldNames } from "./note-text.ts";

type History = OutputOf<"history.ofRecord">;
type Change = History["changes"][number];
type FieldChange = Change["fields"][number];

interface NoteHistoryProps {
  readonly id: string;
  readonly history: History;
}

/** Who changed what and when. The last change can be taken back. */
export function NoteHistory({ id, history }: NoteHistoryProps) {
  const [open, setOpen] = useState(false);
  const undo = useWrite("history.undoLast");
  const { changes, version } = history;
  const shown = open ? changes : changes.slice(0, 3);
  const canUndo = changes.length > 1;
  return (
    <section className="screen-only">
      <RuledTitle count={changes.length}>History</RuledTitle>
      <Timeline label="History" items={shown.map(toItem)} />
      <div className="buttons">
        {changes.length > shown.length && (
          <Button kind="quiet" onPress={() => setOpen(true)}>
            All {changes.length} changes
          </Button>
        )}
        {canUndo && (
          <Button
            kind="quiet"
            pending={undo.pending}
            onPress={() => void undo.run({ entity: "fault note", id, version })}
          >
            Take back the last change
          </Button>
        )}
      </div>
      <ErrorNote error={undo.error} />
    </section>
  );
}

const whatMarks: { readonly [What in Change["what"]]: MarkKind } = {
  made: "note draft",
  changed: "note draft",
  deleted: "note withdrawn",
  restored: "flush",
};

function toItem(change: Change): TimelineItem {
  const status = change.fields.find(({ field }) => field === "status")?.after;
  const mark =
    status === "confirmed"
      ? "note confirmed"
      : status === "withdrawn"
        ? "note withdrawn"
        : whatMarks[change.what];
  return {
    id: change.stamp,
    at: change.at,
    mark,
    words: change.by === null ? fromSillbook(change) : `${change.by.name} ${whatWords(change, status)}`,
    after: change.what === "changed" ? <Before fields={change.fields} /> : undefined,
  };
}

/** Nobody is named where the program itself wrote: a starter note, or a newer text of one. */
function fromSillbook(change: Change): string {
  return change.what === "made" ? "Came with Sillbook" : "Renewed by Sillbook";
}

function whatWords(change: Change, status: unknown): string {
  if (change.what === "made") return "wrote it";
  if (change.what !== "changed") return `${change.what} it`;
  if (status === "confirmed") return "confirmed it";
  if (status === "withdrawn") return "withdrew it";
  if (status === "draft") return "set it back to draft";
  const names = change.fields.flatMap(({ field }) => labelOf(field) ?? []);
  return `changed ${names.length === 0 ? "nothing that shows" : names.join(", ").toLowerCase()}`;
}

/** The stored column of the group has a name of its own. */
function nameOf(field: string): NoteFieldName | undefined {
  const name = field === "faultGroup" ? "group" : field;
  return noteFieldNames.find((one) => one === name);
}

function labelOf(field: string): string | undefined {
  const name = nameOf(field);
  return name === undefined ? undefined : fieldLabels[name];
}

function Before({ fields }: { readonly fields: readonly FieldChange[] }) {
  const shown = fields.flatMap((change) => {
    const name = nameOf(change.field);
    if (name === undefined) return [];
    return [{ name, before: valueText(name, change.before) }];
  });
  const reason = fields.find(({ field }) => field === "statusReason")?.after;
  return (
    <>
      {typeof reason === "string" && reason !== "" && <span>{reason}</span>}
      {shown.map(({ name, before }) => (
        <details key={name} className="note-before">
          <summary>{fieldLabels[name]} before</summary>
          <div className="conflict-text">{before === "" ? <span className="soft">empty</span> : before}</div>
        </details>
      ))}
    </>
  );
}

const blank: FaultNoteFields = faultNoteFieldsSchema.parse({ title: "-", group: "not yet known" });

/** A stored value as the page would say it; what an older version stored in another shape is shown plainly. */
function valueText(name: NoteFieldName, value: unknown): string {
  if (value === null || value === undefined) return "";
  const parsed = faultNoteFieldsSchema.shape[name].safeParse(value);
  if (!parsed.success) return typeof value === "string" ? value : JSON.stringify(value);
  return fieldText(name, { ...blank, [name]: parsed.data });
}
