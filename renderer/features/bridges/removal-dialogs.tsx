import type { Bridge } from "#shared-lib/contract/bridge.ts";
import { Button } from "../../ui/button.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { TextArea } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useProgram } from "../../use-program.ts";
import { useWrite } from "../../use-write.ts";
import { RemoveBridgeCaution } from "./bridge-cautions.tsx";
import { bridgeAcross } from "./bridge-parts.ts";
import { emptyProblem, fieldProblemOf, readMomentEntry } from "./entry-parts.ts";
import { PersonChoice } from "./person-parts.tsx";

interface RemovalDialogProps {
  readonly bridge: Bridge;
  readonly open: boolean;
  readonly onClose: () => void;
}

interface WhoWhenWords {
  readonly personId: string | null;
  readonly at: string;
  readonly words: string;
  readonly tried: boolean;
}

function useWhoWhenWords(key: string, startPerson: string | null) {
  const draft = useDraft<WhoWhenWords>(key, { personId: startPerson, at: "", words: "", tried: false });
  const moment = readMomentEntry(draft.value.at, new Date());
  const change = (part: Partial<WhoWhenWords>) => draft.set((before) => ({ ...before, ...part }));
  const { personId, words, tried } = draft.value;
  return {
    draft,
    change,
    moment,
    personProblem: tried && personId === null ? "Name a person." : undefined,
    momentProblem: tried && !moment.ok ? moment.problem : undefined,
    personId,
    words,
    tried,
  };
}

function BridgeWords({ bridge }: { readonly bridge: Bridge }) {
  return (
    <p>
      Bridge <b>{bridge.number}</b> across {bridgeAcross(bridge)},{" "}
      <span className="marking">{bridge.points}</span>
      {bridge.leadNumber !== "" && (
        <>
          , lead <span className="marking">{bridge.leadNumber}</span>
        </>
      )}
      .
    </p>
  );
}

export function RecordRemovalDialog({ bridge, open, onClose }: RemovalDialogProps) {
  const { person } = useProgram();
  const form = useWhoWhenWords(`bridge.recordRemoval ${bridge.id}`, person?.id ?? null);
  const write = useWrite("bridge.recordRemoval");
  const save = async () => {
    form.change({ tried: true });
    if (form.personId === null || !form.moment.ok) return;
    const { id, version } = bridge;
    const at = form.moment.at === undefined ? {} : { removedAt: form.moment.at };
    const result = await write.run({ id, version, removedBy: form.personId, note: form.words, ...at });
    if (!result.ok) return;
    await form.draft.drop();
    onClose();
  };
  return (
    <Dialog
      title={`Bridge ${bridge.number}: it was taken out`}
      open={open}
      onClose={onClose}
      actions={
        <>
          <Button kind="act" onPress={() => void save()} pending={write.pending}>
            Record removal
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      <BridgeWords bridge={bridge} />
      <RemoveBridgeCaution />
      <div className="fields-two">
        <PersonChoice
          label="Taken out by"
          value={form.personId}
          onChange={(personId) => form.change({ personId })}
          problem={form.personProblem ?? fieldProblemOf(write.error, "removedBy")}
        />
        <DateTimeField
          label="When"
          hint="empty: now"
          value={form.draft.value.at}
          onChange={(at) => form.change({ at })}
          problem={form.momentProblem ?? fieldProblemOf(write.error, "removedAt")}
        />
      </div>
      <TextArea
        label="Note"
        optional
        value={form.words}
        onChange={(words) => form.change({ words })}
        problem={fieldProblemOf(write.error, "note")}
      />
      <p className="soft">The bridge counts as open until a second check confirms the removal.</p>
      <ErrorNote error={write.error} />
    </Dialog>
  );
}

export function ConfirmRemovalDialog({ bridge, open, onClose }: RemovalDialogProps) {
  const form = useWhoWhenWords(`bridge.confirmRemoval ${bridge.id}`, null);
  const write = useWrite("bridge.confirmRemoval");
  const proofProblem = emptyProblem(form.words, "Say what proves that the contact works again.");
  const save = async () => {
    form.change({ tried: true });
    if (form.personId === null || !form.moment.ok || proofProblem !== undefined) return;
    const { id, version } = bridge;
    const at = form.moment.at === undefined ? {} : { checkedAt: form.moment.at };
    const result = await write.run({ id, version, checkedBy: form.personId, proof: form.words, ...at });
    if (!result.ok) return;
    await form.draft.drop();
    onClose();
  };
  return (
    <Dialog
      title={`Bridge ${bridge.number}: second check`}
      open={open}
      onClose={onClose}
      actions={
        <>
          <Button kind="act" onPress={() => void save()} pending={write.pending}>
            Confirm removal
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      <BridgeWords bridge={bridge} />
      <RemoveBridgeCaution />
      <div className="fields-two">
        <PersonChoice
          label="Looked at the place"
          hint="best another person"
          value={form.personId}
          onChange={(personId) => form.change({ personId })}
          problem={form.personProblem ?? fieldProblemOf(write.error, "checkedBy")}
        />
        <DateTimeField
          label="When"
          hint="empty: now"
          value={form.draft.value.at}
          onChange={(at) => form.change({ at })}
          problem={form.momentProblem ?? fieldProblemOf(write.error, "checkedAt")}
        />
      </div>
      <TextArea
        label="What proves that the contact works again"
        hint="as in: contact opened by hand, the lift stopped"
        value={form.words}
        onChange={(words) => form.change({ words })}
        problem={(form.tried ? proofProblem : undefined) ?? fieldProblemOf(write.error, "proof")}
      />
      <ErrorNote error={write.error} />
    </Dialog>
  );
}
