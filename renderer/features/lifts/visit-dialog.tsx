import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { useDraft } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";
import { fieldProblemOf } from "../bridges/entry-parts.ts";
import { readVisit, startVisit, type VisitDraft } from "./visit-draft.ts";
import { VisitFields } from "./visit-fields.tsx";

interface VisitDialogProps {
  readonly liftId: string;
  readonly open: boolean;
  readonly onClose: () => void;
}

/** A visit that no callout asked for: maintenance, commissioning, a return visit. */
export function VisitDialog({ liftId, open, onClose }: VisitDialogProps) {
  const { person } = useProgram();
  const engineer = person?.role === "engineer" ? person.id : null;
  const draft = useDraft<VisitDraft>(`visit.record ${liftId}`, startVisit(engineer));
  const write = useWrite("visit.record");
  const reading = readVisit(draft.value, new Date());
  const change = (part: Partial<VisitDraft>) => draft.set((before) => ({ ...before, ...part }));
  const save = async () => {
    change({ tried: true });
    if (reading.input === null) return;
    const result = await write.run({ liftId, ...reading.input });
    if (!result.ok) return;
    await draft.drop();
    onClose();
  };
  return (
    <Dialog
      title="Record a visit without a callout"
      open={open}
      onClose={onClose}
      wide
      actions={
        <>
          <Button kind="first" onPress={() => void save()} pending={write.pending}>
            Record the visit
          </Button>
          <Button onPress={onClose}>Not now, keep the draft</Button>
        </>
      }
    >
      {draft.ready && (
        <VisitFields
          value={draft.value}
          change={change}
          problem={(path) =>
            (draft.value.tried ? reading.problems[path] : undefined) ?? fieldProblemOf(write.error, path)
          }
          ofCallout={false}
        />
      )}
      <ErrorNote error={write.error} />
    </Dialog>
  );
}
