import type { CheckLine } from "#shared-lib/contract/check.ts";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { useWrite } from "../../use-write.ts";
import { CheckCounts } from "./check-counts.tsx";
import type { CheckStep } from "./check-types.ts";
import { countVerdicts } from "./step-groups.ts";
import type { CheckWork } from "./use-check-work.ts";

interface FinishDialogProps {
  readonly check: CheckLine;
  readonly work: CheckWork;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly onGo: (step: CheckStep) => void;
}

export const afterFinish =
  "A finished check is a record: it can be read and printed, not changed. What must be corrected is checked again: the new check counts from then on, and this one stays as it was.";

/** What finishing means, and what is not recorded yet. Nothing entered is thrown away without a word. */
export function FinishDialog({ check, work, open, onClose, onGo }: FinishDialogProps) {
  const { run, pending, error, clearError } = useWrite("check.finish");
  const counts = countVerdicts(work.steps);
  const waiting = work.unrecorded;
  const close = () => {
    clearError();
    onClose();
  };
  const finish = async () => {
    if (!(await work.recordAllNotes())) return;
    const result = await run({ id: check.id, version: check.version });
    if (result.ok) await work.forget();
  };
  const [failedNote] = work.steps.map(({ key }) => work.errorOf(key)).filter((one) => one !== undefined);
  return (
    <Dialog
      title="Finish the check"
      role="alertdialog"
      open={open}
      onClose={close}
      actions={
        <>
          <Button kind="first" onPress={() => void finish()} pending={pending || work.pending}>
            {waiting.length > 0 ? "Finish without them" : "Finish"}
          </Button>
          <Button onPress={close}>Back to the steps</Button>
        </>
      }
    >
      <CheckCounts {...counts} />
      {counts.unchecked > 0 && <p>What is unchecked stays unchecked on the lift: nothing is proved there.</p>}
      {counts.failed > 0 && (
        <p>
          What failed stays marked at its place in the shaft section until it is checked again and passes.
          This check does not put the lift out of service or back in service.
        </p>
      )}
      {waiting.length > 0 && (
        <Waiting
          steps={waiting}
          onGo={(step) => {
            close();
            onGo(step);
          }}
        />
      )}
      <p className="soft">{afterFinish}</p>
      <ErrorNote error={error ?? failedNote} />
    </Dialog>
  );
}

interface WaitingProps {
  readonly steps: readonly CheckStep[];
  readonly onGo: (step: CheckStep) => void;
}

/** Steps with an answer that was chosen or typed and not recorded, each with the way to it. */
function Waiting({ steps, onGo }: WaitingProps) {
  return (
    <div>
      <p className="strong">Entered but not recorded, and lost with “Finish without them”:</p>
      <ul>
        {steps.map((step) => (
          <li key={step.key}>
            <Button kind="quiet" onPress={() => onGo(step)}>
              {step.title}
            </Button>
          </li>
        ))}
      </ul>
    </div>
  );
}
