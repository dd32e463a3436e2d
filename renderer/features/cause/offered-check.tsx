import type { OfferedCheck } from "#shared-lib/contract/cause.ts";
import { formatQuantity } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { hazardWords } from "../fault-note/hazard-parts.ts";

interface OfferedCheckProps {
  readonly check: OfferedCheck;
  /** Null where an answer cannot be recorded. */
  readonly onAnswer: ((outcomeKey: string) => void) | null;
  readonly pending: boolean;
  readonly level: 3 | 4;
}

/** One check: how it is done, why it is worth its minutes, its caution, and its outcomes to press. */
export function OfferedCheckView({ check, onAnswer, pending, level }: OfferedCheckProps) {
  const Heading = level === 3 ? "h3" : "h4";
  return (
    <div className="stack cause-check">
      <Heading>
        {check.title} <span className="soft label">{formatQuantity(check.minutes, "min")}</span>
      </Heading>
      {check.careful && (
        <Caution>
          {check.hazard !== "none" && `${hazardWords[check.hazard]}. `}
          {check.caution}
        </Caution>
      )}
      {check.how !== "" && <p>{check.how}</p>}
      <p className="soft label">
        {check.tells ? check.why : "Whatever comes out, the causes stay as they are."}
      </p>
      {onAnswer !== null && (
        <fieldset className="cause-answers">
          <legend className="label">What was found</legend>
          {check.outcomes.map((outcome) => (
            <Button
              key={outcome.key}
              pending={pending}
              label={`${outcome.words}, found at ${check.title}`}
              onPress={() => onAnswer(outcome.key)}
            >
              {outcome.words}
            </Button>
          ))}
        </fieldset>
      )}
    </div>
  );
}
