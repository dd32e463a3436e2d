import { z } from "zod";
import type { Quantity, Unit } from "../quantities.ts";
import { type RowOf, type TableColumn, type TableRow, tableSchema } from "./table-field.ts";

/**
 * Facts a field can be filled in from: `lift.` fields of the lift record, `landing.` fields of the landing the
 * person stands at, `checks.` what the saved results of the lift's other landings say.
 */
export const prefillKeys = [
  "lift.ratedSpeed",
  "lift.ratedLoad",
  "lift.roping",
  "lift.sheaveDiameter",
  "lift.encoderPulses",
  "lift.doorKind",
  "lift.doorWidth",
  "lift.magnetLength",
  "lift.sensorSpacing",
  "lift.unlockNeeds",
  "lift.unlockingZone",
  "lift.zoneTolerance",
  "lift.upSlowdownDistance",
  "lift.downSlowdownDistance",
  "lift.busBitRate",
  "lift.busLength",
  "lift.landingCount",
  "lift.travel",
  "landing.marking",
  "checks.otherLandings",
  "checks.largestOtherCentre",
] as const;
export type PrefillKey = (typeof prefillKeys)[number];

/** Holds where the choice `field` has one of the values of `is`. */
export interface Condition {
  readonly field: string;
  readonly is: readonly string[];
}

interface FieldBase {
  readonly key: string;
  readonly label: string;
  /** One sentence under the field. */
  readonly help?: string;
  /** Fields of the same group stand side by side under its name. */
  readonly group?: string;
  readonly optional: boolean;
  /** Makes an optional field needed. */
  readonly neededWhen?: Condition;
  readonly shownWhen?: Condition;
  readonly prefilledFrom?: PrefillKey;
}

export interface NumberField extends FieldBase {
  readonly kind: "number";
  readonly quantity: Quantity;
  /** Unit it is shown in; the stored number is SI. */
  readonly unit: Unit;
  /** Least and most allowed, SI, both inclusive. */
  readonly range: readonly [number, number];
  /** Step of the field's arrows, SI. */
  readonly step: number;
  /** Decimals in `unit`. */
  readonly digits: number;
  readonly whole?: boolean;
  /** A tolerance: shown with a plus-minus sign before it. */
  readonly plusMinus?: boolean;
  /** Value the field begins with, SI; only where a usual value is no guess about this lift. */
  readonly start?: number;
}

export interface ChoiceOption {
  readonly id: string;
  readonly words: string;
  /** Number by which a record stores this option, SI. */
  readonly recorded?: number;
}

export interface ChoiceField extends FieldBase {
  readonly kind: "choice";
  readonly options: readonly ChoiceOption[];
  readonly start?: string;
}

export interface TextField extends FieldBase {
  readonly kind: "text";
  readonly longest: number;
}

/** Events in the order they were seen. An empty list says that it was watched and nothing came. */
export interface OrderField extends FieldBase {
  readonly kind: "order";
  readonly items: readonly { readonly id: string; readonly words: string }[];
  readonly longest: number;
}

/** Rows of the same cells, as in one row a landing. */
export interface TableField extends FieldBase {
  readonly kind: "table";
  readonly columns: readonly TableColumn[];
  /** Fewest rows with which anything can be said, and most that may be entered. */
  readonly least: number;
  readonly most: number;
}

export type Field = NumberField | ChoiceField | TextField | OrderField | TableField;

export type FieldValue = number | string | readonly string[] | readonly TableRow[];
/** What a screen, a preset or the command line hands in: plain JSON by field key, numbers in SI. */
export type CalculatorInput = Readonly<Record<string, FieldValue | undefined>>;

type ValueOf<F> = F extends { kind: "number" }
  ? number
  : F extends { kind: "choice"; options: readonly { id: infer Id }[] }
    ? Id
    : F extends { kind: "order"; items: readonly { id: infer Id }[] }
      ? readonly Id[]
      : F extends { kind: "table"; columns: infer Columns extends readonly TableColumn[] }
        ? readonly RowOf<Columns>[]
        : string;
type Present<F> = F extends { shownWhen: Condition }
  ? false
  : F extends { optional: false }
    ? true
    : F extends { start: unknown }
      ? true
      : false;

/** The typed values a calculator works on: needed ones are there, the others may be undefined. */
export type ValuesOf<Fields extends readonly Field[]> = {
  readonly [F in Fields[number] as F["key"]]: Present<F> extends true ? ValueOf<F> : ValueOf<F> | undefined;
};

function fieldSchema(field: Field): z.ZodType {
  switch (field.kind) {
    case "number":
      // Any finite number: the range is answered by a sentence at the field, not by a refused request.
      return z.number().describe(`${field.label}, SI unit of ${field.quantity}`);
    case "choice":
      return z.enum(field.options.map((option) => option.id)).describe(field.label);
    case "text":
      return z.string().max(field.longest).describe(field.label);
    case "order":
      return z
        .array(z.enum(field.items.map((item) => item.id)))
        .max(field.longest)
        .describe(field.label);
    case "table":
      return tableSchema(field);
  }
}

/** Every field may be absent: a half-filled form is a question to be answered with what is missing. */
export function schemaOf(fields: readonly Field[]): z.ZodType<CalculatorInput> {
  const shape = Object.fromEntries(fields.map((field) => [field.key, fieldSchema(field).optional()]));
  return z.strictObject(shape) as unknown as z.ZodType<CalculatorInput>;
}

const startOf = (field: Field): FieldValue | undefined =>
  field.kind === "number" || field.kind === "choice" ? field.start : undefined;

/** Values the form begins with before anything is filled in or typed. */
export function startInput(fields: readonly Field[]): CalculatorInput {
  const input: Record<string, FieldValue> = {};
  for (const field of fields) {
    const start = startOf(field);
    if (start !== undefined) input[field.key] = start;
  }
  return input;
}

function holds(condition: Condition | undefined, fields: readonly Field[], input: CalculatorInput): boolean {
  if (condition === undefined) return true;
  const governing = fields.find((field) => field.key === condition.field);
  const value = input[condition.field] ?? (governing ? startOf(governing) : undefined);
  return typeof value === "string" && condition.is.includes(value);
}

/** Whether a field belongs to the form as it is filled in now. */
export function isShown(field: Field, fields: readonly Field[], input: CalculatorInput): boolean {
  return holds(field.shownWhen, fields, input);
}

/** Whether nothing can be said without this field. */
export function isNeeded(field: Field, fields: readonly Field[], input: CalculatorInput): boolean {
  if (!isShown(field, fields, input) || startOf(field) !== undefined) return false;
  return !field.optional || (field.neededWhen !== undefined && holds(field.neededWhen, fields, input));
}
