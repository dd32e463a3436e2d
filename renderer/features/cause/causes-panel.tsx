import { Link } from "@tanstack/react-router";
import { useRef, useState } from "react";
import "./cause.css";
import type { CauseStep } from "#shared-lib/contract/cause.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { CausePath } from "./cause-path.tsx";
import { NextCheck } from "./next-check.tsx";
import { RankedCauses } from "./ranked-causes.tsx";

interface CauseSectionProps {
  /** The callout, or the visit that has none. */
  readonly about: About;
  readonly liftId: string | null;
  /** What was said or found. */
  readonly text: string;
  /** Only what was answered: the callout has ended, or the visit is one of a callout. */
  readonly pathOnly?: boolean;
}

type About = { readonly calloutId: string } | { readonly visitId: string };

type NoteOption = OutputOf<"faultNote.suggest">["notes"][number];

const pathEntities = ["cause step", "callout", "visit", "fault note"];
const rankEntities = [...pathEntities, "recorded fix", "lift"];

/** Which cause it most likely is, and which check tells fastest; what was answered stays with the callout. */
export function CauseSection({ pathOnly = false, ...choice }: CauseSectionProps) {
  const path = useRead("cause.path", choice.about, { entities: pathEntities });
  const steps = path.value?.steps ?? [];
  if (pathOnly && steps.length === 0) return null;
  return (
    <section className="stack cause-section">
      <RuledTitle>
        {pathOnly ? "How the cause was found" : "Which cause, and the check that tells fastest"}
      </RuledTitle>
      <ErrorNote error={path.error} onRetry={path.reload} />
      {pathOnly && <CausePath steps={steps} />}
      {!pathOnly && path.value !== undefined && <NoteChoice {...choice} steps={steps} />}
    </section>
  );
}

type NoteChoiceProps = Omit<CauseSectionProps, "pathOnly"> & { readonly steps: readonly CauseStep[] };

/** The fault note that the causes are of: the one answered for last, else the one most like what was said. */
function NoteChoice({ about, liftId, text, steps }: NoteChoiceProps) {
  const suggested = useRead("faultNote.suggest", { text, liftId, limit: 6 }, { entities: ["fault note"] });
  const [chosen, setChosen] = useState<string | null>(null);
  if (suggested.value === undefined)
    return suggested.error ? (
      <ErrorNote error={suggested.error} onRetry={suggested.reload} />
    ) : (
      <p className="soft">Looking through the fault notes …</p>
    );
  const options = notesToChoose(suggested.value.notes, steps);
  const answered = steps.findLast(({ takenBack }) => takenBack === null)?.noteId;
  const noteId = chosen ?? answered ?? options[0]?.id;
  if (noteId === undefined)
    return <p className="soft">No fault note is like it yet: there is nothing to rank the causes by.</p>;
  return (
    <>
      <div className="cause-note">
        <SelectField
          label="Fault note it is ranked by"
          options={options}
          value={noteId}
          onChange={setChosen}
        />
        <Link
          to="/note/$id"
          params={{ id: noteId }}
          {...(liftId === null ? {} : { search: { lift: liftId } })}
        >
          Open the note
        </Link>
      </div>
      <Diagnosis key={noteId} noteId={noteId} about={about} canAnswer={liftId !== null} />
    </>
  );
}

/** Suggested notes, best first, and those that were answered for already. */
function notesToChoose(notes: readonly NoteOption[], steps: readonly CauseStep[]) {
  const options = new Map(notes.map((note) => [note.id, { id: note.id, words: note.title, note: note.why }]));
  for (const { noteId, noteTitle } of steps)
    if (!options.has(noteId))
      options.set(noteId, { id: noteId, words: noteTitle, note: "answered for already" });
  return [...options.values()];
}

interface DiagnosisProps {
  readonly noteId: string;
  readonly about: About;
  /** False while it is not settled which lift it is. */
  readonly canAnswer: boolean;
}

function Diagnosis({ noteId, about, canAnswer }: DiagnosisProps) {
  const read = useRead("cause.rank", { noteId, ...about }, { entities: rankEntities });
  const answer = useWrite("cause.answerCheck");
  const takeBack = useWrite("cause.takeBack");
  // The pressed button goes with its check: the keyboard stays at what to do next.
  const nextPlace = useRef<HTMLDivElement>(null);
  const thenNext = async (written: Promise<{ readonly ok: boolean }>) => {
    if ((await written).ok) nextPlace.current?.focus();
  };
  const ranking = read.value;
  if (ranking === undefined) return <ErrorNote error={read.error} onRetry={read.reload} />;
  if (ranking.causes.length === 0) return <p className="soft">The note names no cause yet.</p>;
  const pending = answer.pending || takeBack.pending;
  return (
    <>
      <ErrorNote error={read.error ?? answer.error ?? takeBack.error} onRetry={read.reload} />
      <p aria-live="polite">{ranking.evidence.sentence}</p>
      <div className="cause-columns">
        <RankedCauses ranking={ranking} />
        <div className="stack">
          <div ref={nextPlace} tabIndex={-1} className="cause-next-place">
            <NextCheck
              ranking={ranking}
              pending={pending}
              onAnswer={
                canAnswer
                  ? (checkKey, outcomeKey) =>
                      void thenNext(answer.run({ noteId, ...about, checkKey, outcomeKey }))
                  : null
              }
            />
          </div>
          {!canAnswer && <p className="soft">Settle first which lift it is, then answers can be recorded.</p>}
          <CausePath
            steps={ranking.answers}
            pending={pending}
            onTakeBack={({ id }) => void thenNext(takeBack.run({ stepId: id }))}
          />
        </div>
      </div>
    </>
  );
}
