import type { CauseStep } from "#shared-lib/contract/cause.ts";
import { formatSince } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";

interface CausePathProps {
  readonly steps: readonly CauseStep[];
  readonly pending?: boolean;
  /** Left out: only to be read. */
  readonly onTakeBack?: (step: CauseStep) => void;
}

/** What was answered, in order; an answer taken back or given again stays to be read. */
export function CausePath({ steps, pending = false, onTakeBack }: CausePathProps) {
  if (steps.length === 0) return null;
  return (
    <div className="stack">
      {onTakeBack !== undefined && <h3>Checks answered</h3>}
      <ol className="cause-path">
        {steps.map((step) => (
          <li key={step.id}>
            <StepWords step={step} />
            {onTakeBack !== undefined && step.takenBack === null && !step.overtaken && (
              <Button
                kind="quiet"
                pending={pending}
                label={`Take back: ${step.checkTitle}`}
                onPress={() => onTakeBack(step)}
              >
                Take back
              </Button>
            )}
          </li>
        ))}
      </ol>
    </div>
  );
}

function StepWords({ step }: { readonly step: CauseStep }) {
  const now = new Date();
  const words = `${step.checkTitle}: ${step.outcomeWords}`;
  const [first] = step.after;
  return (
    <div>
      {step.takenBack === null && !step.overtaken ? <span>{words}</span> : <s className="soft">{words}</s>}
      <p className="soft label">
        {step.by.name}, {formatSince(step.at, now)}
        {step.takenBack !== null &&
          `; taken back by ${step.takenBack.by.name}, ${formatSince(step.takenBack.at, now)}`}
        {step.takenBack === null && step.overtaken && "; answered again later"}
        {step.takenBack === null &&
          !step.overtaken &&
          (first === undefined ? "; ruled everything out" : `; then first: ${first.title}`)}
      </p>
    </div>
  );
}
