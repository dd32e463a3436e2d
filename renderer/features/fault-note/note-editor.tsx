import type { FaultNote } from "#shared-lib/contract/fault-note.ts";
import { formatTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ConflictView } from "../../ui/conflict-view.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { useCommand } from "../../use-command.ts";
import { NoteFields } from "./note-fields.tsx";
import type { NoteConflict } from "./note-merge.ts";
import type { NoteEdit, NoteEditState } from "./use-note-edit.ts";

interface NoteEditorProps {
  /** As it stands now, whoever changed it. */
  readonly note: FaultNote;
  readonly edit: NoteEdit;
  readonly state: NoteEditState;
  /** "Ines Calder, 10:41": who changed it last. */
  readonly changedBy: string | undefined;
}

/** The note in its form. A change of another window is said at once, and saving shows both texts. */
export function NoteEditor({ note, edit, state, changedBy }: NoteEditorProps) {
  const { draft, write, problems, conflict } = state;
  useCommand({ name: "Save the note", keys: "Ctrl S", group: "Fault note", run: state.save });
  if (!draft.ready) return null;
  const overtaken = note.version !== edit.version;
  return (
    <div className="stack">
      {overtaken && conflict === null && (
        <div className="note-overtaken" role="status">
          <span>
            This note was changed meanwhile{changedBy !== undefined && ` by ${changedBy}`}. What you typed is
            kept; nothing is overwritten.
          </span>
          <Button onPress={state.showBoth}>Show both texts</Button>
        </div>
      )}
      {conflict !== null && <BothTexts state={state} conflict={conflict} changedBy={changedBy} />}
      <NoteFields form={edit.form} onChange={state.change} problems={problems} />
      {problems.size > 0 && (
        <p className="pencil strong" role="alert">
          Not saved: {problems.size === 1 ? "one field needs" : `${problems.size} fields need`} a look. What
          you typed is kept.
        </p>
      )}
      <ErrorNote error={write.error} />
      <div className="note-save">
        <Button
          kind="first"
          keys="Ctrl S"
          pending={write.pending}
          onPress={conflict === null ? state.save : state.saveMine}
        >
          {conflict === null ? "Save" : "Save yours as the newest"}
        </Button>
        <Button onPress={state.stop}>Stop editing</Button>
        <Button kind="quiet" onPress={state.discard}>
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

interface BothTextsProps {
  readonly state: NoteEditState;
  readonly conflict: NoteConflict;
  readonly changedBy: string | undefined;
}

function BothTexts({ state, conflict, changedBy }: BothTextsProps) {
  return (
    <>
      <h2 className="seen-by-reader-only">Two versions</h2>
      <ConflictView
        {...(changedBy === undefined ? {} : { changedBy })}
        fields={conflict.fields}
        onSaveMine={state.saveMine}
        onTakeTheirs={state.takeTheirs}
        pending={state.write.pending}
      />
      <p>
        {conflict.fields.length === 0 && "No text of yours differs from a newer one. "}
        {conflict.kept.length > 0 && (
          <>Changed meanwhile and kept as it is in either case: {conflict.kept.join(", ")}.</>
        )}
      </p>
    </>
  );
}

/** In reading: what was typed earlier and not saved. */
export function KeptDraft({ state }: { readonly state: NoteEditState }) {
  const { draft } = state;
  if (state.edit !== null || draft.value === null) return null;
  return (
    <div className="note-overtaken">
      <span>
        Changes of yours are not saved yet
        {draft.keptAt !== null && `; they are kept since ${formatTime(draft.keptAt)}`}.
      </span>
      <Button onPress={state.start}>Go on editing</Button>
      <Button kind="quiet" onPress={state.discard}>
        Throw them away
      </Button>
    </div>
  );
}
