import { useMemo, useRef, useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import type { Result } from "#shared-lib/calculators/result.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { type DraftState, useDraft } from "../../use-draft.ts";
import { useRead } from "../../use-read.ts";
import { type BenchPlace, draftKey } from "./bench-place.ts";
import { type Entries, type Entry, inputOf, readEntries, sameEntries } from "./entries.ts";
import { type FilledIn, filledIn } from "./filled-in.ts";

export interface BenchForm {
  /** False until lift, note and draft have answered: no field is shown before. */
  readonly ready: boolean;
  readonly errors: readonly SillbookError[];
  readonly lift: OutputOf<"lift.find"> | undefined;
  readonly filled: FilledIn;
  readonly entries: Entries;
  readonly input: CalculatorInput;
  readonly result: Result;
  readonly draft: DraftState<unknown>;
  readonly set: (key: string, entry: Entry) => void;
  readonly setAll: (entries: Entries) => void;
  /** After saving these entries: they stay on the screen and their draft goes, unless more was typed meanwhile. */
  readonly settle: (saved: Entries) => Promise<void>;
  /** Forgets everything typed here. */
  readonly startAnew: () => void;
  /** Changes when the form is begun anew, so that the fields begin anew with it. */
  readonly round: number;
}

const noEntries: Entries = {};
const nothingFilled: FilledIn = { input: {}, from: {} };

function useFilledIn(calculator: Calculator, place: BenchPlace) {
  const { lift: liftId, landing: landingId, note: noteId } = place;
  const lift = useRead("lift.find", { id: liftId ?? "" }, { enabled: liftId !== null });
  const known = useRead(
    "calculator.prefill",
    { id: calculator.id, liftId: liftId ?? "", landingId },
    { enabled: liftId !== null, entities: ["lift", "landing", "calculation"] },
  );
  const note = useRead(
    "faultNote.find",
    { id: noteId ?? "" },
    { enabled: noteId !== null, entities: ["faultNote"] },
  );
  const filled = useMemo(() => {
    const link = note.value?.note.calculators.find((one) => one.id === calculator.id);
    return filledIn(calculator, {
      ...(known.value === undefined ? {} : { lift: known.value }),
      ...(link === undefined || note.value === undefined
        ? {}
        : { note: { number: note.value.note.number, preset: link.preset } }),
    });
  }, [calculator, known.value, note.value]);
  const reads = [lift, known, note];
  const errors = reads.flatMap((read) => (read.error === undefined ? [] : [read.error]));
  const answered = (read: (typeof reads)[number]) => read.value !== undefined || read.error !== undefined;
  const ready =
    (liftId === null || (answered(lift) && answered(known))) && (noteId === null || answered(note));
  return { lift: lift.value, filled: ready ? filled : nothingFilled, ready, errors };
}

/** A calculator's form at one lift and landing: filled in, typed over, kept as a draft, computed at every key. */
export function useBenchForm(calculator: Calculator, place: BenchPlace, system: UnitSystem): BenchForm {
  const { lift, filled, ready, errors } = useFilledIn(calculator, place);
  const draft = useDraft<unknown>(draftKey(calculator.id, place), noEntries);
  const [settled, setSettled] = useState(noEntries);
  const [round, setRound] = useState(0);
  const entries = useMemo(
    () => ({ ...settled, ...readEntries(calculator, draft.value) }),
    [calculator, settled, draft.value],
  );
  const input = useMemo(
    () => inputOf(calculator, filled.input, entries),
    [calculator, filled.input, entries],
  );
  const result = useMemo(() => calculator.compute(input, system), [calculator, input, system]);
  const newest = useRef(entries);
  newest.current = entries;

  return {
    ready: ready && draft.ready,
    errors,
    lift,
    filled,
    entries,
    input,
    result,
    draft,
    round,
    set: (key, entry) =>
      draft.set((before: unknown) => ({ ...readEntries(calculator, before), [key]: entry })),
    setAll: (next) => draft.set((before: unknown) => ({ ...readEntries(calculator, before), ...next })),
    settle: async (saved) => {
      setSettled(saved);
      if (sameEntries(newest.current, saved)) await draft.drop();
    },
    startAnew: () => {
      setSettled(noEntries);
      setRound((before) => before + 1);
      void draft.drop();
    },
  };
}
