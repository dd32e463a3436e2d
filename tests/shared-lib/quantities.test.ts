import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  digitsIn,
  fromSi,
  quantityOf,
  toSi,
  type Unit,
  unitIn,
  units,
  writeNumber,
  writeQuantity,
} from "#shared-lib/quantities.ts";

const everyUnit = Object.keys(units) as Unit[];

describe("units", () => {
  test.each(everyUnit)("%s goes there and back without drift", (unit) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (shown) => {
        let value = shown;
        for (let round = 0; round < 20; round += 1) value = fromSi(toSi(value, unit), unit);
        expect(Math.abs(value - shown)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(shown)));
      }),
    );
  });

  test.each(everyUnit)("%s and its twin measure the same quantity", (unit) => {
    expect(quantityOf(unitIn("foot-pound", unit))).toBe(quantityOf(unit));
  });

  // Exact by definition: international yard and pound agreement of 1959, standard gravity.
  test.each([
    [1, "in", 0.0254],
    [1, "ft", 0.3048],
    [1, "lb", 0.45359237],
    [1, "lbf", 4.4482216152605],
    [200, "ft/min", 1.016],
    [32, "°F", 273.15],
    [212, "°F", 373.15],
    [60, "1/min", 1],
  ] as const)("%d %s", (shown, unit, si) => {
    expect(toSi(shown, unit)).toBeCloseTo(si, 12);
  });
});

describe("writing", () => {
  test("real minus sign, no-break space, no minus before zero", () => {
    expect(writeQuantity(-0.017, "mm", { digits: 0 })).toBe("\u221217\u00a0mm");
    expect(writeQuantity(0.004, "mm", { digits: 0, signed: true })).toBe("+4\u00a0mm");
    expect(writeNumber(-0.0001, 2, true)).toBe("0.00");
    expect(writeQuantity(5, "pieces", { digits: 0 })).toBe("5");
  });

  test("the twin unit keeps the exactness", () => {
    expect(digitsIn("in", "mm", 0)).toBe(2);
    expect(digitsIn("ft/min", "m/s", 2)).toBe(0);
    expect(writeQuantity(1, "m/s", { digits: 2, system: "foot-pound" })).toBe("197\u00a0ft/min");
    expect(writeQuantity(0.01, "mm", { digits: 0, system: "foot-pound" })).toBe("0.39\u00a0in");
  });
});
