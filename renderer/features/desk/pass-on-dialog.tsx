import { useState } from "react";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { useProgram } from "../../use-program.ts";
import { PeopleList, peopleToSend } from "../callout/people-list.tsx";

interface PassOnDialogProps {
  readonly onClose: () => void;
  readonly onChoose: (personId: string) => void;
}

/** Whom to send: those on duty first, each with the telephone number. Enter saves and passes on. */
export function PassOnDialog({ onClose, onChoose }: PassOnDialogProps) {
  const { people } = useProgram();
  const sendable = peopleToSend(people);
  const [chosen, setChosen] = useState<string | null>(sendable[0]?.id ?? null);
  return (
    <Dialog
      title="Save and pass on"
      open
      onClose={onClose}
      actions={
        <>
          <Button
            kind="first"
            keys="Enter"
            disabled={chosen === null}
            onPress={() => {
              if (chosen !== null) onChoose(chosen);
            }}
          >
            Save and pass on
          </Button>
          <Button kind="quiet" onPress={onClose}>
            Back to the callout
          </Button>
        </>
      }
    >
      <PeopleList
        label="To whom"
        people={sendable}
        value={chosen}
        onChange={setChosen}
        onEnter={onChoose}
        autoFocus
      />
    </Dialog>
  );
}
