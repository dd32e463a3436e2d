import { Button } from "../../ui/button.tsx";
import { ConflictView } from "../../ui/conflict-view.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SavedState } from "../../ui/saved-state.tsx";
import { useCommand } from "../../use-command.ts";
import type { RecordField } from "./record-fields.ts";
import { RecordFieldsForm } from "./record-fields-form.tsx";
import type { RecordEdit } from "./use-record-edit.ts";

interface RecordEditFormProps {
  readonly edit: RecordEdit;
  readonly fields: readonly RecordField[];
  readonly pending: boolean;
}

export function RecordEditForm({ edit, fields, pending }: RecordEditFormProps) {
  useCommand({ name: "Save the record", keys: "Ctrl S", run: () => void edit.save() });
  const words = (path: string) =>
    fields.find((field) => path === field.key || path === `fields.${field.key}`)?.label;
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void edit.save();
      }}
    >
      {edit.conflict !== null && (
        <ConflictView
          fields={edit.conflict}
          onSaveMine={() => void edit.saveMine()}
          onTakeTheirs={edit.takeTheirs}
          pending={pending}
        />
      )}
      <RecordFieldsForm fields={fields} texts={edit.texts} problems={edit.problems} onChange={edit.change} />
      <ErrorNote error={edit.error} fieldWords={words} />
      <div className="buttons">
        <Button kind="first" type="submit" keys="Ctrl S" pending={pending}>
          Save
        </Button>
        <Button onPress={() => void edit.giveUp()}>Give up what I typed</Button>
        <SavedState kind="not saved yet" keptAt={edit.keptAt} />
      </div>
    </form>
  );
}
