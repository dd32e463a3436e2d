import { describe, expect, test } from "vitest";
import { availability } from "#shared-lib/calculators/availability.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";

const day = 86_400;
const year = 365 * day;
const base = { lifts: 12, period: year, calls: 37 };
const compute = (input: CalculatorInput) => availability.compute({ ...base, ...input });
const keys = (input: CalculatorInput) => compute(input).values.map((each) => each.key);

describe("against the contract", () => {
  test("nothing agreed: the rate is told, nothing is judged", () => {
    expect(compute({}).verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(compute({}).verdict.because).toContain("between 2.17\u00a0a year and 4.25\u00a0a year");
  });

  test("the rate decides, from both sides; the interval says whether it can be chance", () => {
    const at = (most: number) => compute({ most: most / year }).verdict;
    expect(at(37 / 12).word).toBe("Within");
    expect(at(37 / 12 - 0.001).word).toBe("Outside");
    expect(at(2.5).because).toContain("can be chance");
    expect(at(2).because).toContain("no chance");
    expect(at(5)).toMatchObject({ word: "Within", holds: true });
    expect(at(5).because).toContain("no chance");
  });

  test("availability, from both sides", () => {
    const down = 0.01 * 12 * year;
    expect(compute({ least: 0.99, down }).verdict.word).toBe("Within");
    expect(compute({ least: 0.99, down: down * 1.001 }).verdict.word).toBe("Outside");
  });
});

test("no call in a year: no mean time, but at least so long", () => {
  const { values } = compute({ lifts: 1, calls: 0 });
  expect(values.map((each) => each.key)).not.toContain("mtbf");
  // 8760 h over 3.6888795, the upper end of nothing counted.
  expect((values.find((each) => each.key === "mtbfLeast")?.value ?? 0) / 3600).toBeCloseTo(
    8760 / 3.6888795,
    3,
  );
});

test("more down time than was watched gets a sentence at its field, and no availability", () => {
  const input = { lifts: 1, down: year + 3600, least: 0.99 };
  expect(compute(input).problems.map((each) => each.field)).toEqual(["down"]);
  expect(keys(input)).not.toContain("availability");
});

test("the period before: half of it is told at the field that is missing; a real change is named", () => {
  expect(compute({ callsBefore: 3 }).problems.map((each) => each.field)).toEqual(["periodBefore"]);
  expect(compute({ callsBefore: 90, periodBefore: year }).notes[0]).toContain("it has become less");
  expect(compute({ callsBefore: 9, periodBefore: year }).notes[0]).toContain("it has become more");
});

test("the curve falls, and at the upper end of the interval it stands at its tail", () => {
  const [curve] = compute({}).drawings;
  if (curve?.kind !== "curve") throw new Error("The curve is missing.");
  const chances = curve.series[0]?.points.map(([, chance]) => chance) ?? [];
  expect(chances[0]).toBe(1);
  for (let index = 1; index < chances.length; index += 1) {
    expect(chances[index]).toBeLessThanOrEqual(chances[index - 1] ?? 0);
  }
  const upper = compute({}).values.find((each) => each.key === "rateUpper")?.value ?? 0;
  const [marked] = compute({ most: upper }).drawings;
  if (marked?.kind !== "curve") throw new Error("The curve is missing.");
  expect(marked.marks[0]?.y).toBeCloseTo(0.025, 9);
});
