import type { Lift } from "#shared-lib/contract/lift.ts";
import { type LiftState, liftStates } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { fieldProblemOf, readMomentEntry } from "../bridges/entry-parts.ts";
import { PersonChoice } from "../bridges/person-parts.tsx";

interface LiftStateDialogProps {
  readonly lift: Lift;
  readonly open: boolean;
  readonly onClose: () => void;
}

interface StateDraft {
  readonly state: LiftState | null;
  readonly reason: string;
  readonly at: string;
  readonly comparedBy: string | null;
  readonly tried: boolean;
}

const start: StateDraft = { state: null, reason: "", at: "", comparedBy: null, tried: false };

/** The record takes back no state: a new one is recorded, and the rule of the bridges is checked by the program. */
export function LiftStateDialog({ lift, open, onClose }: LiftStateDialogProps) {
  const draft = useDraft<StateDraft>(`lift.setState ${lift.id}`, start);
  const write = useWrite("lift.setState");
  const { state, reason, at, comparedBy, tried } = draft.value;
  const change = (part: Partial<StateDraft>) => draft.set((before) => ({ ...before, ...part }));
  const moment = readMomentEntry(at, new Date());
  const asksRegister = lift.state === "out of service" && state !== null && state !== "out of service";
  const problems = {
    state: state === null ? "Choose the state." : undefined,
    reason: state !== null && state !== "in service" && reason.trim() === "" ? "Say why." : undefined,
    comparedBy:
      asksRegister && comparedBy === null ? "Name who compared the register with the shaft." : undefined,
    at: moment.ok ? undefined : moment.problem,
  };
  const save = async () => {
    change({ tried: true });
    if (state === null || !moment.ok || Object.values(problems).some((one) => one !== undefined)) return;
    const { id, version } = lift;
    const given = moment.at === undefined ? {} : { at: moment.at };
    const registerComparedBy = asksRegister ? comparedBy : null;
    const result = await write.run({ id, version, state, reason, registerComparedBy, ...given });
    if (!result.ok) return;
    await draft.drop();
    onClose();
  };
  const problem = (key: keyof typeof problems, path: string = key) =>
    (tried ? problems[key] : undefined) ?? fieldProblemOf(write.error, path);
  return (
    <Dialog
      title="State of the lift"
      open={open}
      onClose={onClose}
      actions={
        <>
          <Button kind="first" onPress={() => void save()} pending={write.pending}>
            Record the state
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      {asksRegister && (
        <Caution>
          Before it goes back: compare the bridge register with the shaft, lead by lead, and prove the safety
          chain. A lift with a bridge in it is not in service. Local codes decide.
        </Caution>
      )}
      <Choice
        label={`Now ${lift.state}; it becomes`}
        options={liftStates.map((id) => ({ id, words: id }))}
        value={state}
        onChange={(next) => change({ state: next })}
        problem={problem("state")}
      />
      <TextField
        label="Why"
        optional={state === "in service"}
        value={reason}
        onChange={(next) => change({ reason: next })}
        problem={problem("reason")}
      />
      <div className="fields-two">
        <DateTimeField
          label="Since"
          hint="empty: now"
          value={at}
          onChange={(next) => change({ at: next })}
          problem={problem("at")}
        />
        {asksRegister && (
          <PersonChoice
            label="Register compared with the shaft by"
            value={comparedBy}
            onChange={(next) => change({ comparedBy: next })}
            problem={problem("comparedBy", "registerComparedBy")}
          />
        )}
      </div>
      <ErrorNote error={write.error} />
    </Dialog>
  );
}
