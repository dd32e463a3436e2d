import { Link } from "@tanstack/react-router";
import { useEffect, useRef, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { Button } from "../../ui/button.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { TextArea, TextField } from "../../ui/text-field.tsx";
import { useCommand } from "../../use-command.ts";
import type { DraftState } from "../../use-draft.ts";
import { fieldProblem } from "../callout/field-problem.ts";
import { Refused } from "../callout/way-out.tsx";
import { WhichLift } from "../callout/which-lift.tsx";
import { FaultGroupLine } from "./fault-group-line.tsx";
import { InsideQuestions } from "./inside-questions.tsx";
import { JoinOffer } from "./join-offer.tsx";
import { MoreFields, MoreFold } from "./more-fields.tsx";
import { isBegun, type NewCalloutDraft, newCalloutProblems } from "./new-callout-draft.ts";
import { PassOnDialog } from "./pass-on-dialog.tsx";
import { type SaveCallout, useSaveCallout } from "./use-save-callout.ts";

interface NewCalloutProps {
  readonly draft: DraftState<NewCalloutDraft>;
  readonly beside: OutputOf<"callout.beside"> | undefined;
}

/** Logged by keyboard alone while the caller speaks: lift, anyone inside, what is said, who called. */
export function NewCallout({ draft, beside }: NewCalloutProps) {
  const form = useRef<HTMLFormElement>(null);
  const [passing, setPassing] = useState(false);
  const save = useSaveCallout(draft, () => focusFirst(form.current));
  useEffect(() => {
    // The clerk is here to log: the first field has the keyboard, unless something else was chosen meanwhile.
    if (draft.ready && isNowhere(document.activeElement)) focusFirst(form.current);
  }, [draft.ready]);
  const isFit = () => {
    draft.set((before) => ({ ...before, asked: true }));
    const fits = Object.keys(newCalloutProblems(draft.value)).length === 0;
    if (!fits) requestAnimationFrame(() => focusWrong(form.current));
    return fits;
  };
  const log = () => {
    if (isFit()) void save.log(null);
  };
  const passOn = () => {
    if (isFit()) setPassing(true);
  };
  useCommand({ name: "Save", keys: "Ctrl S", group: "Desk", run: log });
  useCommand({ name: "Save and pass on", keys: "Ctrl Enter", group: "Desk", run: passOn });
  useCommand({
    name: "Go to the new callout",
    keys: "Alt C",
    group: "Desk",
    run: () => focusFirst(form.current),
  });
  return (
    <form ref={form} className="stack new-callout" onSubmit={(event) => event.preventDefault()} noValidate>
      <div className="spread">
        <PageTitle title="Desk">New callout</PageTitle>
        <Standing draft={draft} save={save} onCleared={() => focusFirst(form.current)} />
      </div>
      <Fields draft={draft} beside={beside} save={save} />
      <Refused error={save.error} />
      <div className="buttons new-callout-steps">
        <Button kind="first" keys="Ctrl Enter" onPress={passOn} pending={save.pending}>
          Save and pass on
        </Button>
        <Button keys="Ctrl S" onPress={log} pending={save.pending}>
          Save
        </Button>
        <MoreFold draft={draft.value} change={(part) => draft.set((before) => ({ ...before, ...part }))} />
      </div>
      {passing && (
        <PassOnDialog
          onClose={() => setPassing(false)}
          onChoose={(personId) => {
            setPassing(false);
            void save.log(personId);
          }}
        />
      )}
    </form>
  );
}

function isNowhere(element: Element | null): boolean {
  return (
    element === null || element === document.body || element.tagName === "H1" || element.tagName === "MAIN"
  );
}

function focusFirst(form: HTMLFormElement | null): void {
  form?.querySelector<HTMLElement>("input")?.focus();
}

function focusWrong(form: HTMLFormElement | null): void {
  form?.querySelector<HTMLElement>(".field-wrong input, .field-wrong textarea")?.focus();
}

interface StandingProps {
  readonly draft: DraftState<NewCalloutDraft>;
  readonly save: SaveCallout;
  readonly onCleared: () => void;
}

function Standing({ draft, save, onCleared }: StandingProps) {
  const { saved } = save;
  if (draft.error !== undefined) return <SavedState kind="not saved" reason={draft.error.message} />;
  if (save.pending) return <SavedState kind="saving" />;
  if (isBegun(draft.value)) {
    return (
      <span className="row standing">
        <SavedState kind="not saved yet" keptAt={draft.keptAt} />
        <GiveUp draft={draft} onGone={onCleared} />
      </span>
    );
  }
  if (saved === null) return null;
  return (
    <span className="row" role="status">
      <SavedState kind="saved" at={saved.at} words={`${saved.number} ${saved.how}`} />
      <Link to="/callout/$id" params={{ id: saved.id }}>
        open
      </Link>
      <Link to="/print/callout/$id" params={{ id: saved.id }}>
        slip
      </Link>
    </span>
  );
}

interface FieldsProps extends NewCalloutProps {
  readonly save: SaveCallout;
}

function Fields({ draft, beside, save }: FieldsProps) {
  const { value, set, ready } = draft;
  const change = (part: Partial<NewCalloutDraft>) => set((before) => ({ ...before, ...part }));
  const problems = value.asked ? newCalloutProblems(value) : {};
  const isEntrapment = value.inside === "people inside";
  const join = (line: CalloutLine) => void save.join(line);
  return (
    <>
      <WhichLift
        text={value.liftText}
        liftId={value.liftId}
        onText={(liftText) => change({ liftText })}
        onLift={(liftId) => change({ liftId, landingId: null })}
        lift={beside?.lift ?? null}
        problem={problems.lift ?? fieldProblem(save.error, "liftId")}
        disabled={!ready}
      />
      <JoinOffer open={beside?.open ?? []} draft={value} onJoin={join} pending={save.pending} />
      <InsideQuestions draft={value} change={change} problems={problems} disabled={!ready} />
      <TextArea
        label="What the caller says"
        value={value.said}
        onChange={(said) => change({ said })}
        problem={problems.said ?? fieldProblem(save.error, "said")}
        disabled={!ready}
        hint={
          <FaultGroupLine said={value.said} chosen={value.group} onChoose={(group) => change({ group })} />
        }
      />
      <div className="fields-two">
        <TextField
          label="Caller"
          optional
          value={value.caller}
          onChange={(caller) => change({ caller })}
          disabled={!ready}
        />
        <TextField
          label="Call back on"
          optional={!isEntrapment}
          hint={isEntrapment && value.callBack === "" ? "ask: people inside" : undefined}
          type="tel"
          value={value.callBack}
          onChange={(callBack) => change({ callBack })}
          problem={fieldProblem(save.error, "callBack")}
          disabled={!ready}
        />
      </div>
      <MoreFields draft={value} change={change} disabled={!ready} />
    </>
  );
}

interface GiveUpProps {
  readonly draft: DraftState<NewCalloutDraft>;
  readonly onGone: () => void;
}

/** Two presses: what was typed goes for good. */
function GiveUp({ draft, onGone }: GiveUpProps) {
  const [sure, setSure] = useState(false);
  if (!sure) {
    return (
      <Button kind="quiet" onPress={() => setSure(true)}>
        Clear
      </Button>
    );
  }
  const clear = async () => {
    setSure(false);
    await draft.drop();
    onGone();
  };
  return (
    <>
      <Button autoFocus onPress={() => void clear()}>
        Clear what is typed
      </Button>
      <Button kind="quiet" onPress={() => setSure(false)}>
        Keep it
      </Button>
    </>
  );
}
