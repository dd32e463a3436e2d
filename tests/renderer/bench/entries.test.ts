import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { NumberField } from "#shared-lib/calculators/field.ts";
import { calculators } from "#shared-lib/calculators/registry.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { toSi, unitIn } from "#shared-lib/quantities.ts";
import {
  type Entries,
  inputOf,
  readEntries,
  sameEntries,
  shownText,
  unclearFields,
  writtenNumber,
} from "../../../renderer/features/bench/entries.ts";

function numberField(key: string): NumberField {
  const field = zoneSensors.inputs.find((one) => one.key === key);
  if (field?.kind !== "number") throw new Error(`${key} is no number field`);
  return field;
}

const typed = (text: string, unit: "mm" | "in" = "mm"): Entries => ({
  magnetLength: { kind: "number", text, unit },
});

describe("what was typed", () => {
  test("stands as typed in its unit, and comes back unchanged after a look in the other one", () => {
    const field = numberField("magnetLength");
    const entry = typed("300.0").magnetLength;
    expect(shownText(field, undefined, entry, "metric")).toBe("300.0");
    expect(shownText(field, undefined, entry, "foot-pound")).toBe("11.81");
    expect(shownText(field, undefined, entry, "metric")).toBe("300.0");
  });

  test("is computed from the text, never from what another unit shows of it", () => {
    expect(inputOf(zoneSensors, {}, typed("300")).magnetLength).toBe(toSi(300, "mm"));
    expect(inputOf(zoneSensors, {}, typed("11.81", "in")).magnetLength).toBe(toSi(11.81, "in"));
  });

  test("wins over what was filled in, and an emptied field is absent", () => {
    const filled = { magnetLength: 0.25, landing: "3" };
    expect(inputOf(zoneSensors, filled, typed("300")).magnetLength).toBeCloseTo(0.3, 12);
    expect(inputOf(zoneSensors, filled, typed(""))).not.toHaveProperty("magnetLength");
    expect(inputOf(zoneSensors, filled, { landing: { kind: "value", value: null } })).not.toHaveProperty(
      "landing",
    );
    expect(inputOf(zoneSensors, filled, {})).toMatchObject({ ...filled, measured: "positions" });
  });

  test("that is no number is left out of the sum and named, so that nothing is saved over it", () => {
    const entries = typed("about 300");
    expect(inputOf(zoneSensors, { magnetLength: 0.25 }, entries)).not.toHaveProperty("magnetLength");
    expect(unclearFields(zoneSensors, entries)).toEqual(["magnetLength"]);
    expect(shownText(numberField("magnetLength"), 0.25, entries.magnetLength, "foot-pound")).toBe(
      "about 300",
    );
    expect(unclearFields(zoneSensors, typed(""))).toEqual([]);
  });
});

describe("a filled-in number", () => {
  test("is shown as exactly as it is computed with", () => {
    expect(writtenNumber(0.3005, numberField("magnetLength"), "metric")).toBe("300.5");
    expect(writtenNumber(0.3, numberField("magnetLength"), "metric")).toBe("300");
    expect(writtenNumber(-0.011, numberField("centreUp"), "metric")).toBe("−11");
  });

  test("that is a tolerance carries its plus-minus sign and is read back the same", () => {
    const text = writtenNumber(0.005, numberField("zoneTolerance"), "metric");
    expect(text).toBe("±\u00a05");
    expect(readNumber(text)).toEqual({ kind: "number", number: 5 });
  });

  test("of any field and any size can be read again, within the digits of its unit", () => {
    const fields = calculators.flatMap((calculator) =>
      calculator.inputs.filter((field): field is NumberField => field.kind === "number"),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...fields),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom("metric" as const, "foot-pound" as const),
        (field, part, system) => {
          const [least, most] = field.range;
          const value = least + part * (most - least);
          const reading = readNumber(writtenNumber(value, field, system));
          expect(reading.kind).toBe("number");
          if (reading.kind !== "number") return;
          const back = toSi(reading.number, unitIn(system, field.unit));
          const step = toSi(10 ** -field.digits, field.unit) - toSi(0, field.unit);
          expect(Math.abs(back - value)).toBeLessThanOrEqual(2 * Math.abs(step));
        },
      ),
    );
  });
});

describe("a kept draft", () => {
  test("is read back; what fits no field of today's calculator is left out", () => {
    const kept = {
      magnetLength: { kind: "number", text: "300", unit: "mm" },
      orderUp: { kind: "value", value: ["upperOn"] },
      landing: { kind: "value", value: null },
      sensorSpacing: { kind: "number", text: 60, unit: "mm" },
      centreUp: { kind: "number", text: "3", unit: "furlong" },
      speed: { kind: "value", value: "fast" },
      measured: { kind: "value", value: "by eye" },
      gone: { kind: "number", text: "1", unit: "mm" },
    };
    expect(Object.keys(readEntries(zoneSensors, kept))).toEqual(["landing", "magnetLength", "orderUp"]);
  });

  test("that is anything at all never breaks the form", () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), fc.constantFrom("number", "value"), (kept, value, kind) => {
        const entry = { kind, value, text: value, unit: "mm" };
        const all = Object.fromEntries(zoneSensors.inputs.map(({ key }) => [key, entry]));
        for (const one of [kept, all]) {
          const input = inputOf(zoneSensors, {}, readEntries(zoneSensors, one));
          expect(zoneSensors.schema.safeParse(input).success).toBe(true);
        }
      }),
    );
  });
});

test("two sets of entries are the same only with the same texts", () => {
  expect(sameEntries(typed("3"), typed("3"))).toBe(true);
  expect(sameEntries(typed("3"), typed("3.0"))).toBe(false);
  expect(sameEntries(typed("3"), {})).toBe(false);
});
