import type { Danger } from "#shared-lib/contract/bridge.ts";
import { Button } from "../../ui/button.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { TextArea } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { DangerCaution } from "./bridge-cautions.tsx";
import { emptyProblem, fieldProblemOf, readMomentEntry } from "./entry-parts.ts";
import { PersonChoice } from "./person-parts.tsx";

interface RecordDangerProps {
  readonly liftId: string;
  readonly open: boolean;
  readonly onClose: () => void;
}

const startRecord = { words: "", at: "", tried: false };

export function RecordDangerDialog({ liftId, open, onClose }: RecordDangerProps) {
  const draft = useDraft(`danger.record ${liftId}`, startRecord);
  const write = useWrite("danger.record");
  const { words, at, tried } = draft.value;
  const change = (part: Partial<typeof startRecord>) => draft.set((before) => ({ ...before, ...part }));
  const moment = readMomentEntry(at, new Date());
  const wordsProblem = emptyProblem(words, "Say where and how it was found.");
  const save = async () => {
    change({ tried: true });
    if (wordsProblem !== undefined || !moment.ok) return;
    const foundAt = moment.at === undefined ? {} : { foundAt: moment.at };
    const result = await write.run({ liftId, words, ...foundAt });
    if (!result.ok) return;
    await draft.drop();
    onClose();
  };
  return (
    <Dialog
      title="Car door and landing door found bridged together"
      open={open}
      onClose={onClose}
      actions={
        <>
          <Button kind="act" onPress={() => void save()} pending={write.pending}>
            Record the danger
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      <DangerCaution />
      <TextArea
        label="Where and how it was found"
        value={words}
        onChange={(next) => change({ words: next })}
        problem={(tried ? wordsProblem : undefined) ?? fieldProblemOf(write.error, "words")}
      />
      <DateTimeField
        label="When"
        hint="empty: now"
        value={at}
        onChange={(next) => change({ at: next })}
        problem={tried && !moment.ok ? moment.problem : fieldProblemOf(write.error, "foundAt")}
      />
      <p className="soft">The lift goes out of service, and every further step waits until it is cleared.</p>
      <ErrorNote error={write.error} />
    </Dialog>
  );
}

interface ClearDangerProps {
  readonly danger: Danger;
  readonly open: boolean;
  readonly onClose: () => void;
}

const startClear = { personId: null as string | null, how: "", at: "", tried: false };

export function ClearDangerDialog({ danger, open, onClose }: ClearDangerProps) {
  const draft = useDraft(`danger.clear ${danger.id}`, startClear);
  const write = useWrite("danger.clear");
  const { personId, how, at, tried } = draft.value;
  const change = (part: Partial<typeof startClear>) => draft.set((before) => ({ ...before, ...part }));
  const moment = readMomentEntry(at, new Date());
  const howProblem = emptyProblem(how, "Say how it was cleared.");
  const save = async () => {
    change({ tried: true });
    if (personId === null || howProblem !== undefined || !moment.ok) return;
    const clearedAt = moment.at === undefined ? {} : { clearedAt: moment.at };
    const { id, version } = danger;
    const result = await write.run({ id, version, how, clearedBy: personId, ...clearedAt });
    if (!result.ok) return;
    await draft.drop();
    onClose();
  };
  return (
    <Dialog
      title="The danger is cleared"
      open={open}
      onClose={onClose}
      actions={
        <>
          <Button kind="act" onPress={() => void save()} pending={write.pending}>
            Record how it was cleared
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      <DangerCaution />
      <TextArea
        label="How it was cleared, and how that was proved"
        value={how}
        onChange={(next) => change({ how: next })}
        problem={(tried ? howProblem : undefined) ?? fieldProblemOf(write.error, "how")}
      />
      <div className="fields-two">
        <PersonChoice
          label="Cleared by"
          value={personId}
          onChange={(next) => change({ personId: next })}
          problem={tried && personId === null ? "Name a person." : fieldProblemOf(write.error, "clearedBy")}
        />
        <DateTimeField
          label="When"
          hint="empty: now"
          value={at}
          onChange={(next) => change({ at: next })}
          problem={tried && !moment.ok ? moment.problem : fieldProblemOf(write.error, "clearedAt")}
        />
      </div>
      <p className="soft">The lift stays out of service until its state is recorded anew.</p>
      <ErrorNote error={write.error} />
    </Dialog>
  );
}
