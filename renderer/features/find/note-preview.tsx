import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { formatDate } from "#shared-lib/format.ts";
import { Caution } from "../../ui/caution.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { CauseTable } from "../fault-note/cause-table.tsx";
import { NoteActs } from "../fault-note/note-acts.tsx";
import { NoteStatusMark } from "../fault-note/note-status.tsx";
import { appliesWords, proofWords, starterWords, statusSentence } from "../fault-note/note-words.ts";
import { ZoneOrderPicture } from "../fault-note/zone-order-picture.tsx";
import { PlaceLink } from "./place-link.tsx";
import { PreviewRead } from "./preview-read.tsx";
import { placeOfNote } from "./result-link.ts";

interface NotePreviewProps {
  readonly id: string;
  readonly contextLift: LiftLine | undefined;
}

const symptomsShown = 3;
const cautionsShown = 3;

export function NotePreview({ id, contextLift }: NotePreviewProps) {
  const read = useRead("faultNote.find", { id }, { entities: ["fault note", "recorded fix", "callout"] });
  return (
    <PreviewRead read={read}>
      {(found) => {
        const { note } = found;
        const place = placeOfNote(id, contextLift?.id ?? null);
        const applies = appliesWords(note);
        const more = note.symptoms.length - symptomsShown;
        return (
          <>
            <div className="spread find-preview-head">
              <h2 className="find-preview-title">
                <PlaceLink place={place}>{note.title}</PlaceLink>
              </h2>
              <NoteStatusMark note={note} />
            </div>
            <p className="soft label">
              {[note.number, note.group, `written ${formatDate(note.createdAt)}`, proofWords(found)].join(
                " · ",
              )}
            </p>
            {note.status === "withdrawn" && <p className="strong">{statusSentence(note)}</p>}
            {note.starterKey !== null && <p className="label">{starterWords}</p>}
            {note.symptoms.length > 0 && (
              <p>
                {note.symptoms.slice(0, symptomsShown).map((symptom) => (
                  <span key={symptom}>“{symptom}” </span>
                ))}
                {more > 0 && <span className="soft">and {more} more</span>}
              </p>
            )}
            {applies !== "" && <p className="soft label">Applies: {applies}</p>}
            <ZoneOrderPicture note={note} />
            <NoteActs note={note} liftId={contextLift?.id ?? null} liftTitle={contextLift?.title} />
            {note.causes.length > 0 && (
              <section>
                <RuledTitle>Causes, most likely first</RuledTitle>
                <CauseTable found={found} />
              </section>
            )}
            {note.cautions.length > 0 && <Caution>{note.cautions.slice(0, cautionsShown).join(" ")}</Caution>}
          </>
        );
      }}
    </PreviewRead>
  );
}
