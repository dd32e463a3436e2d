import { type FormEvent, useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { type FaultGroup, faultGroups, type InsideState } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { type ConflictField, ConflictView } from "../../ui/conflict-view.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { type CalloutDraft, calloutDraftProblems, changedFields, toCalloutDraft } from "./callout-draft.ts";
import { Refused } from "./way-out.tsx";
import { WhichLift } from "./which-lift.tsx";

interface ChangeCalloutDialogProps {
  /** Follows the store, so that a conflict shows what was saved meanwhile. */
  readonly found: OutputOf<"callout.find">;
  readonly onClose: () => void;
}

/** Corrects what was written down, settles which lift it is and whether anyone is inside. */
export function ChangeCalloutDialog({ found, onClose }: ChangeCalloutDialogProps) {
  const form = useChange(found, onClose);
  const { draft, conflict } = form;
  return (
    <Dialog title={`Correct ${found.callout.number}`} open onClose={onClose} wide>
      <form
        className="stack"
        noValidate
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          void form.save(draft.value.version);
        }}
      >
        {conflict && (
          <ConflictView
            fields={conflictFields(draft.value, toCalloutDraft(found.callout, found.line.liftTitle))}
            onSaveMine={() => void form.save(found.callout.version)}
            onTakeTheirs={() => void form.takeTheirs()}
            pending={form.pending}
          />
        )}
        <ChangeFieldsForm form={form} />
        {!conflict && <Refused error={form.error} />}
        <div className="dialog-actions">
          <Button kind="first" type="submit" pending={form.pending} disabled={!draft.ready || conflict}>
            Save
          </Button>
          <Button kind="quiet" onPress={onClose}>
            Close, keep as draft
          </Button>
          {draft.keptAt !== null && (
            <>
              <SavedState kind="not saved yet" keptAt={draft.keptAt} />
              <Button kind="quiet" onPress={() => void form.takeTheirs()}>
                Go back to what is saved
              </Button>
            </>
          )}
        </div>
      </form>
    </Dialog>
  );
}

type Change = ReturnType<typeof useChange>;

function useChange(found: OutputOf<"callout.find">, onClose: () => void) {
  const { callout, line } = found;
  const draft = useDraft(`callout.change.${callout.id}`, toCalloutDraft(callout, line.liftTitle));
  const write = useWrite("callout.change");
  const [asked, setAsked] = useState(false);
  const problems = calloutDraftProblems(draft.value);
  const save = async (version: number) => {
    setAsked(true);
    if (Object.keys(problems).length > 0) return;
    const result = await write.run({ id: callout.id, version, fields: changedFields(draft.value, callout) });
    if (!result.ok) return;
    await draft.drop();
    onClose();
  };
  const takeTheirs = async () => {
    write.clearError();
    await draft.drop();
  };
  return {
    ...{ draft, save, takeTheirs },
    problems: asked ? problems : {},
    pending: write.pending,
    error: write.error,
    conflict: write.error?.code === "version-conflict",
    change: (part: Partial<CalloutDraft>) => draft.set((before) => ({ ...before, ...part })),
  };
}

const labels = {
  liftText: "Which lift",
  said: "What the caller says",
  group: "Fault group",
  inside: "Anyone inside?",
  insideCount: "How many",
  insideCondition: "How are they",
  caller: "Caller",
  callBack: "Call back on",
  displayReading: "Display reading",
} as const;

function conflictFields(mine: CalloutDraft, theirs: CalloutDraft): readonly ConflictField[] {
  return (Object.keys(labels) as (keyof typeof labels)[]).map((field) => ({
    label: labels[field],
    mine: mine[field],
    theirs: theirs[field],
  }));
}

function ChangeFieldsForm({ form }: { readonly form: Change }) {
  const { draft, change, problems } = form;
  const { value, ready } = draft;
  return (
    <>
      <WhichLift
        text={value.liftText}
        liftId={value.liftId}
        onText={(liftText) => change({ liftText })}
        onLift={(liftId) => change({ liftId })}
        lift={null}
        problem={problems.lift}
        disabled={!ready}
      />
      <InsideFields form={form} />
      <TextArea
        label={labels.said}
        value={value.said}
        onChange={(said) => change({ said })}
        problem={problems.said}
        disabled={!ready}
      />
      <div className="fields-two">
        <SelectField<FaultGroup>
          label={labels.group}
          options={faultGroups.map((one) => ({ id: one, words: one }))}
          value={value.group}
          onChange={(group) => change({ group })}
        />
        <TextField
          label={labels.displayReading}
          optional
          marking
          value={value.displayReading}
          onChange={(displayReading) => change({ displayReading })}
        />
        <TextField
          label={labels.caller}
          optional
          value={value.caller}
          onChange={(caller) => change({ caller })}
        />
        <TextField
          label={labels.callBack}
          optional
          type="tel"
          value={value.callBack}
          onChange={(callBack) => change({ callBack })}
        />
      </div>
    </>
  );
}

function InsideFields({ form }: { readonly form: Change }) {
  const { draft, change, problems } = form;
  const { value } = draft;
  return (
    <>
      <Choice<InsideState>
        label={labels.inside}
        options={[
          { id: "nobody", words: "Nobody" },
          { id: "people inside", words: "People inside", mark: "person inside" },
          { id: "not known", words: "Not known" },
        ]}
        value={value.inside}
        onChange={(inside) => change({ inside })}
      />
      {value.inside === "people inside" && (
        <div className="fields-two">
          <NumberField
            label={labels.insideCount}
            optional
            value={value.insideCount}
            onChange={(insideCount) => change({ insideCount })}
            problem={problems.insideCount}
          />
          <TextField
            label={labels.insideCondition}
            optional
            value={value.insideCondition}
            onChange={(insideCondition) => change({ insideCondition })}
          />
        </div>
      )}
    </>
  );
}
