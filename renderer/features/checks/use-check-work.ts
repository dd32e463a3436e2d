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
  entry: StepEntry | undefined,
  sent: StepEntry,
  settled: readonly (keyof StepEntry)[],
): StepEntry | undefined {
  const left = Object.entries(entry ?? nothingEntered).filter(
    ([name, value]) => !settled.includes(name as keyof StepEntry) || value !== sent[name as keyof StepEntry],
  );
  return left.length === 0 ? undefined : Object.fromEntries(left);
}

/** What is entered while a check is carried out: kept as a draft until each step is acknowledged on disk. */
export function useCheckWork(checkId: string, read: readonly CheckStep[]): CheckWork {
  const draft = useDraft<Entries>(`check/${checkId}`, noEntries);
  const newest = useRef<Entries>(noEntries);
  newest.current = draft.value;
  const { run, pending, savedAt } = useWrite("check.recordStep");
  const [errors, setErrors] = useState<Readonly<Record<string, SillbookError | undefined>>>({});
  const [recorded, setRecorded] = useState<Readonly<Record<string, Recorded>>>({});
  // Read by writes that follow at once, before anything is shown anew.
  const acknowledged = useRef<Readonly<Record<string, Recorded>>>({});
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was read anew holds what was acknowledged.
  useEffect(() => {
    setRecorded({});
    acknowledged.current = {};
  }, [read]);
  const steps = read.map((step) => ({ ...step, ...recorded[step.key] }));
  /** As last acknowledged, which may be newer than what is shown. */
  const newestOf = (step: CheckStep): CheckStep => ({ ...step, ...acknowledged.current[step.key] });
  const newestRead = useRef(read);
  newestRead.current = read;

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
  const change = (stepKey: string, part: StepEntry) =>
    replace(stepKey, { ...newest.current[stepKey], ...part });

  const send = async (
    step: CheckStep,
    found: Found,
    settled: readonly (keyof StepEntry)[],
  ): Promise<boolean> => {
    const sent = newest.current[step.key] ?? nothingEntered;
    const note = (sent.note ?? newestOf(step).note).trim();
    setErrors((before) => ({ ...before, [step.key]: undefined }));
    const result = await run({ checkId, stepKey: step.key, found, note });
    if (!result.ok) {
      setErrors((before) => ({ ...before, [step.key]: result.error }));
      return false;
    }
    const { verdict, sentence } = result.value;
    acknowledged.current = { ...acknowledged.current, [step.key]: { found, verdict, sentence, note } };
    setRecorded(acknowledged.current);
    replace(step.key, restOf(newest.current[step.key], sent, settled));
    return true;
  };
  const inTurn = useInTurn();
  const record = (step: CheckStep, found: Found): Promise<boolean> => {
    change(step.key, { found });
    return inTurn(() => send(step, found, ["found", "order", "value", "note"]));
  };
  const recordNote = (step: CheckStep): Promise<boolean> =>
    inTurn(async () => {
      const now = newestOf(newestRead.current.find(({ key }) => key === step.key) ?? step);
      const entry = newest.current[step.key] ?? nothingEntered;
      const { note, found } = entry;
      if (note === undefined) return true;
      if (note.trim() === now.note) {
        replace(step.key, restOf(entry, entry, ["note"]));
        return true;
      }
      return send(now, found ?? now.found ?? { kind: "not checked" }, ["found", "note"]);
    });
  return {
    ready: draft.ready,
    steps,
    entryOf: (stepKey) => draft.value[stepKey] ?? nothingEntered,
    errorOf: (stepKey) => errors[stepKey],
    unrecorded: steps.filter(({ key }) => isAnswered(draft.value[key] ?? nothingEntered)),
    pending,
    savedAt,
    keptAt: draft.keptAt,
    change,
    record,
    recordNote,
    recordAllNotes: async () => {
      const kept = await Promise.all(newestRead.current.map(recordNote));
      return kept.every(Boolean);
    },
    forget: drop,
  };
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
