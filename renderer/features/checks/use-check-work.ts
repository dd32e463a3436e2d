import { useCallback, useEffect, useRef, useState } from "react";
import type { Found, StepVerdict } from "#shared-lib/contract/check.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { useDraft } from "../../use-draft.ts";
import { useWrite } from "../../use-write.ts";
import type { CheckStep } from "./check-types.ts";

/** What was chosen or typed at a step and is not recorded yet. */
export interface StepEntry {
  /** Chosen and sent, not yet acknowledged or refused. */
  readonly found?: Found;
  readonly order?: readonly string[];
  readonly value?: string;
  readonly note?: string;
}

type Entries = Readonly<Record<string, StepEntry>>;

interface Recorded {
  readonly found: Found;
  readonly verdict: StepVerdict;
  readonly sentence: string;
  readonly note: string;
}

export interface CheckWork {
  readonly ready: boolean;
  /** The steps, with what was acknowledged since they were read. */
  readonly steps: readonly CheckStep[];
  readonly entryOf: (stepKey: string) => StepEntry;
  readonly errorOf: (stepKey: string) => SillbookError | undefined;
  /** Steps with an answer that is not recorded. A note alone is recorded when its step is left. */
  readonly unrecorded: readonly CheckStep[];
  readonly pending: boolean;
  readonly savedAt: string | undefined;
  readonly keptAt: string | null;
  readonly change: (stepKey: string, part: StepEntry) => void;
  /** Records what was found; what was chosen stays until the program acknowledged it. */
  readonly record: (step: CheckStep, found: Found) => Promise<boolean>;
  /** Records a changed note with what stands recorded at its step. True when nothing is left to record. */
  readonly recordNote: (step: CheckStep) => Promise<boolean>;
  readonly recordAllNotes: () => Promise<boolean>;
  readonly forget: () => Promise<void>;
}

const nothingEntered: StepEntry = {};
const noEntries: Entries = {};

const isAnswered = ({ found, order, value }: StepEntry): boolean =>
  found !== undefined || order !== undefined || (value !== undefined && value.trim() !== "");

/** What is left of an entry once parts of it are recorded: what was changed while they were on their way stays. */
function restOf(
  entry: StepEntry,
  sent: StepEntry,
  settled: readonly (keyof StepEntry)[],
): StepEntry | undefined {
  const left = Object.entries(entry).filter(
    ([name, value]) => !settled.includes(name as keyof StepEntry) || value !== sent[name as keyof StepEntry],
  );
  return left.length === 0 ? undefined : Object.fromEntries(left);
}

/** What is entered while a check is carried out: kept as a draft until each step is acknowledged on disk. */
export function useCheckWork(checkId: string, read: readonly CheckStep[]): CheckWork {
  const entries = useEntries(checkId);
  const acknowledged = useAcknowledged(read);
  const { send, pending, savedAt, errorOf } = useSendStep(checkId, entries, acknowledged);
  const inTurn = useInTurn();
  const record = (step: CheckStep, found: Found): Promise<boolean> => {
    entries.change(step.key, { found });
    return inTurn(() => send(step, found, ["found", "order", "value", "note"]));
  };
  const recordNote = (step: CheckStep): Promise<boolean> =>
    inTurn(async () => {
      const now = acknowledged.newestOf(step);
      const entry = entries.newestOf(step.key);
      const { note, found } = entry;
      if (note === undefined) return true;
      if (note.trim() === now.note) {
        entries.replace(step.key, restOf(entry, entry, ["note"]));
        return true;
      }
      return send(now, found ?? now.found ?? { kind: "not checked" }, ["found", "note"]);
    });
  const { steps } = acknowledged;
  return {
    ready: entries.ready,
    steps,
    entryOf: entries.shown,
    errorOf,
    unrecorded: steps.filter(({ key }) => isAnswered(entries.shown(key))),
    pending,
    savedAt,
    keptAt: entries.keptAt,
    change: entries.change,
    record,
    recordNote,
    recordAllNotes: async () => {
      const kept = await Promise.all(steps.map(recordNote));
      return kept.every(Boolean);
    },
    forget: entries.forget,
  };
}

