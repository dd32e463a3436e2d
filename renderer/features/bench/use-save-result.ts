import { type RefObject, useRef, useState } from "react";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import type { TableRow } from "#shared-lib/calculators/table-field.ts";
import { useWrite } from "../../use-write.ts";
import type { BenchPlace } from "./bench-place.ts";
import { unclearFields } from "./entries.ts";
import { concernsLanding } from "./lift-dialog.tsx";
import type { BenchForm } from "./use-bench-form.ts";

type PlainInputs = Record<string, number | string | (string | Record<string, number | string>)[]>;

function plainRow(row: TableRow): Record<string, number | string> {
  const cells: Record<string, number | string> = {};
  for (const [key, cell] of Object.entries(row)) if (cell !== undefined) cells[key] = cell;
  return cells;
}

function plainInputs(input: CalculatorInput): PlainInputs {
  const plain: PlainInputs = {};
  for (const [key, value] of Object.entries(input)) {
    if (typeof value === "number" || typeof value === "string") plain[key] = value;
    else if (value !== undefined)
      plain[key] = value.map((each) => (typeof each === "string" ? each : plainRow(each)));
  }
  return plain;
}

/** The first field that stops the saving gets the keyboard: radio, entry or button, whatever it has. */
function focusField(form: HTMLFormElement | null, key: string | undefined): void {
  const field = key === undefined ? null : form?.querySelector(`[data-field="${CSS.escape(key)}"]`);
  const control = field?.querySelector<HTMLElement>("input, textarea, button");
  control?.focus();
}

export interface SaveResult {
  readonly save: () => void;
  /** Saving was tried and something is missing. */
  readonly asked: boolean;
  /** The field that stopped the last try, until it is edited. */
  readonly stoppedAt: string | null;
  readonly forgetStop: () => void;
  readonly pending: boolean;
  readonly write: ReturnType<typeof useWrite<"calculation.save">>;
  /** When what is on the screen was saved; null once something was changed after. */
  readonly savedAt: string | null;
}

interface SaveRequest {
  readonly calculator: Calculator;
  readonly place: BenchPlace;
  readonly form: BenchForm;
  readonly formRef: RefObject<HTMLFormElement | null>;
  readonly onNoLift: () => void;
}

/** Saves what is on the screen on the lift; said to be saved only after the program answered. */
export function useSaveResult({ calculator, place, form, formRef, onNoLift }: SaveRequest): SaveResult {
  const write = useWrite("calculation.save");
  const [asked, setAsked] = useState(false);
  const [stoppedAt, setStoppedAt] = useState<string | null>(null);
  const busy = useRef(false);
  const save = async (): Promise<void> => {
    if (!form.ready || busy.current) return;
    const [unclear] = unclearFields(calculator, form.entries);
    const stops = unclear ?? form.result.missing[0];
    if (stops !== undefined) {
      setAsked(true);
      setStoppedAt(stops);
      focusField(formRef.current, stops);
      return;
    }
    if (place.lift === null) {
      onNoLift();
      return;
    }
    busy.current = true;
    const saved = form.entries;
    const answer = await write.run({
      calculatorId: calculator.id,
      liftId: place.lift,
      landingId: concernsLanding(calculator) ? place.landing : null,
      inputs: plainInputs(form.input),
    });
    busy.current = false;
    if (!answer.ok) return;
    setAsked(false);
    await form.settle(saved);
  };
  const isChanged = form.draft.keptAt !== null || hasEntries(form.draft.value);
  return {
    save: () => void save(),
    asked,
    stoppedAt,
    forgetStop: () => setStoppedAt(null),
    pending: write.pending,
    write,
    savedAt: isChanged ? null : (write.savedAt ?? null),
  };
}

const hasEntries = (value: unknown): boolean =>
  typeof value === "object" && value !== null && Object.keys(value).length > 0;
