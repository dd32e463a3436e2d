import { type FormEvent, useState } from "react";
import type { Expected } from "#shared-lib/contract/check.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { Button } from "../../ui/button.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import type { AnswerProps } from "./step-answers.tsx";
import { rangeWords, valueProblem } from "./value-range.ts";

interface ValueAnswerProps extends AnswerProps {
  readonly expected: Expected & { readonly kind: "value" };
}

/** A measured value with its unit. What cannot be meant as typed is asked back, never recorded. */
export function ValueAnswer({ step, entry, disabled, onChange, onRecord, expected }: ValueAnswerProps) {
  const [problem, setProblem] = useState<string>();
  const recorded = step.found?.kind === "value" ? String(step.found.value) : "";
  const text = entry.value ?? recorded;
  const send = (event: FormEvent) => {
    event.preventDefault();
    const reading = readNumber(text);
    if (reading.kind === "empty") setProblem("Enter what was measured. Nothing was recorded.");
    else if (reading.kind === "unclear") setProblem(`${reading.problem} Nothing was recorded.`);
    else {
      const implausible = valueProblem(expected, reading.number);
      setProblem(implausible);
      if (implausible === undefined) onRecord({ kind: "value", value: reading.number });
    }
  };
  const range = rangeWords(expected);
  return (
    <form className="stack" onSubmit={send} noValidate>
      <div className="check-value">
        <NumberField
          label="Measured"
          value={text}
          unit={expected.unit}
          {...(range === undefined ? {} : { hint: range })}
          problem={problem}
          disabled={disabled}
          onChange={(next) => {
            setProblem(undefined);
            onChange({ value: next });
          }}
        />
      </div>
      <div className="check-value-act">
        <Button
          type="submit"
          kind={entry.value === undefined ? "plain" : "first"}
          keys="Enter"
          disabled={disabled}
        >
          Record this value
        </Button>
      </div>
    </form>
  );
}
