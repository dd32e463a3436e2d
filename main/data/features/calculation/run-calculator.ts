import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import { calculatorById } from "#shared-lib/calculators/registry.ts";
import type { Result } from "#shared-lib/calculators/result.ts";
import { type FieldProblem, SillbookError } from "#shared-lib/errors.ts";

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** What goes out of the program is JSON; a field that is `undefined` is none. */
export function toJson(value: unknown): Json {
  return JSON.parse(JSON.stringify(value)) as Json;
}

/** @throws SillbookError not-found */
export function findCalculator(id: string): Calculator {
  const calculator = calculatorById(id);
  if (!calculator) {
    throw new SillbookError("not-found", `There is no calculator called "${id}".`, {
      entity: "calculator",
      id,
    });
  }
  return calculator;
}

export function refuseInputs(fields: readonly FieldProblem[], why: string): never {
  throw new SillbookError("input-invalid", why, { fields });
}

/**
 * Computes; inputs that are no inputs of this calculator are refused. Missing and doubtful values are part of the result.
 * @throws SillbookError input-invalid with paths below `inputs`
 */
export function runCalculator(calculator: Calculator, inputs: Readonly<Record<string, unknown>>): Result {
  const parsed = calculator.schema.safeParse(inputs);
  if (parsed.success) return calculator.compute(parsed.data);
  const fields = parsed.error.issues.flatMap((issue): FieldProblem[] => {
    if (issue.code === "unrecognized_keys") {
      return issue.keys.map((key) => ({
        path: ["inputs", key],
        message: `${calculator.name} has no such input.`,
      }));
    }
    const path = issue.path.map((step) => (typeof step === "symbol" ? String(step) : step));
    return [{ path: ["inputs", ...path], message: issue.message }];
  });
  const places = fields.map(({ path, message }) => `${path.slice(1).join(".")}: ${message}`).join("; ");
  return refuseInputs(fields, `Nothing was computed. ${places}`.slice(0, 1500));
}
