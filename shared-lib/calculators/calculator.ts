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
import type { Problem, Result } from "./result.ts";
import { type Source, whoDecides } from "./source.ts";

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

/** Factors by which a typed number is most often wrong: a slipped point, or millimetres where metres were meant. */
const slips = [0.1, 10, 0.001, 1000, 0.01, 100];

function rangeProblem(field: Field, value: FieldValue, pen: Pen): Problem | null {
  if (field.kind !== "number" || typeof value !== "number") return null;
  const [least, most] = field.range;
  const write = (shown: number): string => pen.write(shown, field.unit, field.digits);
  if (value >= least && value <= most) {
    if (field.whole !== true || Number.isInteger(value)) return null;
    return {
      field: field.key,
      sentence: `${field.label} is a whole number. It is left out until you decide.`,
    };
  }
  const meant = slips.map((slip) => value * slip).find((guess) => guess >= least && guess <= most);
  const guess =
    meant !== undefined && meant !== 0 && field.whole !== true ? ` Did you mean ${write(meant)}?` : "";
  return {
    field: field.key,
    sentence: `${field.label} lies between ${write(least)} and ${write(most)}.${guess} It is left out until you decide.`,
  };
}

interface Sorted {
  readonly values: Record<string, FieldValue>;
  readonly problems: Problem[];
  readonly missing: string[];
}

function sortInput(fields: readonly Field[], input: CalculatorInput, pen: Pen): Sorted {
  const filled = { ...startInput(fields), ...input };
  const sorted: Sorted = { values: {}, problems: [], missing: [] };
  for (const field of fields) {
    if (!isShown(field, fields, filled)) continue;
    const value = filled[field.key];
    const problem = value === undefined ? null : rangeProblem(field, value, pen);
    if (problem !== null) sorted.problems.push(problem);
    if (value !== undefined && problem === null) sorted.values[field.key] = value;
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
