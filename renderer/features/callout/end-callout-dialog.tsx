import type { FormEvent } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatTime } from "#shared-lib/format.ts";
import { awaited, type Ending, endings, type FaultGroup, faultGroups } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea } from "../../ui/text-field.tsx";
import { type DraftState, useDraft } from "../../use-draft.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { DayField } from "./day-field.tsx";
import { type EndingDraft, endingProblems, toEndInput } from "./ending-draft.ts";
import { EndingHints, InsideFirst } from "./ending-hints.tsx";
import { fieldProblem } from "./field-problem.ts";
import { Refused } from "./way-out.tsx";

type Found = OutputOf<"callout.find">;

interface EndCalloutDialogProps {
  readonly id: string;
  readonly onClose: () => void;
  readonly onEnded?: () => void;
  readonly onItsPage?: boolean;
}

/** Closes a callout with its ending; what was typed survives a closed window. */
export function EndCalloutDialog(props: EndCalloutDialogProps) {
  const { value: found, error } = useRead("callout.find", { id: props.id });
  return (
    <Dialog
      title={
        found === undefined ? "End the callout" : `End ${found.callout.number} · ${found.line.liftTitle}`
      }
      open
      onClose={props.onClose}
    >
      {found === undefined ? <Refused error={error} /> : <EndingForm {...props} found={found} />}
    </Dialog>
  );
}

function EndingForm({
  id,
  onClose,
  onEnded,
  onItsPage = false,
  found,
}: EndCalloutDialogProps & { found: Found }) {
  const draft = useDraft<EndingDraft>(`callout.end.${id}`, {
    ending: null,
    group: found.callout.group,
    reason: "",
    awaits: null,
    returnVisit: "",
    at: "",
    atTouched: false,
    asked: false,
  });
  const write = useWrite("callout.end");
  const { value } = draft;
  // The refusal was about the ending as it stood: with another choice it is past.
  const changed: typeof draft.set = (next) => {
    write.clearError();
    draft.set(next);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    draft.set((before) => ({ ...before, asked: true }));
    const now = new Date();
    if (Object.keys(endingProblems(value, now)).length > 0 || value.ending === null) return;
    const result = await write.run({
      id,
      version: found.callout.version,
      ...toEndInput(value, value.ending, now),
    });
    if (!result.ok) return;
    await draft.drop();
    onEnded?.();
    onClose();
  };
  return (
    <form className="stack" onSubmit={(event) => void submit(event)} noValidate>
      {found.lift !== null && <LiftState lift={found.lift} />}
      <InsideFirst found={found} />
      <EndingFields
        draft={{ ...draft, set: changed }}
        refusedAt={(path) => fieldProblem(write.error, path)}
      />
      <EndingHints found={found} ending={value.ending} onClose={onClose} />
      <Refused error={write.error} {...(onItsPage ? {} : { calloutId: id })} />
      <div className="dialog-actions">
        <Button kind="first" type="submit" pending={write.pending} disabled={!draft.ready}>
          End the callout
        </Button>
        <Button kind="quiet" onPress={onClose}>
          Not yet
        </Button>
      </div>
    </form>
  );
}

interface EndingFieldsProps {
  readonly draft: DraftState<EndingDraft>;
  readonly refusedAt: (path: string) => string | undefined;
}

const awaitWords = {
  part: "A part",
  approval: "Approval",
  "return visit": "Return visit",
  other: "Other",
} as const;

function EndingFields({ draft, refusedAt }: EndingFieldsProps) {
  const { value, set, ready } = draft;
  const change = (part: Partial<EndingDraft>) => set((before) => ({ ...before, ...part }));
  const problems = value.asked ? endingProblems(value, new Date()) : {};
  const mayReturn = value.ending !== null && value.ending !== "cancelled" && value.ending !== "wrong address";
  return (
    <>
      <Choice<Ending>
        label="How it ended"
        options={endings.map((one) => ({ id: one, words: one }))}
        value={value.ending}
        onChange={(ending) => change({ ending })}
        problem={problems.ending}
        disabled={!ready}
      />
      <div className="fields-two">
        <SelectField<FaultGroup>
          label="Fault group, settled here"
          options={faultGroups.map((one) => ({ id: one, words: one }))}
          value={value.group}
          onChange={(group) => change({ group })}
        />
        <DateTimeField
          label="When"
          value={value.atTouched ? value.at : formatTime(new Date())}
          onChange={(at) => change({ at, atTouched: true })}
          problem={refusedAt("at") ?? problems.at}
        />
      </div>
      <TextArea
        label="Reason"
        optional={value.ending !== "left out of service"}
        value={value.reason}
        onChange={(reason) => change({ reason })}
        problem={refusedAt("reason") ?? problems.reason}
      />
      {value.ending === "left out of service" && (
        <Choice
          label="What is awaited"
          options={awaited.map((one) => ({ id: one, words: awaitWords[one] }))}
          value={value.awaits}
          onChange={(awaits) => change({ awaits })}
          problem={problems.awaits}
        />
      )}
      {mayReturn && (
        <DayField
          label="Return visit on"
          optional
          value={value.returnVisit}
          onChange={(returnVisit) => change({ returnVisit })}
          problem={refusedAt("returnVisitOn") ?? problems.returnVisit}
        />
      )}
    </>
  );
}
