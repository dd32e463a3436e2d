import { expect, test } from "vitest";
import { availability } from "#shared-lib/calculators/availability.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";

const day = 86_400;
const toDigits = (value: number, digits: number): number => Number(value.toPrecision(digits));
const value = (input: CalculatorInput, key: string): number =>
  availability.compute(input).values.find((each) => each.key === key)?.value ?? Number.NaN;

test("Ex 10a: 4 failures, 26.5 h down in 8760 h: 99.70 %, 2190 h, 6.625 h; status: computed, formulas from memory", () => {
  const year = { lifts: 1, period: 365 * day, calls: 4, down: 26.5 * 3600 };
  expect(toDigits(value(year, "availability") * 100, 4)).toBe(99.7);
  expect(toDigits(value(year, "mtbf") / 3600, 4)).toBe(2190);
  expect(toDigits(value(year, "meanDown") / 3600, 4)).toBe(6.625);
});

test("Ex 10a: 37 call-backs on 12 lifts in a year: 3.083 of one lift; status: computed", () => {
  const input = { lifts: 12, period: 365 * day, calls: 37 };
  expect(toDigits(value(input, "rate") * 365 * day, 4)).toBe(3.083);
});

test("137 in 24.19893 lift years: 4.753125 to 6.692709; status: published (R poisson.test)", () => {
  const input = { lifts: 1, period: 24.19893 * 365 * day, calls: 137 };
  expect(toDigits(value(input, "rateLower") * 365 * day, 7)).toBe(4.753125);
  expect(toDigits(value(input, "rateUpper") * 365 * day, 7)).toBe(6.692709);
});

test("2 in 17877 days against 9 in 16660: 0.02177406 to 1.0005491 times; status: published (Fay)", () => {
  const input = { lifts: 1, period: 17_877 * day, calls: 2, callsBefore: 9, periodBefore: 16_660 * day };
  expect(value(input, "changeLower")).toBeCloseTo(0.02177406, 8);
  expect(value(input, "changeUpper")).toBeCloseTo(1.0005491, 7);
  expect(availability.compute(input).notes[0]).toContain("no change can be told from chance");
});
