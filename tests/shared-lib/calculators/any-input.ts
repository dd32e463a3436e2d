import fc from "fast-check";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { CalculatorInput, Field, FieldValue } from "#shared-lib/calculators/field.ts";
import type { TableColumn, TableRow } from "#shared-lib/calculators/table-field.ts";

const anyFinite = fc.double({ noNaN: true, noDefaultInfinity: true });
const awkward = fc.constantFrom(0, -0, 5e-324, -1, 1e308, -1e308, Number.MAX_SAFE_INTEGER, 0.5);

/** Mostly inside the range, on its bounds, and now and then anything the schema accepts. */
function anyValue(field: Field, wild: boolean): fc.Arbitrary<FieldValue> {
  switch (field.kind) {
    case "number": {
      const [min, max] = field.range;
      const inside = field.whole ? fc.integer({ min, max }) : fc.double({ min, max, noNaN: true });
      const bounds = fc.constantFrom(min, max);
      return wild
        ? fc.oneof({ weight: 6, arbitrary: inside }, bounds, anyFinite, awkward)
        : fc.oneof(inside, bounds);
    }
    case "choice":
      return fc.constantFrom(...field.options.map((option) => option.id));
    case "text":
      return fc.string({ maxLength: field.longest });
    case "order":
      return fc.array(fc.constantFrom(...field.items.map((item) => item.id)), { maxLength: field.longest });
    case "table":
      return fc.array(anyRow(field.columns, wild), {
        maxLength: Math.min(field.most, Math.max(8, field.least + 4)),
      });
  }
}

function anyRow(columns: readonly TableColumn[], wild: boolean): fc.Arbitrary<TableRow> {
  const cells = columns.map((column) => {
    const cell = anyValue({ step: 1, ...column } as Field, wild) as fc.Arbitrary<number | string>;
    return [column.key, fc.option(cell, { nil: undefined, freq: 12 })] as const;
  });
  return fc.record(Object.fromEntries(cells)).map(withoutHoles);
}

const withoutHoles = <Value>(input: Record<string, Value | undefined>): Record<string, Value> =>
  Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined)) as Record<
    string,
    Value
  >;

/** Whether people wrote words of their own into it, which may come back in sentences. */
export function isWritten(calculator: Calculator, input: CalculatorInput): boolean {
  return calculator.inputs.some((field) => {
    const value = input[field.key];
    if (field.kind === "text") return value !== undefined && value !== "";
    if (field.kind !== "table" || !Array.isArray(value)) return false;
    return field.columns.some((column) => column.kind === "text" && value.some((row) => row[column.key]));
  });
}

/** Any input of a calculator; `wild` also outside the ranges. */
export function anyInput(calculator: Calculator, wild: boolean): fc.Arbitrary<CalculatorInput> {
  const parts = Object.fromEntries(
    calculator.inputs.map((field) => [
      field.key,
      fc.option(anyValue(field, wild), { nil: undefined, freq: 6 }),
    ]),
  );
  return fc.record(parts).map(withoutHoles);
}

/** Every number and string in a result, with the way to it. */
export function leavesOf(value: unknown, path = ""): { path: string; leaf: unknown }[] {
  if (Array.isArray(value)) return value.flatMap((each, index) => leavesOf(each, `${path}.${index}`));
  if (value !== null && typeof value === "object") {
    return Object.entries(value).flatMap(([key, each]) => leavesOf(each, `${path}.${key}`));
  }
  return [{ path, leaf: value }];
}
