import { useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { type RecordField, shownValue } from "./record-fields.ts";

type Change = OutputOf<"history.ofRecord">["changes"][number];

interface RecordHistoryProps {
  readonly entity: "lift" | "site" | "visit";
  readonly id: string;
  readonly fields: readonly RecordField[];
  /** Words of fields that are no part of a form: "stateReason" is the reason of the state. */
  readonly moreWords?: Readonly<Record<string, string>>;
  /** After the record was deleted. */
  readonly deleteWords: string;
}

/** Who changed what and when, field by field; undo of the last change; delete and restore. */
export function RecordHistory(props: RecordHistoryProps) {
  const { entity, id, fields, moreWords = {}, deleteWords } = props;
  const read = useRead("history.ofRecord", { entity, id });
  const undo = useWrite("history.undoLast");
  const remove = useWrite("record.delete");
  const restore = useWrite("record.restore");
  const [all, setAll] = useState(false);
  if (read.value === undefined) return <ErrorNote error={read.error} onRetry={read.reload} />;
  const { changes, deleted, version } = read.value;
  const undoable = changes[0]?.what === "changed" && !deleted;
  return (
    <div className="stack">
      <div className="buttons">
        {undoable && (
          <Button onPress={() => void undo.run({ entity, id, version })} pending={undo.pending}>
            Take back the last change
          </Button>
        )}
        {deleted ? (
          <Button onPress={() => void restore.run({ entity, id, version })} pending={restore.pending}>
            Restore
          </Button>
        ) : (
          <Button onPress={() => void remove.run({ entity, id, version })} pending={remove.pending}>
            {deleteWords}
          </Button>
        )}
        <span className="soft">A deleted record can be restored, here or in Settings.</span>
      </div>
      <ErrorNote error={undo.error ?? remove.error ?? restore.error} />
      <ol className="history-list" aria-label="Changes, newest first">
        {changes.slice(0, all ? changes.length : shownAtFirst).map((change) => (
          <li key={change.stamp}>
            <p>
              <b>{formatDayAndTime(change.at)}</b>, {change.by?.name ?? "nobody named"}: {change.what}
            </p>
            {change.what === "changed" && (
              <ChangedFields change={change} fields={fields} moreWords={moreWords} />
            )}
          </li>
        ))}
      </ol>
      {!all && changes.length > shownAtFirst && (
        <div>
          <Button onPress={() => setAll(true)}>All {changes.length} changes</Button>
        </div>
      )}
    </div>
  );
}

const shownAtFirst = 6;

interface ChangedFieldsProps {
  readonly change: Change;
  readonly fields: readonly RecordField[];
  readonly moreWords: Readonly<Record<string, string>>;
}

function ChangedFields({ change, fields, moreWords }: ChangedFieldsProps) {
  const told = change.fields.flatMap(({ field: key, before, after }) => {
    const field = fields.find((one) => one.key === key);
    const label = field?.label ?? moreWords[key];
    if (label === undefined) return [];
    const words = (value: unknown) => shownChange(field, value);
    return [{ key, label, before: words(before), after: words(after) }];
  });
  return (
    <ul className="history-fields">
      {told.map(({ key, label, before, after }) => (
        <li key={key}>
          {label}: {before === "" ? <span className="soft">not recorded</span> : <s>{before}</s>}
          <MarkShape kind="passed on" />
          <span className="seen-by-reader-only"> became </span>
          {after === "" ? <span className="soft">not recorded</span> : after}
        </li>
      ))}
    </ul>
  );
}

function shownChange(field: RecordField | undefined, value: unknown): string {
  if (field !== undefined) return shownValue(field, value);
  if (value === null || value === undefined) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value !== "string") return Array.isArray(value) ? value.map(String).join("; ") : String(value);
  return /^\d{4}-\d\d-\d\dT/.test(value) ? formatDayAndTime(value) : value;
}
