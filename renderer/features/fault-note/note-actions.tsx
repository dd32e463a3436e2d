import { type ReactNode, useState } from "react";
import type { FaultNote } from "#shared-lib/contract/fault-note.ts";
import { printPage } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { TextArea } from "../../ui/text-field.tsx";
import { useCommand } from "../../use-command.ts";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";

interface NoteActionsProps {
  readonly note: FaultNote;
  readonly onEdit: () => void;
}

type Step = "faultNote.confirm" | "faultNote.withdraw" | "faultNote.backToDraft";

interface StepWords {
  readonly step: Step;
  readonly word: string;
  readonly title: string;
  readonly says: ReactNode;
  readonly reasonNeeded: boolean;
}

const confirm: StepWords = {
  step: "faultNote.confirm",
  word: "Confirm",
  title: "Confirm this fault note",
  says: "Your name and the date stand beside it: others will rely on it.",
  reasonNeeded: false,
};
const withdraw: StepWords = {
  step: "faultNote.withdraw",
  word: "Withdraw",
  title: "Withdraw this fault note",
  says: "It stays findable, behind the others, and says why.",
  reasonNeeded: true,
};
const backToDraft: StepWords = {
  step: "faultNote.backToDraft",
  word: "Back to draft",
  title: "Set this fault note back to draft",
  says: "It is no longer relied on until somebody confirms it again.",
  reasonNeeded: true,
};

const stepsFrom: { readonly [Status in FaultNote["status"]]: readonly StepWords[] } = {
  draft: [confirm, withdraw],
  confirmed: [withdraw, backToDraft],
  withdrawn: [backToDraft, confirm],
};

export function NoteActions({ note, onEdit }: NoteActionsProps) {
  const [step, setStep] = useState<StepWords | null>(null);
  const [deleting, setDeleting] = useState(false);
  useCommand({ name: "Edit the note", keys: "E", group: "Fault note", run: onEdit });
  return (
    <div className="buttons screen-only">
      <Button keys="E" onPress={onEdit}>
        Edit
      </Button>
      {stepsFrom[note.status].map((one) => (
        <Button key={one.step} kind="quiet" onPress={() => setStep(one)}>
          {one.word}
        </Button>
      ))}
      <Button kind="quiet" onPress={printPage}>
        Print
      </Button>
      <Button kind="quiet" onPress={() => setDeleting(true)}>
        Delete
      </Button>
      {step !== null && <StepDialog key={step.step} note={note} words={step} onClose={() => setStep(null)} />}
      {deleting && <DeleteDialog note={note} onClose={() => setDeleting(false)} />}
    </div>
  );
}

interface StepDialogProps {
  readonly note: FaultNote;
  readonly words: StepWords;
  readonly onClose: () => void;
}

function StepDialog({ note, words, onClose }: StepDialogProps) {
  const reason = useDraft(`${words.step} ${note.id}`, "");
  const write = useWrite(words.step);
  const [asked, setAsked] = useState(false);
  const missing = words.reasonNeeded && reason.value.trim() === "";
  const run = async () => {
    setAsked(true);
    if (missing) return;
    const result = await write.run({ id: note.id, version: note.version, reason: reason.value });
    if (!result.ok) return;
    await reason.drop();
    onClose();
  };
  return (
    <Dialog
      open
      title={words.title}
      onClose={onClose}
      actions={
        <>
          <Button kind="first" pending={write.pending} onPress={() => void run()}>
            {words.word}
          </Button>
          <Button onPress={onClose}>Leave it as it is</Button>
        </>
      }
    >
      <p>{words.says}</p>
      {reason.ready && (
        <TextArea
          label={words.reasonNeeded ? "Why" : "On what grounds"}
          optional={!words.reasonNeeded}
          value={reason.value}
          onChange={reason.set}
          autoFocus
          problem={asked && missing ? "Say why: the next person reads it." : undefined}
        />
      )}
      <ErrorNote error={write.error} />
    </Dialog>
  );
}

function DeleteDialog({ note, onClose }: { readonly note: FaultNote; readonly onClose: () => void }) {
  const write = useWrite("record.delete");
  const run = async () => {
    const result = await write.run({ entity: "fault note", id: note.id, version: note.version });
    if (result.ok) onClose();
  };
  return (
    <Dialog
      open
      role="alertdialog"
      title={`Delete fault note ${note.number}?`}
      onClose={onClose}
      actions={
        <>
          <Button kind="first" pending={write.pending} onPress={() => void run()}>
            Delete
          </Button>
          <Button onPress={onClose}>Keep it</Button>
        </>
      }
    >
      <p>
        It can be restored from this page. A note that proved wrong is better withdrawn: then the next person
        reads why.
      </p>
      <ErrorNote error={write.error} />
    </Dialog>
  );
}
