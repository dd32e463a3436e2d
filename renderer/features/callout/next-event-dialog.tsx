import { type FormEvent, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { Button } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";
import { markOfEvent, type RecordableEvent, recordableEvents } from "./event-parts.ts";
import { fieldProblem } from "./field-problem.ts";
import { PeopleList, peopleToSend } from "./people-list.tsx";
import { PersonField } from "./person-field.tsx";
import { useTimeEntry } from "./time-entry.ts";
import { Refused } from "./way-out.tsx";

interface NextEventDialogProps {
  readonly line: CalloutLine;
  readonly onClose: () => void;
  /** The callout can be closed next: opens its endings. */
  readonly onEnd: () => void;
  /** True on the callout's own page, where the way out of a refusal stands already. */
  readonly onItsPage?: boolean;
}

/** Proposes the next event with the time now; both can be changed before it is recorded. */
export function NextEventDialog({ line, onClose, onEnd, onItsPage = false }: NextEventDialogProps) {
  const entry = useEventEntry(line, onClose);
  const { kind, choices } = entry;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void entry.record();
  };
  return (
    <Dialog title={`${line.number} · ${line.liftTitle}`} open onClose={onClose}>
      <form className="stack" onSubmit={submit} noValidate>
        <Choice
          label="What happened"
          options={choices.map((one) => ({ id: one, words: one, mark: markOfEvent(one) }))}
          value={kind}
          onChange={entry.setKind}
        />
        <EventPeople entry={entry} />
        <div className="fields-two">
          <DateTimeField
            label="When"
            value={entry.time.text}
            onChange={entry.time.set}
            problem={entry.problemOf("at") ?? entry.timeProblem}
          />
          <TextField label="Note" optional value={entry.note} onChange={entry.setNote} />
        </div>
        <Refused error={entry.error} {...(onItsPage ? {} : { calloutId: line.id })} />
        <div className="dialog-actions">
          <Button
            kind="first"
            type="submit"
            keys="Enter"
            pending={entry.pending}
            autoFocus={kind !== "passed on"}
          >
            Record {kind}
          </Button>
          <Button onPress={onEnd}>End this callout</Button>
          <Button kind="quiet" onPress={onClose}>
            Cancel
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

type EventEntry = ReturnType<typeof useEventEntry>;

function useEventEntry(line: CalloutLine, onClose: () => void) {
  const { people } = useProgram();
  const choices = recordableEvents(line);
  const [kind, setKind] = useState<RecordableEvent>(
    choices.find((one) => one === line.next) ?? choices.at(-1) ?? "passed on",
  );
  const sendable = peopleToSend(people);
  const [to, setTo] = useState<string | null>(line.engineer?.id ?? sendable[0]?.id ?? null);
  const [comparedBy, setComparedBy] = useState<string | null>(null);
  const [note, setNote] = useState("");
  const [asked, setAsked] = useState(false);
  const time = useTimeEntry();
  const write = useWrite("callout.recordEvent");
  const record = async (toWhom: string | null = to) => {
    setAsked(true);
    if (time.problem !== undefined) return;
    if (kind === "back in service" && comparedBy === null) return;
    const result = await write.run({
      id: line.id,
      kind,
      ...(time.at === undefined ? {} : { at: time.at }),
      to: kind === "passed on" || kind === "arrived" ? toWhom : null,
      note,
      registerComparedBy: kind === "back in service" ? comparedBy : null,
    });
    if (result.ok) onClose();
  };
  // What was refused is about the old entry: once it is changed, the refusal is past.
  const changing =
    <Value,>(set: (value: Value) => void) =>
    (value: Value) => {
      write.clearError();
      set(value);
    };
  return {
    ...{
      choices,
      kind,
      setKind: changing(setKind),
      sendable,
      people,
      to,
      setTo,
      comparedBy,
      setComparedBy,
      note,
      setNote,
      time: { ...time, set: changing(time.set) },
    },
    ...{ asked, record, pending: write.pending, error: write.error },
    timeProblem: asked ? time.problem : undefined,
    problemOf: (path: string) => fieldProblem(write.error, path),
  };
}

function EventPeople({ entry }: { readonly entry: EventEntry }) {
  const { kind, asked, comparedBy } = entry;
  if (kind === "passed on") {
    return (
      <PeopleList
        label="To whom"
        people={entry.sendable}
        value={entry.to}
        onChange={entry.setTo}
        onEnter={(id) => void entry.record(id)}
        problem={entry.problemOf("to")}
        autoFocus
      />
    );
  }
  if (kind === "arrived") {
    return (
      <PersonField label="Who is on site" people={entry.people} value={entry.to} onChange={entry.setTo} />
    );
  }
  if (kind !== "back in service") return null;
  return (
    <>
      <Caution>
        No bridge may be left in. Compare the bridge register with the shaft, contact by contact, before the
        lift runs for anybody.
      </Caution>
      <PersonField
        label="Who compared the bridge register with the shaft"
        people={entry.people}
        value={comparedBy}
        onChange={entry.setComparedBy}
        problem={
          asked && comparedBy === null
            ? "Name the person who compared it. Without that the lift stays out of service."
            : undefined
        }
      />
    </>
  );
}
