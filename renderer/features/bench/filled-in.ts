import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { prefill } from "#shared-lib/calculators/prefill.ts";

export interface FilledIn {
  readonly input: CalculatorInput;
  /** By field key, in words: "from the lift". */
  readonly from: Readonly<Record<string, string>>;
}

interface Sources {
  readonly lift?: { readonly inputs: Readonly<Record<string, unknown>>; readonly from: FilledIn["from"] };
  readonly note?: { readonly number: string; readonly preset: Readonly<Record<string, unknown>> };
}

/** What lift and saved results fill in, and over it what the fault note presets: the note says what is in question. */
export function filledIn(calculator: Calculator, { lift, note }: Sources): FilledIn {
  const known = prefill(calculator, {}, lift?.inputs ?? {}).input;
  const preset = prefill(calculator, {}, note?.preset ?? {}).input;
  const from: Record<string, string> = {};
  for (const key of Object.keys(known)) from[key] = lift?.from[key] ?? "";
  for (const key of Object.keys(preset)) from[key] = `from note ${note?.number ?? ""}`;
  return { input: { ...known, ...preset }, from };
}

/** "filled in from the lift, landing 3 and the result of 17 Nov 2026" */
export function filledInWords(from: FilledIn["from"]): string {
  const parts = [...new Set(Object.values(from))]
    .filter((words) => words !== "")
    .map((words) => words.replace(/^from /, ""));
  const last = parts.pop();
  if (last === undefined) return "";
  return `filled in from ${parts.length === 0 ? last : `${parts.join(", ")} and ${last}`}`;
}
