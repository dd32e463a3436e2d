import { useState } from "react";
import type { CalloutEvent } from "#shared-lib/contract/callout.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useWrite } from "../../use-write.ts";
import { fieldProblem } from "./field-problem.ts";
import { StepDialog } from "./step-dialog.tsx";
import { useTimeEntry } from "./time-entry.ts";

interface CorrectEventDialogProps {
  readonly event: CalloutEvent;
  readonly onClose: () => void;
}

type Way = "time" | "back";

/** Another time for an event, or taking back one that did not happen. The old line stays, struck through. */
export function CorrectEventDialog({ event, onClose }: CorrectEventDialogProps) {
  const [way, setWay] = useState<Way>("time");
  const [words, setWords] = useState("");
  const [asked, setAsked] = useState(false);
  const time = useTimeEntry(formatDayAndTime(event.at));
  const correct = useWrite("callout.correctEvent");
  const withdraw = useWrite("callout.withdrawEvent");
  const mayGo = event.kind !== "received" && event.kind !== "closed";
  const save = async () => {
    setAsked(true);
    if (way === "time") {
      if (time.at === undefined) return;
      const result = await correct.run({ eventId: event.id, at: time.at, note: words });
      if (result.ok) onClose();
      return;
    }
    if (words.trim() === "") return;
    const result = await withdraw.run({ eventId: event.id, reason: words });
    if (result.ok) onClose();
  };
  const needsReason = way === "back" && asked && words.trim() === "";
  return (
    <StepDialog
      title={`Correct: ${event.kind}`}
      saveWord={way === "time" ? "Correct the time" : "Take it back"}
      onClose={onClose}
      onSave={save}
      pending={correct.pending || withdraw.pending}
      error={way === "time" ? correct.error : withdraw.error}
    >
      {mayGo && (
        <Choice<Way>
          label="What is wrong"
          options={[
            { id: "time", words: "The time" },
            { id: "back", words: "It did not happen" },
          ]}
          value={way}
          onChange={setWay}
        />
      )}
      {way === "time" && (
        <DateTimeField
          label="When it happened"
          value={time.text}
          onChange={time.set}
          problem={fieldProblem(correct.error, "at") ?? (asked ? time.problem : undefined)}
        />
      )}
      <TextField
        label={way === "time" ? "Note" : "Why it is taken back"}
        optional={way === "time"}
        value={words}
        onChange={setWords}
        problem={needsReason ? "Say why. The old line stays visible with this reason." : undefined}
      />
    </StepDialog>
  );
}
