import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { ropeElongation } from "#shared-lib/calculators/rope-elongation.ts";

/** The lift of Ex 5l: 17.31 mm with 630 kg. */
const base = {
  roping: "1:1",
  ropes: 5,
  height: 30,
  areaFrom: "construction",
  construction: "8-strand fibre",
  ropeDiameter: 0.01,
  modulus: 60e9,
  load: 630,
  below: 0,
  relevels: "none",
} as const;
const compute = (input: CalculatorInput) => ropeElongation.compute({ ...base, ...input });
const value = (input: CalculatorInput, key: string): number =>
  compute(input).values.find((each) => each.key === key)?.value ?? Number.NaN;

describe("against the levelling accuracy", () => {
  test("17.31 mm are within 20 mm, until the car stood 5 mm low before", () => {
    expect(value({}, "sink") * 1000).toBeCloseTo(17.31, 2);
    expect(compute({}).verdict).toMatchObject({ word: "Within", holds: true });
    const low = compute({ below: 0.005 }).verdict;
    expect(low).toMatchObject({ word: "Outside", holds: false });
    expect(low.because).toContain("From 546\u00a0kg on");
  });

  test("the limit from both sides", () => {
    const load = value({}, "untilLimit");
    expect(compute({ load }).verdict.word).toBe("Within");
    expect(compute({ load: load + 0.01 }).verdict.word).toBe("Outside");
  });

  test("re-levelling corrects it: it must begin before 20 mm, and where it begins must be known", () => {
    const works = { load: 1000, relevels: "works" } as const;
    expect(compute(works).verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(compute({ ...works, relevelAt: 0.012 }).verdict.sentence).toContain("begins after 437\u00a0kg");
    expect(compute({ ...works, relevelAt: 0.02 }).verdict.holds).toBe(true);
    expect(compute({ ...works, relevelAt: 0.0201 }).verdict.holds).toBe(false);
  });
});

test("springs add to it, over 2:1 a quarter of it", () => {
  const springs = value({ spring: 100_000 }, "ofSprings");
  expect(springs).toBeCloseTo((630 * 9.80665) / (5 * 100_000), 12);
  expect(value({ spring: 100_000, roping: "2:1" }, "ofSprings")).toBeCloseTo(springs / 4, 12);
  expect(value({}, "ofSprings")).toBe(0);
});

test("a measured sink that ropes do not explain is named", () => {
  expect(compute({ measured: 0.018 }).notes[0]).toContain("explain what was measured");
  expect(compute({ measured: 0.03 }).notes[0]).toContain("12.7\u00a0mm more than ropes and springs explain");
});

test("a stop worse than 10 mm gets a sentence at its field", () => {
  expect(compute({ below: 0.01 }).problems).toEqual([]);
  expect(compute({ below: 0.011 }).problems.map((each) => each.field)).toEqual(["below"]);
});
