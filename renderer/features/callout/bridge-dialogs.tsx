import { useState } from "react";
import type { Bridge, Danger } from "#shared-lib/contract/bridge.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { Caution } from "../../ui/caution.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";
import { fieldProblem } from "./field-problem.ts";
import { PersonField } from "./person-field.tsx";
import { StepDialog } from "./step-dialog.tsx";
import { type TimeEntry, useTimeEntry } from "./time-entry.ts";

interface BridgeDialogProps {
  readonly bridge: Bridge;
  readonly onClose: () => void;
}

/** First step: who took the bridge out, and when. The lift stays out of service until the second check. */
export function RecordRemovalDialog({ bridge, onClose }: BridgeDialogProps) {
  const { person } = useProgram();
  const note = useDraft(`bridge.removal.${bridge.id}`, "");
  const step = useStep(person?.id ?? null, note);
  const write = useWrite("bridge.recordRemoval");
  const save = async () => {
    if (!step.fits() || step.personId === null) return;
    const result = await write.run({
      id: bridge.id,
      version: bridge.version,
      removedBy: step.personId,
      ...(step.time.at === undefined ? {} : { removedAt: step.time.at }),
      note: note.value,
    });
    if (result.ok) await step.done(onClose);
  };
  return (
    <StepDialog
      title={`Record removal of ${bridge.number}`}
      saveWord="Record removal"
      onClose={onClose}
      onSave={save}
      pending={write.pending}
      error={write.error}
    >
      <Caution>
        Take the bridge out with the lift isolated and locked off. Only trained people work on the safety
        chain. Local codes and the maker’s instructions decide.
      </Caution>
      <StepFields step={step} who="Who took it out" timePath="removedAt" error={write.error} />
      <TextField label="Note" optional value={note.value} onChange={note.set} />
    </StepDialog>
  );
}

/** Second step: another look at the place, and what proves that the contact works again. */
export function ConfirmRemovalDialog({ bridge, onClose }: BridgeDialogProps) {
  const proof = useDraft(`bridge.proof.${bridge.id}`, "");
  const step = useStep(null, proof);
  const write = useWrite("bridge.confirmRemoval");
  const save = async () => {
    if (!step.fits() || step.personId === null || proof.value.trim() === "") return;
    const result = await write.run({
      id: bridge.id,
      version: bridge.version,
      checkedBy: step.personId,
      ...(step.time.at === undefined ? {} : { checkedAt: step.time.at }),
      proof: proof.value,
    });
    if (result.ok) await step.done(onClose);
  };
  return (
    <StepDialog
      title={`Second check after removal of ${bridge.number}`}
      saveWord="Confirm removal"
      onClose={onClose}
      onSave={save}
      pending={write.pending}
      error={write.error}
    >
      <StepFields step={step} who="Who looked at the place again" timePath="checkedAt" error={write.error} />
      <TextField
        label="What proves that the contact works again"
        value={proof.value}
        onChange={proof.set}
        problem={
          step.asked && proof.value.trim() === ""
            ? "Say what proves it, as in: door opened, lift did not start. Until then the bridge counts as open."
            : fieldProblem(write.error, "proof")
        }
      />
    </StepDialog>
  );
}

export function ClearDangerDialog({
  danger,
  onClose,
}: {
  readonly danger: Danger;
  readonly onClose: () => void;
}) {
  const { person } = useProgram();
  const how = useDraft(`danger.cleared.${danger.id}`, "");
  const step = useStep(person?.id ?? null, how);
  const write = useWrite("danger.clear");
  const save = async () => {
    if (!step.fits() || step.personId === null || how.value.trim() === "") return;
    const result = await write.run({
      id: danger.id,
      version: danger.version,
      how: how.value,
      clearedBy: step.personId,
      ...(step.time.at === undefined ? {} : { clearedAt: step.time.at }),
    });
    if (result.ok) await step.done(onClose);
  };
  return (
    <StepDialog
      title="Car and landing door bridged together"
      saveWord="Record that it is cleared"
      onClose={onClose}
      onSave={save}
      pending={write.pending}
      error={write.error}
    >
      <Caution>
        Car and landing doors are never bridged together. Prove each door circuit on its own before the lift
        runs. Local codes and licensed practice decide.
      </Caution>
      <StepFields step={step} who="Who cleared it" timePath="clearedAt" error={write.error} />
      <TextField
        label="How it was cleared"
        value={how.value}
        onChange={how.set}
        problem={step.asked && how.value.trim() === "" ? "Say how it was cleared and proved." : undefined}
      />
    </StepDialog>
  );
}

type Step = ReturnType<typeof useStep>;

/** Who and when of a step, and the words that are kept as a draft until it is on disk. */
function useStep(startPerson: string | null, words: { readonly drop: () => Promise<void> }) {
  const [personId, setPersonId] = useState(startPerson);
  const [asked, setAsked] = useState(false);
  const time: TimeEntry = useTimeEntry();
  const fits = () => {
    setAsked(true);
    return personId !== null && time.problem === undefined;
  };
  const done = async (onClose: () => void) => {
    await words.drop();
    onClose();
  };
  return { personId, setPersonId, asked, time, fits, done };
}

interface StepFieldsProps {
  readonly step: Step;
  readonly who: string;
  readonly timePath: string;
  readonly error: SillbookError | undefined;
}

function StepFields({ step, who, timePath, error }: StepFieldsProps) {
  const { people } = useProgram();
  return (
    <div className="fields-two">
      <PersonField
        label={who}
        people={people}
        value={step.personId}
        onChange={step.setPersonId}
        problem={step.asked && step.personId === null ? "Name the person." : undefined}
      />
      <DateTimeField
        label="When"
        value={step.time.text}
        onChange={step.time.set}
        problem={fieldProblem(error, timePath) ?? (step.asked ? step.time.problem : undefined)}
      />
    </div>
  );
}
