import { formatSince } from "#shared-lib/format.ts";
import { Caution } from "../../ui/caution.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { TextArea } from "../../ui/text-field.tsx";
import type { CheckStep } from "./check-types.ts";
import { OrderDrawing } from "./order-drawing.tsx";
import { StepAnswers } from "./step-answers.tsx";
import { PreviousTime, StepVerdictView } from "./step-verdict.tsx";
import { expectedWords, sourceWords } from "./step-words.ts";
import type { CheckWork } from "./use-check-work.ts";
import { WaysOn } from "./ways-on.tsx";

interface StepWorkProps {
  readonly work: CheckWork;
  readonly step: CheckStep;
  readonly liftId: string;
  /** "Step 3 of 8" */
  readonly count: string;
  /** "Landing 2, Second floor" */
  readonly place: string;
  /** False while a danger is open on the lift: nothing more is recorded there. */
  readonly allowed: boolean;
}

/** One step, large: left what is to be done, right what was found. */
export function StepWork({ work, step, liftId, count, place, allowed }: StepWorkProps) {
  const entry = work.entryOf(step.key);
  const { expected } = step;
  return (
    <section className="check-step" aria-label={`${count}: ${step.title}`}>
      <div className="check-asks">
        <p className="check-place">
          <b>{place}</b> <span className="soft">{count}</span>
        </p>
        <h2 className="check-title">{step.title}</h2>
        <p className="check-how">{step.how}</p>
        <Caution>{step.caution}</Caution>
        <p className="check-expected">
          <span className="label soft">Expected</span>
          <b>{expectedWords(expected)}</b>
          <span className="label soft">From: {sourceWords(step)}</span>
        </p>
        <PreviousTime step={step} />
      </div>
      <div className="check-finds">
        <StepAnswers
          key={step.key}
          step={step}
          entry={entry}
          disabled={!allowed}
          onChange={(part) => work.change(step.key, part)}
          onRecord={(found) => void work.record(step, found)}
        />
        <StepVerdictView step={step} />
        <Refusal work={work} step={step} />
        {step.verdict === "failed" && <WaysOn step={step} liftId={liftId} />}
        <NoteAndSaved work={work} step={step} allowed={allowed} />
      </div>
      {expected.kind === "order" && (
        <OrderDrawing expected={expected.order} seen={seenOrder(step, entry.order)} />
      )}
    </section>
  );
}

function seenOrder(step: CheckStep, pressed: readonly string[] | undefined): readonly string[] | null {
  if (pressed !== undefined) return pressed;
  return step.found?.kind === "order" ? step.found.order : null;
}

/** A refused write: what was chosen is kept and can be recorded again as it is. */
function Refusal({ work, step }: { readonly work: CheckWork; readonly step: CheckStep }) {
  const error = work.errorOf(step.key);
  const { found } = work.entryOf(step.key);
  if (error === undefined) return null;
  return (
    <ErrorNote
      error={error}
      retryWord="Record it again"
      onRetry={() => void (found === undefined ? work.recordNote(step) : work.record(step, found))}
    />
  );
}

interface NoteProps {
  readonly work: CheckWork;
  readonly step: CheckStep;
  readonly allowed: boolean;
}

function NoteAndSaved({ work, step, allowed }: NoteProps) {
  const entry = work.entryOf(step.key);
  const unsaved =
    entry.found !== undefined ||
    entry.order !== undefined ||
    entry.value !== undefined ||
    entry.note !== undefined;
  return (
    <>
      <TextArea
        label="Note"
        optional
        rows={1}
        value={entry.note ?? step.note}
        onChange={(note) => work.change(step.key, { note })}
        onBlur={() => void work.recordNote(step)}
        disabled={!allowed}
      />
      <p className="check-saved">
        {work.pending ? (
          <SavedState kind="saving" />
        ) : unsaved ? (
          <SavedState kind="not saved yet" keptAt={work.keptAt} />
        ) : step.at !== null ? (
          <SavedState kind="saved" at={step.at} words={savedWords(step)} />
        ) : null}
      </p>
    </>
  );
}

/** "Recorded by Ines Calder, 17 Nov," before the time. */
function savedWords({ by, at }: CheckStep): string {
  const day = at === null ? "" : formatSince(at, new Date()).split(",").slice(0, -1).join(",");
  return `Recorded by ${by?.name ?? ""}${day === "" ? "" : `, ${day}`},`;
}
