import { useSearch } from "@tanstack/react-router";
import type { LiftLine } from "#shared-lib/contract/lift.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDate, formatSince } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import "./fault-note.css";
import { PlaceLink } from "../find/place-link.tsx";
import { NoteActions } from "./note-actions.tsx";
import { KeptDraft, NoteEditor } from "./note-editor.tsx";
import { NoteHistory } from "./note-history.tsx";
import { NoteStatusMark } from "./note-status.tsx";
import { NoteView } from "./note-view.tsx";
import { type FoundNote, proofWords, starterWords, statusSentence } from "./note-words.ts";
import { useNoteEdit } from "./use-note-edit.ts";

type History = OutputOf<"history.ofRecord">;

const noteEntities = ["fault note", "recorded fix", "callout"];

/** One fault note: everything it says, its state and who answers for it, and its form. */
export function FaultNotePage({ id }: { readonly id: string }) {
  const { lift } = useSearch({ strict: false }) as Record<string, unknown>;
  const liftId = typeof lift === "string" ? lift : null;
  const found = useRead("faultNote.find", { id }, { entities: noteEntities });
  const history = useRead("history.ofRecord", { entity: "fault note", id }, { entities: ["fault note"] });
  const liftRead = useRead("lift.find", { id: liftId ?? "" }, { enabled: liftId !== null });
  if (history.value?.deleted === true) return <DeletedNote id={id} history={history.value} />;
  if (found.value === undefined || history.value === undefined) {
    const error = found.error ?? history.error;
    return (
      <>
        <PageTitle title="Fault note" />
        {error !== undefined && <ErrorNote error={error} onRetry={found.reload} />}
      </>
    );
  }
  return <Note found={found.value} history={history.value} contextLift={liftRead.value?.line} />;
}

interface NoteProps {
  readonly found: FoundNote;
  readonly history: History;
  readonly contextLift: LiftLine | undefined;
}

function Note({ found, history, contextLift }: NoteProps) {
  const { note } = found;
  const state = useNoteEdit(note);
  const last = history.changes[0];
  const changedBy =
    last === undefined ? undefined : `${last.by?.name ?? "Sillbook"}, ${formatSince(last.at, new Date())}`;
  const status = statusSentence(note);
  return (
    <article className="stack note-page">
      <header className="stack note-head">
        <div className="spread find-preview-head">
          <PageTitle title={note.title} />
          <NoteStatusMark note={note} />
        </div>
        <p className="soft label">
          {[note.number, note.group, `written ${formatDate(note.createdAt)}`, proofWords(found)].join(" · ")}
          {changedBy !== undefined && history.changes.length > 1 && ` · last changed by ${changedBy}`}
        </p>
        {status !== null && <p className={note.status === "withdrawn" ? "strong" : ""}>{status}</p>}
        {note.starterKey !== null && (
          <p>
            {starterWords}
            {note.edited && " Edited by the company since."}
          </p>
        )}
        {contextLift !== undefined && (
          <div className="row">
            <span>
              Read for <PlaceLink place={{ to: `/lift/${contextLift.id}` }}>{contextLift.title}</PlaceLink>
            </span>
            <LiftState lift={contextLift} short />
          </div>
        )}
      </header>
      <KeptDraft state={state} />
      {state.edit === null ? (
        <>
          <NoteActions note={note} onEdit={state.start} />
          <NoteView found={found} contextLift={contextLift} />
          <NoteHistory id={note.id} history={history} />
        </>
      ) : (
        <NoteEditor note={note} edit={state.edit} state={state} changedBy={changedBy} />
      )}
    </article>
  );
}

function DeletedNote({ id, history }: { readonly id: string; readonly history: History }) {
  const restore = useWrite("record.restore");
  const last = history.changes[0];
  return (
    <div className="stack">
      <PageTitle title="Deleted fault note" />
      <p>
        This fault note was deleted
        {last?.by != null && ` by ${last.by.name}`}
        {last !== undefined && `, ${formatSince(last.at, new Date())}`}. Nothing of it is lost.
      </p>
      <div className="buttons">
        <Button
          kind="first"
          pending={restore.pending}
          onPress={() => void restore.run({ entity: "fault note", id, version: history.version })}
        >
          Restore it
        </Button>
        <PlaceLink place={{ to: "/find" }} kind="quiet">
          All fault notes
        </PlaceLink>
      </div>
      <ErrorNote error={restore.error} />
    </div>
  );
}