/** The draft of a check: what was chosen or typed at each step and is not recorded yet. */
function useEntries(checkId: string) {
  const draft = useDraft<Entries>(`check/${checkId}`, noEntries);
  const newest = useRef<Entries>(noEntries);
  newest.current = draft.value;
  const { set, drop } = draft;
  const replace = useCallback(
    (stepKey: string, entry: StepEntry | undefined) => {
      const { [stepKey]: _former, ...others } = newest.current;
      const next = entry === undefined ? others : { ...others, [stepKey]: entry };
      newest.current = next;
      if (Object.keys(next).length === 0) void drop();
      else set(next);
    },
    [set, drop],
  );
  return {
    ready: draft.ready,
    keptAt: draft.keptAt,
    shown: (stepKey: string): StepEntry => draft.value[stepKey] ?? nothingEntered,
    newestOf: (stepKey: string): StepEntry => newest.current[stepKey] ?? nothingEntered,
    replace,
    change: (stepKey: string, part: StepEntry) => replace(stepKey, { ...newest.current[stepKey], ...part }),
    forget: drop,
  };
}

/** The steps as read, with what was acknowledged since: the verdict stands there at once. */
function useAcknowledged(read: readonly CheckStep[]) {
  const [shown, setShown] = useState<Readonly<Record<string, Recorded>>>({});
  // Read by writes that follow at once, before anything is shown anew.
  const newest = useRef<Readonly<Record<string, Recorded>>>({});
  const newestRead = useRef(read);
  newestRead.current = read;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was read anew holds what was acknowledged.
  useEffect(() => {
    setShown({});
    newest.current = {};
  }, [read]);
  return {
    steps: read.map((step) => ({ ...step, ...shown[step.key] })),
    newestOf: (step: CheckStep): CheckStep => ({
      ...(newestRead.current.find(({ key }) => key === step.key) ?? step),
      ...newest.current[step.key],
    }),
    add: (stepKey: string, recorded: Recorded) => {
      newest.current = { ...newest.current, [stepKey]: recorded };
      setShown(newest.current);
    },
  };
}

/** One write of what was found at a step; a refusal is kept beside its step, and so is what was chosen. */
function useSendStep(
  checkId: string,
  entries: ReturnType<typeof useEntries>,
  acknowledged: ReturnType<typeof useAcknowledged>,
) {
  const { run, pending, savedAt } = useWrite("check.recordStep");
  const [errors, setErrors] = useState<Readonly<Record<string, SillbookError | undefined>>>({});
  const send = async (
    step: CheckStep,
    found: Found,
    settled: readonly (keyof StepEntry)[],
  ): Promise<boolean> => {
    const sent = entries.newestOf(step.key);
    const note = (sent.note ?? acknowledged.newestOf(step).note).trim();
    setErrors((before) => ({ ...before, [step.key]: undefined }));
    const result = await run({ checkId, stepKey: step.key, found, note });
    if (!result.ok) {
      setErrors((before) => ({ ...before, [step.key]: result.error }));
      return false;
    }
    const { verdict, sentence } = result.value;
    acknowledged.add(step.key, { found, verdict, sentence, note });
    entries.replace(step.key, restOf(entries.newestOf(step.key), sent, settled));
    return true;
  };
  return { send, pending, savedAt, errorOf: (stepKey: string) => errors[stepKey] };
}

/** Runs writes one after the other: of two findings at one step the later press counts, whatever the wire does. */
function useInTurn(): (write: () => Promise<boolean>) => Promise<boolean> {
  const last = useRef<Promise<unknown>>(Promise.resolve());
  return useCallback((write) => {
    const next = last.current.then(write, write);
    last.current = next;
    return next;
  }, []);
}
