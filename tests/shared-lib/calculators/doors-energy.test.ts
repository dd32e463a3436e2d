import { describe, expect, test } from "vitest";
import { doorsEnergy } from "#shared-lib/calculators/doors-energy.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";

const base = { arrangement: "side-opening", width: 0.9, mass: 100 } as const;
const compute = (input: CalculatorInput) => doorsEnergy.compute({ ...base, ...input });
const word = (input: CalculatorInput) => compute(input).verdict.word;
const lineValue = (key: string, input: CalculatorInput) =>
  compute(input).values.find((each) => each.key === key)?.value;

describe("energy", () => {
  test("10 J with a working device, from both sides", () => {
    const shortest = lineValue("shortest10", {}) ?? 0;
    expect(word({ closingTime: shortest })).toBe("Within");
    expect(word({ closingTime: shortest - 1e-4 })).toBe("Outside");
  });

  test("4 J with a failed device, from both sides, and an acoustic signal", () => {
    const shortest = lineValue("shortest4", {}) ?? 0;
    expect(word({ device: "failed", closingTime: shortest })).toBe("Within");
    expect(word({ device: "failed", closingTime: shortest - 1e-4 })).toBe("Outside");
    expect(compute({ device: "failed" }).notes[0]).toContain("acoustic signal");
  });

  test("an average speed is taken as it is; the time of the other choice does not count", () => {
    expect(lineValue("energy", { measured: "speed", closingSpeed: 0.4, closingTime: 1 })).toBeCloseTo(8, 12);
    expect(word({ measured: "speed", closingTime: 1 })).toBe("Not enough");
  });

  test("says how long the closing must take", () => {
    const { verdict } = compute({ closingTime: 1.2 });
    expect(verdict.next).toContain("at least 1.79\u00a0s over 800\u00a0mm");
    expect(verdict.until).toContain("can hurt");
    expect(compute({}).verdict.sentence).toContain("at least 1.79\u00a0s");
  });

  test("slow panels count a quarter; a centre opening moves half of the width", () => {
    const telescopic = { arrangement: "side-telescopic", fastMass: 60, slowMass: 60 } as const;
    expect(lineValue("mass", telescopic)).toBe(75);
    expect(lineValue("travel", telescopic)).toBeCloseTo(0.8, 12);
    expect(lineValue("travel", { ...telescopic, arrangement: "centre-telescopic" })).toBeCloseTo(0.4, 12);
    expect(compute({ arrangement: "side-telescopic" }).missing).toEqual(["fastMass", "slowMass"]);
  });
});

test("force of 150 N, from both sides", () => {
  const closingTime = 3;
  expect(word({ closingTime, force: 150 })).toBe("Within");
  const { verdict } = compute({ closingTime, force: 151 });
  expect(verdict).toMatchObject({ word: "Outside", holds: false });
  expect(verdict.sentence).toContain("151\u00a0N");
});

test("limits of other regions are not mixed in", () => {
  const { comparisons, notes } = compute({ closingTime: 2, force: 140 });
  for (const each of comparisons) expect(each.limit.source.document).toBe("EN 81-20");
  expect(comparisons.map((each) => each.limit.most)).toEqual([10, 150]);
  expect(notes.join(" ")).toContain("do not mix");
});

test("the limits say that they are second-hand", () => {
  for (const each of compute({ closingTime: 2, force: 140 }).comparisons) {
    expect(each.rest).toContain("EN 81-20:2020, 5.3.6.2.2.1 (from notes on the clause");
  }
});
