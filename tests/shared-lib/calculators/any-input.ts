import fc from "fast-check";
import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { CalculatorInput, Field, FieldValue } from "#shared-lib/calculators/field.ts";

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
  }
}

/** Any input of a calculator; `wild` also outside the ranges. */
export function anyInput(calculator: Calculator, wild: boolean): fc.Arbitrary<CalculatorInput> {
  const parts = Object.fromEntries(
    calculator.inputs.map((field) => [
      field.key,
      fc.option(anyValue(field, wild), { nil: undefined, freq: 6 }),
    ]),
  );
  return fc
    .record(parts)
    .map((input) => Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined)));
}

/** Every number and string in a result, with the way to it. */
export function leavesOf(value: unknown, path = ""): { path: string; leaf: unknown }[] {
  if (Array.isArray(value)) return value.flatMap((each, index) => leavesOf(each, `${path}.${index}`));
  if (value !== null && typeof value === "object") {
    return Object.entries(value).flatMap(([key, each]) => leavesOf(each, `${path}.${key}`));
  }
  return [{ path, leaf: value }];
}
