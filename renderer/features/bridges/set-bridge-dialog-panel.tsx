import type { Landing } from "#shared-lib/contract/lift.ts";
import { bridgeControls, chainContacts } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { DateTimeField } from "../../ui/date-time-field.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { SetBridgeCaution } from "./bridge-cautions.tsx";
import { fieldProblemOf } from "./entry-parts.ts";
import { LandingChoice } from "./landing-parts.tsx";
import { OtherDoorBridged } from "./other-door-bridged.tsx";
import { readSetBridge, type SetBridgeDraft, startSetBridge } from "./set-bridge-draft.ts";

interface SetBridgeDialogProps {
  readonly liftId: string;
  readonly landings: readonly Landing[];
  readonly open: boolean;
  readonly onClose: () => void;
  /** Closes this and opens the entry of doors found bridged. */
  readonly onDanger: () => void;
}

/** Car and landing door together is no choice here: each entry names one contact. */
export function SetBridgeDialog({ liftId, landings, open, onClose, onDanger }: SetBridgeDialogProps) {
  const draft = useDraft<SetBridgeDraft>(`bridge.set ${liftId}`, startSetBridge);
  const write = useWrite("bridge.set");
  const reading = readSetBridge(draft.value, new Date());
  const problems = draft.value.tried ? reading.problems : {};
  const change = (part: Partial<SetBridgeDraft>) => draft.set((before) => ({ ...before, ...part }));
  const save = async () => {
    change({ tried: true });
    if (reading.input === null) return;
    const result = await write.run({ liftId, ...reading.input });
    if (!result.ok) return;
    await draft.drop();
    onClose();
  };
  return (
    <Dialog
      title="Enter a bridge in the register"
      open={open}
      onClose={onClose}
      wide
      actions={
        <>
          <Button kind="first" onPress={() => void save()} pending={write.pending}>
            Enter it, then set it
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      <SetBridgeCaution />
      <OtherDoorBridged liftId={liftId} contact={draft.value.contact} onDanger={onDanger} />
      {draft.ready && (
        <SetBridgeFields
          value={draft.value}
          change={change}
          landings={landings}
          problems={problems}
          refused={(path) => fieldProblemOf(write.error, path)}
        />
      )}
      <p className="soft">The lift goes out of service in the same step.</p>
      <ErrorNote error={write.error} />
    </Dialog>
  );
}

interface FieldsProps {
  readonly value: SetBridgeDraft;
  readonly change: (part: Partial<SetBridgeDraft>) => void;
  readonly landings: readonly Landing[];
  readonly problems: Readonly<Record<string, string | undefined>>;
  readonly refused: (path: string) => string | undefined;
}

function SetBridgeFields({ value, change, landings, problems, refused }: FieldsProps) {
  const problem = (path: string) => problems[path] ?? refused(path);
  return (
    <>
      <div className="fields-two">
        <SelectField
          label="Across which contact"
          options={chainContacts.map((id) => ({ id, words: id }))}
          value={value.contact}
          onChange={(contact) => change({ contact })}
          problem={problem("contact")}
        />
        <LandingChoice
          label="Landing"
          landings={landings}
          value={value.landingId}
          onChange={(landingId) => change({ landingId })}
          problem={problem("landingId")}
        />
        <TextField
          label="Between which points"
          hint="as on the site’s drawing"
          marking
          value={value.points}
          onChange={(points) => change({ points })}
          problem={problem("points")}
        />
        <TextField
          label="Number on the lead"
          marking
          value={value.leadNumber}
          onChange={(leadNumber) => change({ leadNumber })}
          problem={problem("leadNumber")}
        />
      </div>
      <TextField
        label="Why"
        value={value.reason}
        onChange={(reason) => change({ reason })}
        problem={problem("reason")}
      />
      <div className="fields-two">
        <Choice
          label="The lift is under"
          options={bridgeControls.map((id) => ({ id, words: `${id} control` }))}
          value={value.control}
          onChange={(control) => change({ control })}
          problem={problem("control")}
        />
        <DateTimeField
          label="When"
          hint="empty: now"
          value={value.at}
          onChange={(at) => change({ at })}
          problem={problem("setAt")}
        />
      </div>
    </>
  );
}
