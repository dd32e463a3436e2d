import type { z } from "zod";
import type { Formula } from "../formulas/formula.ts";
import type { UnitSystem } from "../quantities.ts";
import {
  type CalculatorInput,
  type Field,
  type FieldValue,
  isNeeded,
  isShown,
  schemaOf,
  startInput,
  type ValuesOf,
} from "./field.ts";
import { makePen, type Pen } from "./pen.ts";
import { numberProblem } from "./range-problem.ts";
import type { Problem, Result } from "./result.ts";
import { type Source, whoDecides } from "./source.ts";
import { sortRows, type TableRow } from "./table-field.ts";

interface CalculatorWords {
  readonly id: string;
  readonly name: string;
  /** One sentence. */
  readonly purpose: string;
  /** What people would say when they need it; read by the search. */
  readonly words: readonly string[];
  readonly cautions: readonly string[];
  readonly sources: readonly Source[];
  readonly formulas: readonly Formula[];
}

export interface Calculator extends CalculatorWords {
  readonly inputs: readonly Field[];
  /** Plain JSON, numbers in SI; every field may be absent, none may be unknown. */
  readonly schema: z.ZodType<CalculatorInput>;
  /**
   * Pure and total: never throws, never answers NaN or Infinity. What does not fit is a sentence at its field, and
   * what then cannot be computed is left out or answered "Not enough".
   * @param input SI values by field key
   * @param system units of the sentences
   */
  readonly compute: (input: CalculatorInput, system?: UnitSystem) => Result;
}

/** What the working part of a calculator answers; the frame adds what it found wrong with the input. */
export type Outcome = Omit<Result, "missing"> & { readonly missing?: readonly string[] };

interface CalculatorDefinition<Fields extends readonly Field[]> extends CalculatorWords {
  readonly inputs: Fields;
  readonly work: (values: ValuesOf<Fields>, pen: Pen) => Outcome;
}

/** An answer that says what is missing and judges nothing. */
export function notEnough(sentence: string, next: string, parts: Partial<Outcome> = {}): Outcome {
  return {
    comparisons: [],
    values: [],
    drawings: [],
    problems: [],
    notes: [],
    ...parts,
    verdict: { word: "Not enough", holds: null, sentence, because: "", next, until: whoDecides },
  };
}

interface Sorted {
  readonly values: Record<string, FieldValue>;
  readonly problems: Problem[];
  readonly missing: string[];
}

interface Fitted {
  readonly value?: FieldValue;
  readonly problems: readonly Problem[];
}

/** What of a value can be computed with, and a sentence for what cannot. */
function whatFits(field: Field, value: FieldValue, pen: Pen): Fitted {
  if (field.kind === "number" && typeof value === "number") {
    const sentence = numberProblem(field, value, pen);
    return sentence === null ? { value, problems: [] } : { problems: [{ field: field.key, sentence }] };
  }
  if (field.kind !== "table") return { value, problems: [] };
  const { rows, problems } = sortRows(field, value as readonly TableRow[], pen);
  if (rows.length >= field.least) return { value: rows, problems };
  if (rows.length === 0 || !field.optional) return { problems };
  const sentence = `${field.label}: at least ${field.least} rows are needed. It is left out until then.`;
  return { problems: [...problems, { field: field.key, sentence }] };
}

function sortInput(fields: readonly Field[], input: CalculatorInput, pen: Pen): Sorted {
  const filled = { ...startInput(fields), ...input };
  const sorted: Sorted = { values: {}, problems: [], missing: [] };
  for (const field of fields) {
    if (!isShown(field, fields, filled)) continue;
    const value = filled[field.key];
    const fitted = value === undefined ? { problems: [] } : whatFits(field, value, pen);
    sorted.problems.push(...fitted.problems);
    if (fitted.value !== undefined) sorted.values[field.key] = fitted.value;
    else if (isNeeded(field, fields, filled)) sorted.missing.push(field.key);
  }
  return sorted;
}

function askFor(fields: readonly Field[], missing: readonly string[]): string {
  const labels = fields
    .filter((field) => missing.includes(field.key))
    .map((field) => field.label.toLowerCase());
  return `Still needed: ${labels.join(", ")}.`;
}

function refused(schemaError: z.ZodError): Result {
  const problems = schemaError.issues.map((issue) => ({
    field: String(issue.path[0] ?? ("keys" in issue ? issue.keys[0] : "")),
    sentence: issue.message,
  }));
  return {
    missing: [],
    ...notEnough("The input does not fit this calculator.", "Correct the fields named.", { problems }),
  } as Result;
}

/** Turns one definition into a calculator: schema from the fields, and checks around the working part. */
export function defineCalculator<const Fields extends readonly Field[]>(
  definition: CalculatorDefinition<Fields>,
): Calculator {
  const { work, ...described } = definition;
  const schema = schemaOf(definition.inputs);
  return {
    ...described,
    schema,
    compute: (input, system = "metric") => {
      const parsed = schema.safeParse(input);
      if (!parsed.success) return refused(parsed.error);
      const pen = makePen(system);
      const { values, problems, missing } = sortInput(definition.inputs, parsed.data, pen);
      if (missing.length > 0) {
        const sentence = problems.length > 0 ? "A needed value does not fit." : "Some values are missing.";
        return {
          ...notEnough(sentence, askFor(definition.inputs, missing), { problems }),
          missing: [...missing],
        };
      }
      const outcome = work(values as ValuesOf<Fields>, pen);
      return {
        ...outcome,
        problems: [...problems, ...outcome.problems],
        missing: [...(outcome.missing ?? [])],
      };
    },
  };
}
