import type { StepVerdict } from "#shared-lib/contract/check.ts";
import { formatDate } from "#shared-lib/format.ts";
import { MarkShape } from "../../ui/mark.tsx";
import type { CheckStep } from "./check-types.ts";
import { changeOf } from "./compare-steps.ts";
import { verdictMarks, verdictWords } from "./step-words.ts";

/** The verdict the program computed, with what was expected and found; read out when it changes. */
export function StepVerdictView({ step }: { readonly step: CheckStep }) {
  const { verdict, sentence, at } = step;
  return (
    <div role="status" className="stack check-verdict">
      {at === null && sentence === "" ? (
        <p className="marked soft">
          <MarkShape kind="unchecked" />
          <span>Nothing recorded yet.</span>
        </p>
      ) : (
        <>
          <p className={verdict === "failed" ? "verdict pencil" : "verdict"}>
            <MarkShape kind={verdictMarks[verdict]} />
            <span>{verdictWords[verdict]}</span>
          </p>
          <p className="check-sentence">{sentence}</p>
        </>
      )}
    </div>
  );
}

/** What the same step showed when it was last checked before, in the blue of earlier values. */
export function PreviousTime({ step }: { readonly step: CheckStep }) {
  const { previous } = step;
  if (previous === null) return <p className="soft label">Never checked before with this plan.</p>;
  const change = step.found === null || step.found.kind === "not checked" ? undefined : changeOf(step);
  return (
    <p className="check-previous">
      <MarkShape kind={verdictMarks[previous.verdict]} />
      <span>
        Previous time, {formatDate(previous.at)}: {wordsInSentence[previous.verdict]}. {previous.sentence}
        {change !== undefined && (
          <>
            {" "}
            <b>Now: {change.words}.</b>
          </>
        )}
      </span>
    </p>
  );
}

const wordsInSentence: Readonly<Record<StepVerdict, string>> = {
  passed: "passed",
  failed: "failed",
  unchecked: "kept without a verdict",
};
