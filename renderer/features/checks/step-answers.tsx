import type { ReactNode } from "react";
import type { Found } from "#shared-lib/contract/check.ts";
import { BigAnswer } from "./big-answer.tsx";
import type { CheckStep } from "./check-types.ts";
import { OrderAnswer } from "./order-answer.tsx";
import type { StepEntry } from "./use-check-work.ts";
import { ValueAnswer } from "./value-answer.tsx";

export interface AnswerProps {
  readonly step: CheckStep;
  readonly entry: StepEntry;
  readonly disabled: boolean;
  readonly onChange: (part: StepEntry) => void;
  readonly onRecord: (found: Found) => void;
}

/** The big targets for what was found, by what the step asks for. */
export function StepAnswers(props: AnswerProps) {
  const { step, entry, disabled, onRecord } = props;
  const { expected } = step;
  const found = entry.found ?? step.found;
  if (expected.kind === "order") return <OrderAnswer {...props} order={expected.order} />;
  if (expected.kind === "value") return <ValueAnswer {...props} expected={expected} />;
  if (expected.kind === "state") {
    const is = (on: boolean) => found?.kind === "state" && found.on === on;
    return (
      <Pair>
        {([true, false] as const).map((on, i) => (
          <BigAnswer
            key={String(on)}
            keys={String(i + 1)}
            name={`Found: ${on ? "on" : "off"}`}
            chosen={is(on)}
            disabled={disabled}
            onPress={() => onRecord({ kind: "state", on })}
          >
            {on ? "On" : "Off"}
          </BigAnswer>
        ))}
      </Pair>
    );
  }
  const is = (yes: boolean) => found?.kind === "yes" && found.yes === yes;
  return (
    <>
      <p className="check-question">{expected.question}</p>
      <Pair>
        {([true, false] as const).map((yes, i) => (
          <BigAnswer
            key={String(yes)}
            keys={String(i + 1)}
            name={`Found: ${yes ? "yes" : "no"}`}
            chosen={is(yes)}
            disabled={disabled}
            onPress={() => onRecord({ kind: "yes", yes })}
          >
            {yes ? "Yes" : "No"}
          </BigAnswer>
        ))}
      </Pair>
    </>
  );
}

function Pair({ children }: { readonly children: ReactNode }) {
  return (
    <fieldset className="check-answers">
      <legend className="seen-by-reader-only">What was found</legend>
      {children}
    </fieldset>
  );
}
