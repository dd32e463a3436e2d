import { describe, expect, test } from "vitest";
import {
  closingEnergy,
  fastestClosing,
  reducedTravel,
  referredMass,
  shortestClosing,
} from "#shared-lib/calculators/door-physics.ts";

/** The examples print four digits. */
const fourDigits = (value: number): number => Number(value.toPrecision(4));

describe("closing energy; status: published, with three digits", () => {
  test.each([
    { mass: 90, speed: 0.25, printed: 2.81, exact: 2.8125 },
    { mass: 85, speed: 0.3, printed: 3.83, exact: 3.825 },
    { mass: 100, speed: 0.35, printed: 6.13, exact: 6.125 },
  ])("$mass kg at $speed m/s", ({ mass, speed, printed, exact }) => {
    expect(closingEnergy(mass, speed)).toBeCloseTo(exact, 10);
    expect(Math.abs(closingEnergy(mass, speed) - printed)).toBeLessThanOrEqual(0.005 + 1e-9);
  });
});

describe("closing energy, speed and time; status: computed by hand arithmetic", () => {
  test("100 kg: 8.000 J at 0.40 m/s, 0.4472 m/s for 10 J, 0.2828 m/s for 4 J", () => {
    expect(fourDigits(closingEnergy(100, 0.4))).toBe(8);
    expect(fourDigits(fastestClosing(100, 10))).toBe(0.4472);
    expect(fourDigits(fastestClosing(100, 4))).toBe(0.2828);
  });

  test.each([
    { arrangement: "side-opening", travel: 0.8, ten: 1.789, four: 2.828 },
    { arrangement: "centre-opening", travel: 0.4, ten: 0.8944, four: Math.SQRT2 },
  ] as const)("900 mm $arrangement, 100 kg", ({ arrangement, travel, ten, four }) => {
    expect(reducedTravel(arrangement, 0.9)).toBeCloseTo(travel, 12);
    expect(fourDigits(shortestClosing(100, 10, travel))).toBe(ten);
    expect(fourDigits(shortestClosing(100, 4, travel))).toBe(fourDigits(four));
  });

  test.each([
    { mass: 120, ten: 0.4082, four: 0.2582 },
    { mass: 150, ten: 0.3651, four: 0.2309 },
    { mass: 180, ten: 0.3333, four: 0.2108 },
    { mass: 250, ten: 0.2828, four: 0.1789 },
  ])("fastest closing of $mass kg", ({ mass, ten, four }) => {
    expect(fourDigits(fastestClosing(mass, 10))).toBe(ten);
    expect(fourDigits(fastestClosing(mass, 4))).toBe(four);
  });

  test("telescopic 60 and 60 kg, fast panel at 0.45 m/s: 75.00 kg, 7.594 J", () => {
    expect(referredMass(60, 60)).toBe(75);
    expect(fourDigits(closingEnergy(75, 0.45))).toBe(7.594);
  });
});
