import { useState } from "react";
import type { Person } from "#shared-lib/contract/person.ts";
import { roles, startScreens } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Checkbox } from "../../ui/checkbox.tsx";
import { Choice } from "../../ui/choice.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useWrite } from "../../use-write.ts";

interface PersonDialogProps {
  /** Null: a new person. */
  readonly person: Person | null;
  readonly onClose: () => void;
}

const screenWords: Readonly<Record<(typeof startScreens)[number], string>> = {
  desk: "Desk",
  find: "Find",
  lifts: "Lifts",
  checks: "Checks",
  bench: "Bench",
  review: "Review",
};

const newPerson = {
  name: "",
  role: "engineer" as Person["role"],
  telephone: "",
  onDuty: false,
  startScreen: "find" as Person["startScreen"],
  active: true,
};

export function PersonDialog({ person, onClose }: PersonDialogProps) {
  const [fields, setFields] = useState<typeof newPerson>(() =>
    person === null
      ? newPerson
      : {
          name: person.name,
          role: person.role,
          telephone: person.telephone,
          onDuty: person.onDuty,
          startScreen: person.startScreen,
          active: person.active,
        },
  );
  const add = useWrite("person.add");
  const change = useWrite("person.change");
  const set = (patch: Partial<typeof newPerson>): void => setFields((before) => ({ ...before, ...patch }));
  const save = async (): Promise<void> => {
    const result =
      person === null
        ? await add.run(fields)
        : await change.run({ id: person.id, version: person.version, fields });
    if (result.ok) onClose();
  };
  return (
    <Dialog
      title={person === null ? "Add a person" : person.name}
      open
      onClose={onClose}
      actions={
        <>
          <Button
            kind="first"
            onPress={() => void save()}
            pending={add.pending || change.pending}
            disabled={fields.name.trim() === ""}
          >
            Save
          </Button>
          <Button onPress={onClose}>Close without saving</Button>
        </>
      }
    >
      <PersonFields fields={fields} set={set} />
      <ErrorNote error={add.error ?? change.error} />
    </Dialog>
  );
}

interface PersonFieldsProps {
  readonly fields: typeof newPerson;
  readonly set: (patch: Partial<typeof newPerson>) => void;
}

function PersonFields({ fields, set }: PersonFieldsProps) {
  return (
    <>
      <TextField label="Name" value={fields.name} onChange={(name) => set({ name })} autoFocus />
      <Choice
        label="Role"
        value={fields.role}
        onChange={(role) => set({ role })}
        options={roles.map((role) => ({ id: role, words: role }))}
      />
      <TextField
        label="Telephone"
        optional
        type="tel"
        value={fields.telephone}
        onChange={(telephone) => set({ telephone })}
      />
      <SelectField
        label="Starts with"
        value={fields.startScreen}
        onChange={(startScreen) => set({ startScreen })}
        options={startScreens.map((screen) => ({ id: screen, words: screenWords[screen] }))}
      />
      <Checkbox checked={fields.onDuty} onChange={(onDuty) => set({ onDuty })}>
        On duty now
      </Checkbox>
      <Checkbox checked={!fields.active} onChange={(left) => set({ active: !left })}>
        Has left; stays in the records, is no longer offered
      </Checkbox>
    </>
  );
}
