import { describe, expect, test } from "vitest";
import { lengthening, metalArea, sinkPerMass } from "#shared-lib/calculators/sink-physics.ts";

const toDigits = (value: number, digits: number): number => Number(value.toPrecision(digits));

describe("Ex 5l: sink under load; status: computed (derived; metal area factor published)", () => {
  const area = metalArea("8-strand fibre", 0.01);
  const ropes = { ropes: 5, height: 30, area, modulus: 60e9, spring: null };

  test("metal area of an 8-strand rope of 10 mm: 35.70 mm²", () => {
    expect(toDigits(area * 1e6, 4)).toBe(35.7);
  });

  test.each([
    ["630 kg, 1:1", 630, 1, 17.31],
    ["630 kg, 2:1", 630, 2, 8.653],
    ["one person of 75 kg, 1:1", 75, 1, 2.06],
  ])("%s: %d kg at roping %d, %d mm", (_, load, roping, sink) => {
    expect(toDigits(load * sinkPerMass({ ...ropes, roping }) * 1000, 4)).toBe(sink);
  });

  test("the same by the lengthening of one rope, dL = dT L/(E A), the other way round", () => {
    // 2:1: each rope takes a tenth of the load over 60 m, and the car moves half of what it gives.
    const rope = lengthening((630 * 9.80665) / 10, 60, 60e9, area);
    expect(rope / 2).toBeCloseTo(630 * sinkPerMass({ ...ropes, roping: 2 }), 12);
  });
});
