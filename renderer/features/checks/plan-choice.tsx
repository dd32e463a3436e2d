import { Radio, RadioGroup } from "react-aria-components/RadioGroup";
import { FieldHead, FieldTail, fieldClass } from "../../ui/field-parts.tsx";
import type { PlanLine } from "./check-types.ts";

interface PlanChoiceProps {
  readonly plans: readonly PlanLine[];
  readonly planId: string | null;
  readonly onPlan: (id: string) => void;
  /** True where the plans hold the steps of a chosen lift. */
  readonly counted: boolean;
  readonly problem: string | undefined;
}

/** The built-in plans with their purpose, one under the other. */
export function PlanChoice({ plans, planId, onPlan, counted, problem }: PlanChoiceProps) {
  return (
    <RadioGroup
      className={fieldClass(problem)}
      value={planId}
      onChange={onPlan}
      isInvalid={problem !== undefined}
    >
      <FieldHead label="Plan" />
      <div className="plan-choice">
        {plans.map((plan) => (
          <Radio key={plan.id} value={plan.id} className="plan-word">
            <span className="plan-name">
              <b>{plan.name}</b>
              {counted && plan.steps.length > 0 && (
                <span className="label soft">
                  {plan.steps.length === 1 ? "1 step" : `${plan.steps.length} steps`}
                </span>
              )}
            </span>
            <span className="label">{plan.purpose}</span>
          </Radio>
        ))}
      </div>
      <FieldTail problem={problem} />
    </RadioGroup>
  );
}
