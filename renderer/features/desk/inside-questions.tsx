import { Choice } from "../../ui/choice.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { WhatToSay } from "../callout/what-to-say.tsx";
import type { NewCalloutDraft, NewCalloutProblems } from "./new-callout-draft.ts";

interface InsideQuestionsProps {
  readonly draft: NewCalloutDraft;
  readonly change: (part: Partial<NewCalloutDraft>) => void;
  readonly problems: NewCalloutProblems;
  readonly disabled: boolean;
}

/** Asked of every caller; an entrapment then asks for number and condition, and shows what to say. */
export function InsideQuestions({ draft, change, problems, disabled }: InsideQuestionsProps) {
  return (
    <>
      <Choice
        label="Anyone inside?"
        options={[
          { id: "nobody", words: "Nobody" },
          { id: "people inside", words: "People inside", mark: "person inside" },
          { id: "not known", words: "Not known" },
        ]}
        value={draft.inside}
        onChange={(inside) => change({ inside })}
        problem={problems.inside}
        disabled={disabled}
      />
      {draft.inside === "not known" && (
        <p className="label">
          Ask again before the end of the call: the callout cannot be closed while it is not known.
        </p>
      )}
      {draft.inside === "people inside" && (
        <div className="entrapment">
          <WhatToSay />
          <div className="fields-two">
            <NumberField
              label="How many"
              value={draft.insideCount}
              onChange={(insideCount) => change({ insideCount })}
              problem={problems.insideCount}
            />
            <TextField
              label="How are they"
              value={draft.insideCondition}
              onChange={(insideCondition) => change({ insideCondition })}
            />
          </div>
        </div>
      )}
    </>
  );
}
