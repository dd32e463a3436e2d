import { useSearch } from "@tanstack/react-router";
import { useState } from "react";
import type { RecordedFix } from "#shared-lib/contract/visit.ts";
import { formatDate } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { useCommand } from "../../use-command.ts";
import { useDraft } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { PlaceLink, useGoTo } from "../find/place-link.tsx";
import "./fault-note.css";
import { startFromFix, startFromWords } from "./new-note-start.ts";
import { NoteFields } from "./note-fields.tsx";
import { type NoteForm, readForm, withoutEmptyEntries } from "./note-form.ts";

/** A new fault note, from nothing, from words that found nothing, or from a recorded fix. */
export function NewFaultNotePage() {
  const { fromFix, said } = useSearch({ strict: false }) as Record<string, unknown>;
  if (typeof fromFix === "string") return <FromFix key={fromFix} id={fromFix} />;
  const words = typeof said === "string" || typeof said === "number" ? String(said) : "";
  return <NewNote key={words} about={words} start={startFromWords(words)} fix={null} />;
}

function FromFix({ id }: { readonly id: string }) {
  const read = useRead("fix.find", { id }, { entities: [] });
  const calloutId = read.value?.fix.calloutId ?? null;
  const callout = useRead(
    "callout.find",
    { id: calloutId ?? "" },
    { enabled: calloutId !== null, entities: [] },
  );
  const waits = calloutId !== null && callout.value === undefined && callout.error === undefined;
  if (read.value === undefined || waits) {
    return (
      <>
        <PageTitle title="New fault note" />
        {read.error !== undefined && <ErrorNote error={read.error} onRetry={read.reload} />}
      </>
    );
  }
  const { fix } = read.value;
  return <NewNote about={id} start={startFromFix(fix, callout.value?.callout.said ?? null)} fix={fix} />;
}

interface NewNoteProps {
  /** What it is begun from: two notes begun from different things are two drafts. */
  readonly about: string;
  readonly start: NoteForm;
  readonly fix: RecordedFix | null;
}

const longestKeyPart = 80;

function NewNote({ about, start, fix }: NewNoteProps) {
  const { person } = useProgram();
  const draft = useDraft(`new fault note ${person?.id ?? ""} ${about.slice(0, longestKeyPart)}`, start);
  const write = useWrite("faultNote.write");
  const goTo = useGoTo();
  const [problems, setProblems] = useState<ReadonlyMap<string, string>>(new Map());
  const save = async () => {
    if (write.pending) return;
    const form = withoutEmptyEntries(draft.value);
    draft.set(form);
    const reading = readForm(form);
    setProblems(reading.kind === "problems" ? reading.problems : new Map());
    if (reading.kind === "problems") return;
    const result = await write.run({ ...reading.fields, fromFixId: fix?.id ?? null });
    if (!result.ok) return;
    await draft.drop();
    goTo({ to: `/note/${result.value.id}` });
  };
  useCommand({ name: "Save the note", keys: "Ctrl S", group: "Fault note", run: () => void save() });
  return (
    <div className="stack">
      <PageTitle title="New fault note" />
      {fix !== null && <Origin fix={fix} />}
      {draft.ready && (
        <NoteFields
          form={draft.value}
          onChange={(change) => draft.set((before) => ({ ...before, ...change }))}
          problems={problems}
        />
      )}
      {problems.size > 0 && (
        <p className="pencil strong" role="alert">
          Not saved: {problems.size === 1 ? "one field needs" : `${problems.size} fields need`} a look. What
          you typed is kept.
        </p>
      )}
      <ErrorNote error={write.error} />
      <div className="note-save">
        <Button kind="first" keys="Ctrl S" pending={write.pending} onPress={() => void save()}>
          Save as a draft note
        </Button>
        <Button kind="quiet" onPress={() => void draft.drop()}>
          Throw away what was typed
        </Button>
        {draft.error === undefined ? (
          <SavedState kind="not saved yet" keptAt={draft.keptAt} />
        ) : (
          <SavedState kind="not saved" reason={draft.error.message} />
        )}
      </div>
    </div>
  );
}

/** Where it comes from, and notes that may say the same already. */
function Origin({ fix }: { readonly fix: RecordedFix }) {
  const text = `${fix.cause} ${fix.fix}`;
  const suggested = useRead("faultNote.suggest", { text, liftId: fix.liftId }).value?.notes ?? [];
  return (
    <>
      <p>
        From the recorded fix on{" "}
        <PlaceLink
          place={{ to: fix.calloutId === null ? `/lift/${fix.liftId}` : `/callout/${fix.calloutId}` }}
        >
          {fix.liftTitle}, {formatDate(fix.at)}
        </PlaceLink>
        {fix.noteNumber !== null && `. It belongs to fault note ${fix.noteNumber} and will move to this one`}.
      </p>
      {suggested.length > 0 && (
        <p className="soft">
          Notes that may say the same already:{" "}
          {suggested.map((note, index) => (
            <span key={note.id}>
              {index > 0 && "; "}
              <PlaceLink place={{ to: `/note/${note.id}` }}>{note.title}</PlaceLink>
            </span>
          ))}
          .
        </p>
      )}
    </>
  );
}
