import { Button as AriaButton } from "react-aria-components/Button";
import { Button } from "../../ui/button.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import type { CheckStep } from "./check-types.ts";
import { countVerdicts, countWords, groupVerdict, type StepGroup } from "./step-groups.ts";
import { verdictMarks, verdictWords } from "./step-words.ts";

interface StepListProps {
  readonly groups: readonly StepGroup[];
  readonly numberOf: (step: CheckStep) => number;
  readonly currentKey: string;
  readonly onGo: (step: CheckStep) => void;
}

/** Every step by place, with mark and word. */
export function StepList({ groups, numberOf, currentKey, onGo }: StepListProps) {
  return (
    <div className="check-list">
      {groups.map((group) => (
        <section key={group.key}>
          <h2 className="check-group">
            <span>{group.words}</span>
            <span className="label soft">{countWords(countVerdicts(group.steps))}</span>
          </h2>
          <ul>
            {group.steps.map((step) => (
              <li key={step.key}>
                <AriaButton
                  className={step.key === currentKey ? "check-list-row check-list-current" : "check-list-row"}
                  onPress={() => onGo(step)}
                  {...(step.key === currentKey ? { "aria-current": "step" as const } : {})}
                >
                  <span className="soft number">{numberOf(step)}</span>
                  <span>{step.title}</span>
                  <span className={step.verdict === "failed" ? "marked pencil strong" : "marked soft"}>
                    <MarkShape kind={verdictMarks[step.verdict]} />
                    <span>{verdictWords[step.verdict].toLowerCase()}</span>
                  </span>
                </AriaButton>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

interface PlaceLineProps {
  readonly groups: readonly StepGroup[];
  readonly currentKey: string;
  readonly onGo: (step: CheckStep) => void;
  readonly onAll: () => void;
}

/** The narrow screen's list: one target for each place, in one line. */
export function PlaceLine({ groups, currentKey, onGo, onAll }: PlaceLineProps) {
  return (
    <ul className="check-line" aria-label="Places of this check">
      {groups.map((group) => {
        const verdict = groupVerdict(group.steps);
        const isCurrent = group.steps.some(({ key }) => key === currentKey);
        const target = group.steps.find(({ at }) => at === null) ?? group.steps[0];
        return (
          <li key={group.key}>
            <AriaButton
              className={isCurrent ? "check-place-button check-place-current" : "check-place-button"}
              aria-label={`${group.words}: ${countWords(countVerdicts(group.steps))}`}
              onPress={() => {
                if (target !== undefined) onGo(target);
              }}
              {...(isCurrent ? { "aria-current": "step" as const } : {})}
            >
              <span>{group.short}</span>
              <MarkShape kind={verdictMarks[verdict]} className={verdict === "failed" ? "pencil" : ""} />
            </AriaButton>
          </li>
        );
      })}
      <li>
        <Button kind="quiet" keys="L" onPress={onAll}>
          All steps
        </Button>
      </li>
    </ul>
  );
}
