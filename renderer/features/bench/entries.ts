import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import {
  type CalculatorInput,
  type Field,
  type FieldValue,
  type NumberField,
  startInput,
} from "#shared-lib/calculators/field.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import {
  digitsIn,
  fromSi,
  toSi,
  type Unit,
  type UnitSystem,
  unitIn,
  units,
  writeNumber,
} from "#shared-lib/quantities.ts";
import { readTable, rowsOf, unclearCell } from "./table-entries.ts";

/** What a person typed into a number field, in the unit it stood in then: shown in another unit, it never drifts. */
export interface NumberEntry {
  readonly kind: "number";
  readonly text: string;
  readonly unit: Unit;
}
/** What was chosen, written or put in order; null: emptied by hand, which is not the same as never filled in. */
export interface ValueEntry {
  readonly kind: "value";
  readonly value: string | readonly string[] | null;
}
/** A cell as it was typed; `unit` is the one it stood in then, null where the column has none. */
export interface TypedCell {
  readonly text: string;
  readonly unit: Unit | null;
}
export type TypedRow = Readonly<Record<string, TypedCell>>;
export interface TableEntry {
  readonly kind: "table";
  readonly rows: readonly TypedRow[];
}
export type Entry = NumberEntry | ValueEntry | TableEntry;

/** By field key, only what the person changed: everything else is as filled in. */
export type Entries = Readonly<Record<string, Entry>>;

const isUnit = (value: unknown): value is Unit => typeof value === "string" && value in units;

function readEntry(calculator: Calculator, field: Field, kept: unknown): Entry | undefined {
  if (typeof kept !== "object" || kept === null) return undefined;
  const entry = kept as Partial<Record<"kind" | "text" | "unit" | "value", unknown>>;
  if (field.kind === "number") {
    const { text, unit } = entry;
    return entry.kind === "number" && typeof text === "string" && isUnit(unit)
      ? { kind: "number", text, unit }
      : undefined;
  }
  if (field.kind === "table") return readTable(field, kept);
  const { value } = entry;
  if (entry.kind !== "value" || value === undefined) return undefined;
  const fits = value === null || calculator.schema.safeParse({ [field.key]: value }).success;
  return fits ? { kind: "value", value: value as ValueEntry["value"] } : undefined;
}

/** A kept draft as entries of this calculator; what no longer fits a field of it is left out. */
export function readEntries(calculator: Calculator, kept: unknown): Entries {
  if (typeof kept !== "object" || kept === null) return {};
  const record = kept as Record<string, unknown>;
  const found: Record<string, Entry> = {};
  for (const field of calculator.inputs) {
    const entry = readEntry(calculator, field, record[field.key]);
    if (entry !== undefined) found[field.key] = entry;
  }
  return found;
}

function entryValue(field: Field, entry: Entry): FieldValue | undefined {
  if (entry.kind === "table") return field.kind === "table" ? rowsOf(field, entry) : undefined;
  if (entry.kind === "value") return entry.value ?? undefined;
  const reading = readNumber(entry.text);
  return reading.kind === "number" ? toSi(reading.number, entry.unit) : undefined;
}

/**
 * The form's values: start values, over them what was filled in, over that what was typed. SI.
 * An emptied field is absent; so is a text that is no number, which the field says by itself.
 */
export function inputOf(calculator: Calculator, filled: CalculatorInput, entries: Entries): CalculatorInput {
  const input: Record<string, FieldValue> = {};
  for (const field of calculator.inputs) {
    const { key } = field;
    const entry = entries[key];
    const value =
      entry === undefined ? (filled[key] ?? startInput(calculator.inputs)[key]) : entryValue(field, entry);
    if (value !== undefined) input[key] = value;
  }
  return input;
}

/** Why the text of an entry is no number; undefined where it is one, or is empty. */
export function unclearProblem(field: Field, entry: Entry | undefined): string | undefined {
  if (entry?.kind === "table") return field.kind === "table" ? unclearCell(field, entry) : undefined;
  const reading = entry?.kind === "number" ? readNumber(entry.text) : undefined;
  return reading?.kind === "unclear" ? reading.problem : undefined;
}

/** Fields whose text is not a number: nothing may be saved over their heads. */
export function unclearFields(calculator: Calculator, entries: Entries): readonly string[] {
  return calculator.inputs
    .filter((field) => unclearProblem(field, entries[field.key]) !== undefined)
    .map(({ key }) => key);
}

/** Digits beyond those of the field that a filled-in value may keep, so that what is shown is what is computed. */
const extraDigits = 4;

/** An SI number as it stands in its field: as exact as it is in the field's own unit, as the digits allow in another. */
export function writtenNumber(
  value: number,
  field: Pick<NumberField, "unit" | "digits" | "plusMinus">,
  system: UnitSystem,
): string {
  const unit = unitIn(system, field.unit);
  const shown = fromSi(value, unit);
  let digits = unit === field.unit ? field.digits : digitsIn(unit, field.unit, field.digits);
  const most = unit === field.unit ? field.digits + extraDigits : digits;
  const isExact = (count: number) =>
    Math.abs(Number(shown.toFixed(count)) - shown) <= 1e-9 * Math.max(1, Math.abs(shown));
  while (digits < most && !isExact(digits)) digits += 1;
  const text = writeNumber(shown, digits);
  return field.plusMinus === true ? `±\u00a0${text}` : text;
}

/** The text in a number field: as typed where it was typed in the unit shown, else written from the SI value. */
export function shownText(
  field: NumberField,
  filled: FieldValue | undefined,
  entry: Entry | undefined,
  system: UnitSystem,
): string {
  if (entry?.kind === "number") {
    if (entry.unit === unitIn(system, field.unit)) return entry.text;
    const value = entryValue(field, entry);
    return typeof value === "number" ? writtenNumber(value, field, system) : entry.text;
  }
  return typeof filled === "number" ? writtenNumber(filled, field, system) : "";
}

export function sameEntries(one: Entries, other: Entries): boolean {
  const keys = Object.keys({ ...one, ...other });
  return keys.every((key) => JSON.stringify(one[key]) === JSON.stringify(other[key]));
}
