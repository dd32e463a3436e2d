import type { Landing, Signal } from "#shared-lib/contract/lift.ts";
import { signalRoles } from "#shared-lib/words.ts";
import { Button } from "../../ui/button.tsx";
import { Choice } from "../../ui/choice.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { SelectField } from "../../ui/select-field.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import { emptyProblem, fieldProblemOf } from "../bridges/entry-parts.ts";
import { LandingChoice } from "../bridges/landing-parts.tsx";

interface SignalDialogProps {
  readonly liftId: string;
  readonly landings: readonly Landing[];
  /** null: a new one. */
  readonly signal: Signal | null;
  readonly onClose: () => void;
}

interface SignalDraft {
  readonly version: number;
  readonly name: string;
  readonly role: Signal["role"] | null;
  readonly marking: string;
  readonly activeLevel: Signal["activeLevel"];
  readonly landingId: string | null;
  readonly tried: boolean;
}

function startOf(signal: Signal | null): SignalDraft {
  return {
    version: signal?.version ?? 0,
    name: signal?.name ?? "",
    role: signal?.role ?? null,
    marking: signal?.marking ?? "",
    activeLevel: signal?.activeLevel ?? "high",
    landingId: signal?.landingId ?? null,
    tried: false,
  };
}

function useSaveSignal(liftId: string, signal: Signal | null) {
  const add = useWrite("signal.add");
  const change = useWrite("signal.change");
  const run = async (draft: SignalDraft, version: number): Promise<boolean> => {
    const { name, role, marking, activeLevel, landingId } = draft;
    if (role === null) return false;
    const fields = { name, role, marking, activeLevel, landingId };
    const result =
      signal === null
        ? await add.run({ liftId, ...fields })
        : await change.run({ id: signal.id, version, fields });
    return result.ok;
  };
  return { run, error: add.error ?? change.error, pending: add.pending || change.pending };
}

export function SignalDialog({ liftId, landings, signal, onClose }: SignalDialogProps) {
  const draft = useDraft<SignalDraft>(`signal ${signal?.id ?? `new ${liftId}`}`, startOf(signal));
  const write = useSaveSignal(liftId, signal);
  const { name, role, marking, activeLevel, landingId, tried, version } = draft.value;
  const change = (part: Partial<SignalDraft>) => draft.set((before) => ({ ...before, ...part }));
  const nameProblem = emptyProblem(name, "Name the signal as people here call it.");
  const save = async (atVersion: number) => {
    change({ tried: true });
    if (nameProblem !== undefined || role === null) return;
    if (!(await write.run(draft.value, atVersion))) return;
    await draft.drop();
    onClose();
  };
  const isConflict = write.error?.code === "version-conflict" && signal !== null;
  return (
    <Dialog
      title={signal === null ? "Add a signal" : `Signal ${signal.name}`}
      open
      onClose={onClose}
      actions={
        <>
          <Button kind="first" onPress={() => void save(version)} pending={write.pending}>
            Save
          </Button>
          <Button onPress={onClose}>Not now</Button>
        </>
      }
    >
      <div className="fields-two">
        <TextField
          label="Name"
          value={name}
          onChange={(next) => change({ name: next })}
          problem={(tried ? nameProblem : undefined) ?? fieldProblemOf(write.error, "name")}
        />
        <SelectField
          label="Role"
          options={signalRoles.map((id) => ({ id, words: id }))}
          value={role}
          onChange={(next) => change({ role: next })}
          problem={tried && role === null ? "Choose the role." : undefined}
        />
        <TextField
          label="Terminal marking"
          hint="as on the site’s drawing"
          marking
          value={marking}
          onChange={(next) => change({ marking: next })}
        />
        <LandingChoice
          label="Landing"
          landings={landings}
          value={landingId}
          onChange={(next) => change({ landingId: next })}
        />
      </div>
      <Choice
        label="On when the terminal is"
        options={[
          { id: "high", words: "high" },
          { id: "low", words: "low (active low)" },
        ]}
        value={activeLevel}
        onChange={(next) => change({ activeLevel: next })}
      />
      <ErrorNote error={write.error} />
      {isConflict && (
        <div className="stack">
          <p>
            Saved meanwhile: {signal.name}, {signal.role},{" "}
            <span className="marking">{signal.marking || "no marking"}</span>, on when {signal.activeLevel}.
          </p>
          <div className="buttons">
            <Button onPress={() => void save(signal.version)}>Save yours as the newest</Button>
            <Button onPress={() => draft.set(startOf(signal))}>Go on from the saved one</Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
