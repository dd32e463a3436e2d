import type { FaultNote } from "#shared-lib/contract/fault-note.ts";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { formatDate } from "#shared-lib/format.ts";
import { Caution } from "../../ui/caution.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { rankingSentence } from "../cause/ranking-parts.ts";
import { PlaceLink } from "../find/place-link.tsx";
import { CauseTable } from "./cause-table.tsx";
import { hazardWords } from "./hazard-parts.ts";
import { NoteActs } from "./note-acts.tsx";
import { outcomeWords } from "./note-text.ts";
import { appliesWords, type FoundNote } from "./note-words.ts";
import { ZoneOrderPicture } from "./zone-order-picture.tsx";

interface NoteViewProps {
  readonly found: FoundNote;
  readonly contextLift: LiftLine | undefined;
}

/** All a note says. Left what is wrong, why, and what proves it; right what to do about it. */
export function NoteView({ found, contextLift }: NoteViewProps) {
  const { note } = found;
  const applies = appliesWords(note);
  const ranking = useRead("cause.rank", { noteId: note.id, liftId: contextLift?.id ?? null }).value;
  return (
    <div className="note-columns">
      <div className="stack note-main">
        <section>
          <RuledTitle>Symptoms</RuledTitle>
          {note.symptoms.length === 0 ? (
            <p className="soft">None written down yet.</p>
          ) : (
            <ul className="note-symptoms">
              {note.symptoms.map((symptom) => (
                <li key={symptom}>“{symptom}”</li>
              ))}
            </ul>
          )}
          <p className="soft">{applies === "" ? "Applies to every lift." : `Applies: ${applies}`}</p>
        </section>
        <ZoneOrderPicture note={note} />
        <section>
          <RuledTitle>Causes, in the order of the note</RuledTitle>
          {ranking !== undefined && note.causes.length > 0 && (
            <p className="note-ranking">{rankingSentence(ranking)}</p>
          )}
          {note.causes.length === 0 ? (
            <p className="soft">No cause is written down yet.</p>
          ) : (
            <CauseTable found={found} full />
          )}
        </section>
        <Proof found={found} />
      </div>
      <div className="stack note-side">
        <NoteActs note={note} liftId={contextLift?.id ?? null} liftTitle={contextLift?.title} />
        {note.cautions.length > 0 && <Cautions cautions={note.cautions} />}
        <Checks note={note} />
        {note.source !== "" && <p className="soft label">Source: {note.source}</p>}
      </div>
    </div>
  );
}

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  return (
    <Caution>
      {cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </Caution>
  );
}

function Checks({ note }: { readonly note: FaultNote }) {
  if (note.checks.length === 0) return null;
  return (
    <section>
      <RuledTitle count={note.checks.length}>Checks that tell the causes apart</RuledTitle>
      <ol className="note-checks">
        {note.checks.map((check) => (
          <li key={check.key}>
            <b>{check.title}</b>
            <span className="soft label"> {check.minutes} min</span>
            {check.how !== "" && <p>{check.how}</p>}
            {check.hazard !== "none" && <p className="strong label">{hazardWords[check.hazard]}.</p>}
            {check.caution !== undefined && <p className="label">{check.caution}</p>}
            <ul className="note-outcomes label">
              {check.outcomes.map((outcome) => {
                const meaning = outcomeWords(outcome, note.causes);
                return (
                  <li key={outcome.key}>
                    {outcome.words}
                    {meaning !== "" && <span className="soft">: {meaning}</span>}
                  </li>
                );
              })}
            </ul>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Proof({ found }: { readonly found: FoundNote }) {
  const { proof, note } = found;
  return (
    <section>
      <RuledTitle count={proof.length}>Callouts that prove it</RuledTitle>
      {proof.length === 0 ? (
        <p className="soft">No recorded fix is attached to this note yet.</p>
      ) : (
        <ul className="note-proof">
          {proof.map((one) => {
            const number = note.causes.findIndex(({ key }) => key === one.causeKey) + 1;
            return (
              <li key={one.fixId}>
                <PlaceLink
                  place={{
                    to: one.calloutId === null ? `/lift/${one.liftId}` : `/callout/${one.calloutId}`,
                  }}
                >
                  {one.calloutNumber ?? "Visit"}, {one.liftTitle}
                </PlaceLink>
                <span className="soft label"> {formatDate(one.at)}</span>
                <p className="label">
                  {number > 0 && <b>Cause {number}: </b>}
                  {one.cause}
                </p>
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}
