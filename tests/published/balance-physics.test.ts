import { describe, expect, test } from "vitest";
import {
  balanceOfEmptyRuns,
  crossingOf,
  fitLine,
  type Line,
  studentQuantile,
} from "#shared-lib/calculators/balance-physics.ts";

/** The examples print four digits. */
const fourDigits = (value: number | null): number => Number((value ?? Number.NaN).toPrecision(4));
const loads = [0.3, 0.4, 0.45, 0.5, 0.6];

function lineOf(values: readonly number[]): Line {
  const line = fitLine(values.map((value, index) => ({ load: loads[index] ?? Number.NaN, value })));
  if (line === null) throw new Error("The readings make no line.");
  return line;
}

describe("balance from currents up and down; status: computed, method published", () => {
  test("even readings: 0.4429, slopes of 14.00 A per rated load", () => {
    const up = lineOf([6.2, 7.6, 8.3, 9.0, 10.4]);
    const down = lineOf([10.2, 8.8, 8.1, 7.4, 6.0]);
    expect([fourDigits(up.slope), fourDigits(down.slope)]).toEqual([14, -14]);
    expect(fourDigits(crossingOf(up, down))).toBe(0.4429);
  });

  test("noisy readings: least squares give 0.4821", () => {
    const up = lineOf([7.1, 8.0, 8.6, 9.2, 10.3]);
    const down = lineOf([11.0, 9.9, 9.3, 8.8, 7.7]);
    expect(fourDigits(crossingOf(up, down))).toBe(0.4821);
  });
});

test("balance from the empty car; status: computed: 630 kg, 6800 W down, 1200 W up, 1.0 m/s gives 0.4532", () => {
  const runs = { ratedLoad: 630, powerUp: 1200, powerDown: 6800, speedUp: 1, speedDown: 1 };
  expect(fourDigits(balanceOfEmptyRuns(runs))).toBe(0.4532);
});

test("quantiles of Student's t; status: from memory of the printed table, three decimals", () => {
  const printed = [
    [1, 12.706],
    [2, 4.303],
    [4, 2.776],
    [6, 2.447],
    [10, 2.228],
    [30, 2.042],
  ] as const;
  for (const [freedom, value] of printed) expect(studentQuantile(0.025, freedom)).toBeCloseTo(value, 3);
});
