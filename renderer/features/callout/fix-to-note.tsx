import { Link } from "@tanstack/react-router";
import { useEffect, useRef, useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { RecordedFix } from "#shared-lib/contract/visit.ts";
import { Button, buttonClass } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";

interface FixToNoteProps {
  readonly fixId: string;
  readonly onDone: () => void;
}

/** From a recorded fix, one step: attach it to the fault note it belongs to, or start a new one. */
export function FixToNote({ fixId, onDone }: FixToNoteProps) {
  const found = useRead("fix.find", { id: fixId }, { entities: ["recorded fix", "fault note"] });
  const fix = found.value?.fix;
  const heading = useRef<HTMLDivElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="stack fix-to-note">
      <div ref={heading} tabIndex={-1} className="fix-head">
        <RuledTitle>Which fault note does this fix belong to?</RuledTitle>
      </div>
      <ErrorNote error={found.error} onRetry={found.reload} />
      {fix !== undefined && (
        <>
          <p>
            <MarkShape kind="recorded fix" /> <b>{fix.cause}</b> {fix.fix}
          </p>
          {fix.noteId !== null ? <Attached fix={fix} /> : <Suggestions fix={fix} />}
        </>
      )}
      <div className="buttons">
        <Link to="/note/new" search={{ fromFix: fixId }} className={buttonClass("plain")}>
          <span className="button-word">Start a new fault note from it</span>
        </Link>
        <Button kind="quiet" onPress={onDone}>
          {fix?.noteId == null ? "Leave it by itself for now" : "Back to the callout"}
        </Button>
      </div>
    </section>
  );
}

function Attached({ fix }: { readonly fix: RecordedFix }) {
  const detach = useWrite("fix.attach");
  if (fix.noteId === null) return null;
  return (
    <div className="stack">
      <p>
        It is attached to{" "}
        <Link to="/note/$id" params={{ id: fix.noteId }}>
          fault note {fix.noteNumber}
        </Link>
        .
      </p>
      <ErrorNote error={detach.error} />
      <div className="buttons">
        <Button
          kind="quiet"
          pending={detach.pending}
          onPress={() => void detach.run({ id: fix.id, version: fix.version, noteId: null, causeKey: null })}
        >
          Take it off that note
        </Button>
      </div>
    </div>
  );
}

type SuggestedNote = Pick<OutputOf<"faultNote.suggest">["notes"][number], "id" | "title" | "status" | "why">;

function Suggestions({ fix }: { readonly fix: RecordedFix }) {
  const suggested = useRead("faultNote.suggest", {
    text: `${fix.cause} ${fix.fix}`,
    liftId: fix.liftId,
    limit: 4,
  });
  const answered = useAnsweredNote(fix);
  const [chosen, setChosen] = useState<string | null>(null);
  const others = (suggested.value?.notes ?? []).filter(({ id }) => id !== answered?.id);
  const notes: readonly SuggestedNote[] = answered === null ? others : [answered, ...others];
  if (suggested.value !== undefined && notes.length === 0)
    return <p className="soft">No fault note is like it yet.</p>;
  return (
    <>
      <ErrorNote error={suggested.error} onRetry={suggested.reload} />
      <ol className="similar">
        {notes.map((note) => (
          <Suggestion
            key={note.id}
            note={note}
            fix={fix}
            chosen={chosen === note.id}
            onChoose={() => setChosen(note.id)}
          />
        ))}
      </ol>
    </>
  );
}

/** The note whose checks were answered on the way to this fix: it stands first. */
function useAnsweredNote(fix: RecordedFix): SuggestedNote | null {
  const { calloutId, visitId } = fix;
  const path = useRead("cause.path", calloutId === null ? { visitId } : { calloutId }, {
    entities: ["cause step"],
    enabled: calloutId !== null || visitId !== null,
  });
  const noteId = path.value?.steps.findLast(({ takenBack }) => takenBack === null)?.noteId;
  const found = useRead("faultNote.find", { id: noteId ?? "" }, { enabled: noteId !== undefined });
  const note = found.value?.note;
  return note === undefined ? null : { ...note, why: "its checks were answered on the way to this fix" };
}

interface SuggestionProps {
  readonly note: SuggestedNote;
  readonly fix: RecordedFix;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

function Suggestion({ note, fix, chosen, onChoose }: SuggestionProps) {
  return (
    <li className={chosen ? "suggestion suggestion-chosen" : "suggestion"}>
      <MarkShape
        kind={
          note.status === "confirmed"
            ? "note confirmed"
            : note.status === "withdrawn"
              ? "note withdrawn"
              : "note draft"
        }
      />
      <div className="stack">
        <p>
          <Link to="/note/$id" params={{ id: note.id }}>
            <b>{note.title}</b>
          </Link>
          <br />
          <span className="soft">{note.why}</span>
        </p>
        {chosen ? (
          <AttachTo note={note} fix={fix} />
        ) : (
          <div className="buttons">
            <Button label={`Attach to ${note.title}`} onPress={onChoose}>
              Attach
            </Button>
          </div>
        )}
      </div>
    </li>
  );
}

const notTold = "not told";

/** The only cause that the answers left, if there is one: proposed, and attached only when a person presses. */
function useCauseLeft(note: SuggestedNote, { calloutId, visitId }: RecordedFix): string | null {
  const asked = calloutId === null ? { visitId } : { calloutId };
  const ranking = useRead("cause.rank", { noteId: note.id, ...asked }, { entities: ["cause step"] }).value;
  const [first] = ranking?.causes ?? [];
  const isLeft = ranking?.contradiction === null && first !== undefined && first.probability > 0.999;
  return isLeft ? first.key : null;
}

function AttachTo({ note, fix }: { readonly note: SuggestedNote; readonly fix: RecordedFix }) {
  const found = useRead("faultNote.find", { id: note.id }, { entities: ["fault note"] });
  const [chosen, setCause] = useState<string | null>(null);
  const left = useCauseLeft(note, fix);
  const cause = chosen ?? left;
  const write = useWrite("fix.attach");
  const causes = found.value?.note.causes ?? [];
  return (
    <div className="stack">
      <Choice
        label="Which of its causes was it?"
        options={[
          ...causes.map((one) => ({ id: one.key, words: one.title })),
          { id: notTold, words: "another, or not told" },
        ]}
        value={cause}
        onChange={setCause}
      />
      <ErrorNote error={write.error ?? found.error} />
      <div className="buttons">
        <Button
          kind="first"
          disabled={cause === null}
          pending={write.pending}
          onPress={() =>
            void write.run({
              id: fix.id,
              version: fix.version,
              noteId: note.id,
              causeKey: cause === notTold ? null : cause,
            })
          }
        >
          Attach the fix
        </Button>
      </div>
    </div>
  );
}
