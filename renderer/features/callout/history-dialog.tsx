import { formatDayAndTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { shownChanges } from "./change-words.ts";
import { Refused } from "./way-out.tsx";

interface HistoryDialogProps {
  readonly calloutId: string;
  readonly number: string;
  readonly onClose: () => void;
}

/** Who changed what and when, newest first; the last change of what was written can be taken back. */
export function HistoryDialog({ calloutId, number, onClose }: HistoryDialogProps) {
  const { people } = useProgram();
  const read = useRead("history.ofRecord", { entity: "callout", id: calloutId }, { entities: ["callout"] });
  const lifts = useRead("lift.list", {}, { entities: ["lift"] });
  const undo = useWrite("history.undoLast");
  const nameOf = (id: string) =>
    people.find((one) => one.id === id)?.name ?? lifts.value?.lifts.find((one) => one.id === id)?.title;
  const shown = (read.value?.changes ?? [])
    .map((change) => ({ ...change, shown: shownChanges(change.fields, nameOf) }))
    .filter((change) => change.shown.length > 0 || change.what !== "changed");
  const canUndo = shown[0]?.what === "changed";
  return (
    <Dialog
      title={`History of ${number}`}
      open
      onClose={onClose}
      wide
      actions={
        <>
          <Button
            pending={undo.pending}
            disabled={!canUndo || read.value === undefined}
            onPress={() => {
              if (read.value !== undefined)
                void undo.run({ entity: "callout", id: calloutId, version: read.value.version });
            }}
          >
            Take back the last change
          </Button>
          <Button kind="quiet" onPress={onClose} autoFocus>
            Close
          </Button>
        </>
      }
    >
      <Refused error={read.error ?? undo.error} />
      <ol className="stack history">
        {shown.map((change) => (
          <li key={change.stamp}>
            <b>
              {formatDayAndTime(change.at)}, {change.by?.name ?? "brought in"}
            </b>
            {change.what === "made" ? (
              <span> · logged</span>
            ) : (
              <ul>
                {change.shown.map((field) => (
                  <li key={field.name}>
                    {field.name}: <s className="soft">{field.before}</s> {field.after}
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ol>
    </Dialog>
  );
}
