import { formatStoredDay, minusSign } from "#shared-lib/format.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { fromSi, toSi, type Unit, units } from "#shared-lib/quantities.ts";
import { readTime } from "#shared-lib/time-words.ts";

/** One field of a record as a form asks for it and as a sheet shows it. */
export interface RecordField {
  readonly key: string;
  readonly label: string;
  readonly section: string;
  readonly kind: "line" | "text" | "telephone" | "number" | "choice" | "day";
  readonly required?: boolean;
  readonly hint?: string;
  /** Of a number: the unit it is written in, and the least and most allowed, SI. */
  readonly unit?: Unit;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  /** Shown with ± before it: a tolerance to both sides. */
  readonly plusMinus?: boolean;
  /** Of a choice: what is stored, and the words. */
  readonly options?: readonly { readonly stored: string | number; readonly words: string }[];
}

export type RecordValues = Readonly<Record<string, unknown>>;
/** What stands in the fields of a form, by key: as typed, so that nothing typed is ever changed. */
export type RecordTexts = Readonly<Record<string, string>>;
export type RecordProblems = Readonly<Record<string, string | undefined>>;

/** Metres times a thousand leave floating-point dust; nobody measures to a millionth of a millimetre. */
const exactDigits = 9;
const exact = (value: number): number => Number(value.toPrecision(exactDigits));

const unitSign = (unit: Unit | undefined): string => {
  if (unit === undefined) return "";
  const definition = units[unit] as { readonly sign?: string };
  return definition.sign ?? unit;
};

/** The unit as it stands behind an entry; undefined where there is none. */
export function unitOf(field: RecordField): string | undefined {
  const sign = unitSign(field.unit);
  return sign === "" ? undefined : sign;
}

export function textOf(field: RecordField, value: unknown): string {
  if (value === null || value === undefined || value === "") return "";
  if (field.kind === "number" && typeof value === "number") {
    return String(exact(field.unit === undefined ? value : fromSi(value, field.unit))).replace(
      "-",
      minusSign,
    );
  }
  if (field.kind === "day" && typeof value === "string") return formatStoredDay(value);
  return String(value);
}

export function textsOf(fields: readonly RecordField[], values: RecordValues): RecordTexts {
  return Object.fromEntries(fields.map((field) => [field.key, textOf(field, values[field.key])]));
}

/** What a sheet shows for a stored value: with its unit, in the words of a choice; "" where nothing is recorded. */
export function shownValue(field: RecordField, value: unknown): string {
  const text = textOf(field, value);
  if (text === "") return "";
  if (field.kind === "choice") return optionOf(field, text)?.words ?? text;
  if (field.kind !== "number") return text;
  const unit = unitOf(field);
  const number = `${field.plusMinus === true ? "±" : ""}${withDecimals(text, unit)}`;
  return unit === undefined ? number : `${number}\u00a0${unit}`;
}

/** Heights in metres and speeds are read with two decimals at least: 1.30 m, 1.00 m/s. */
function withDecimals(text: string, unit: string | undefined): string {
  if (unit !== "m" && unit !== "m/s") return text;
  const [whole, part = ""] = text.split(".");
  return `${whole}.${part.padEnd(2, "0")}`;
}

function optionOf(field: RecordField, text: string) {
  return field.options?.find((option) => String(option.stored) === text);
}

type Reading = { readonly value: unknown } | { readonly problem: string };

/** Reads one field. An empty one that need not be filled in is "" for words and null for everything else. */
export function readField(field: RecordField, text: string, now: Date): Reading {
  if (text.trim() === "") {
    if (field.required === true) return { problem: `${field.label} is needed.` };
    return { value: isWords(field) ? "" : null };
  }
  switch (field.kind) {
    case "number":
      return readQuantity(field, text);
    case "day":
      return readPastDay(text, now);
    case "choice":
      return { value: optionOf(field, text)?.stored ?? null };
    default:
      return { value: text };
  }
}

const isWords = (field: RecordField): boolean =>
  field.kind === "line" || field.kind === "text" || field.kind === "telephone";

function readQuantity(field: RecordField, text: string): Reading {
  const reading = readNumber(text);
  if (reading.kind === "unclear") return { problem: reading.problem };
  if (reading.kind === "empty") return { value: null };
  const value = exact(field.unit === undefined ? reading.number : toSi(reading.number, field.unit));
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = field;
  if (field.whole === true && !Number.isInteger(value))
    return { problem: `${field.label} is a whole number.` };
  if (value >= least && value <= most) return { value };
  return {
    problem: `${field.label} lies between ${limitWords(field, least)} and ${limitWords(field, most)}.`,
  };
}

function limitWords(field: RecordField, limit: number): string {
  return shownValue({ ...field, plusMinus: false }, limit);
}

/** A day that has been, as people write it: "12 Mar 2025", "2025-03-12", "yesterday". Answers it as it is stored. */
export function readPastDay(text: string, now: Date): Reading {
  const words = text.trim();
  const reading = readTime(`${/^today$/i.test(words) ? "" : words} 00:00`.trim(), now, "past");
  if (reading.kind !== "moment") {
    return { problem: `“${words}” is no day that can be read. Write it as in 12 Mar 2025.` };
  }
  const date = new Date(reading.at);
  const two = (value: number): string => String(value).padStart(2, "0");
  return { value: `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}` };
}

export interface RecordReading {
  /** The stored values of the fields that differ from `base`. */
  readonly changed: Readonly<Record<string, unknown>>;
  readonly problems: RecordProblems;
  readonly clean: boolean;
}

/** Reads a whole form. Only what a person changed is read and sent: a field left alone is never written again. */
export function readRecord(
  fields: readonly RecordField[],
  texts: RecordTexts,
  base: RecordTexts,
  now: Date,
): RecordReading {
  const changed: Record<string, unknown> = {};
  const problems: Record<string, string | undefined> = {};
  for (const field of fields) {
    const text = texts[field.key] ?? "";
    if (text === (base[field.key] ?? "") && !(field.required === true && text.trim() === "")) continue;
    const reading = readField(field, text, now);
    if ("problem" in reading) problems[field.key] = reading.problem;
    else changed[field.key] = reading.value;
  }
  return { changed, problems, clean: Object.keys(problems).length === 0 };
}

/** The sections of a form in the order in which their first fields stand. */
export function sectionsOf(fields: readonly RecordField[]): readonly {
  readonly title: string;
  readonly fields: readonly RecordField[];
}[] {
  const titles = [...new Set(fields.map((field) => field.section))];
  return titles.map((title) => ({ title, fields: fields.filter((field) => field.section === title) }));
}
