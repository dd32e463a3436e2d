import { useState } from "react";
import { type LiftState, liftStates } from "#shared-lib/words.ts";
import { Caution } from "../../ui/caution.tsx";
import { Choice } from "../../ui/choice.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { PersonField } from "./person-field.tsx";
import { StepDialog } from "./step-dialog.tsx";

interface LiftStateDialogProps {
  readonly liftId: string;
  readonly onClose: () => void;
}

/** In service, restricted or out of service, with why. In service needs the register compared with the shaft. */
export function LiftStateDialog({ liftId, onClose }: LiftStateDialogProps) {
  const { people } = useProgram();
  const found = useRead("lift.find", { id: liftId }, { entities: ["lift"] });
  const [state, setState] = useState<LiftState>();
  const [reason, setReason] = useState("");
  const [comparedBy, setComparedBy] = useState<string | null>(null);
  const [asked, setAsked] = useState(false);
  const write = useWrite("lift.setState");
  const lift = found.value?.lift;
  const chosen = state ?? lift?.state ?? null;
  const needsReason = chosen !== "in service" && reason.trim() === "";
  const needsPerson = chosen === "in service" && comparedBy === null;
  const save = async () => {
    setAsked(true);
    if (lift === undefined || chosen === null || needsReason || needsPerson) return;
    const result = await write.run({
      id: lift.id,
      version: lift.version,
      state: chosen,
      reason: chosen === "in service" ? "" : reason,
      registerComparedBy: chosen === "in service" ? comparedBy : null,
    });
    if (result.ok) onClose();
  };
  return (
    <StepDialog
      title={`State of ${found.value?.line.title ?? "the lift"}`}
      saveWord="Record this state"
      onClose={onClose}
      onSave={save}
      pending={write.pending}
      error={write.error ?? found.error}
    >
      <Choice<LiftState>
        label="The lift is"
        options={liftStates.map((one) => ({ id: one, words: one }))}
        value={chosen}
        onChange={setState}
      />
      {chosen === "in service" ? (
        <>
          <Caution>
            No bridge may be left in. Compare the bridge register with the shaft, contact by contact, before
            the lift runs for anybody.
          </Caution>
          <PersonField
            label="Who compared the bridge register with the shaft"
            people={people}
            value={comparedBy}
            onChange={setComparedBy}
            problem={asked && needsPerson ? "Name the person who compared it." : undefined}
          />
        </>
      ) : (
        <TextField
          label={chosen === "restricted" ? "What is restricted, and why" : "Why"}
          value={reason}
          onChange={setReason}
          problem={asked && needsReason ? "Say why: it is read wherever the lift is seen." : undefined}
        />
      )}
    </StepDialog>
  );
}
