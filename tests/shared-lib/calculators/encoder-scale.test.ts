import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countsPerMetre, ropingNames, ropingRatio } from "#shared-lib/calculators/drive-physics.ts";
import { encoderScale } from "#shared-lib/calculators/encoder-scale.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";

const base = { sheaveDiameter: 0.4, roping: "2:1", place: "sheave", pulses: 1024, edges: "4" } as const;
const compute = (input: CalculatorInput) => encoderScale.compute({ ...base, ...input });
const scale = countsPerMetre({ sheaveDiameter: 0.4, roping: 2, turns: 1, pulses: 1024, edges: 4 });
const counted = (ratio: number, more: CalculatorInput = {}) =>
  compute({ travel: 20, count: Math.round(20 * scale * ratio), ...more }).verdict;

describe("which entry is wrong", () => {
  test("1:1 for 2:1 and 2 edges for 4 both halve the count: both are named", () => {
    const verdict = counted(0.5);
    expect(verdict).toMatchObject({ word: "Outside", holds: false });
    expect(verdict.because).toContain("the roping is 1:1, not 2:1");
    expect(verdict.because).toContain("2 of each pulse's edges are counted, not 4");
    expect(verdict.because).not.toContain("sheave measures");
  });

  test("a quarter: only edges; twice: only roping", () => {
    expect(counted(0.25).because).toMatch(/^It fits if 1 of each pulse's edges are counted, not 4/);
    expect(counted(0.25).because).not.toContain("roping");
    expect(counted(2).because).toContain("the roping is 4:1, not 2:1");
    expect(counted(2).because).not.toContain("edges");
  });

  test("an eighth needs two wrong entries", () => {
    expect(counted(1 / 8).because).toContain("roping and edges are 1:1 and 1, not 2:1 and 4");
  });

  test("4 % more: the sheave that fits, and no roping", () => {
    const { because } = counted(1.04, { tolerance: 0.002 });
    expect(because).toContain("the sheave measures 384.6\u00a0mm, not 400.0\u00a0mm");
    expect(because).not.toContain("roping");
  });

  test("1000 for 1024 pulses is named beside the sheave", () => {
    const { because } = counted(1000 / 1024, { tolerance: 0.002 });
    expect(because).toContain("the encoder gives 1000 pulses, not 1024");
    expect(because).toContain("the sheave measures");
  });

  test("a ratio that nothing explains", () => {
    const { because, next } = counted(3.1, { tolerance: 0.005, pulses: 1023 });
    expect(because).toContain("No roping, edges");
    expect(next).toContain("in both directions");
  });

  test("the diameter that is named makes the scale right", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 1.25, noNaN: true }), (ratio) => {
        fc.pre(Math.abs(ratio - 1) > 0.02);
        const count = Math.round(100 * scale * ratio);
        const again = compute({ travel: 100, count, sheaveDiameter: (0.4 * 100 * scale) / count });
        expect(again.verdict.word).toBe("Within");
      }),
    );
  });
});

describe("within and outside", () => {
  test("the allowed difference, from both sides", () => {
    const at = (difference: number) => counted(1 + difference).word;
    expect([at(0.0099), at(0.0101), at(-0.0099), at(-0.0101)]).toEqual([
      "Within",
      "Outside",
      "Within",
      "Outside",
    ]);
  });

  test("a wrong scale in the controller", () => {
    expect(compute({ setScale: scale * 1.005 }).verdict.word).toBe("Within");
    const { verdict } = compute({ setScale: scale * 2 });
    expect(verdict).toMatchObject({ word: "Outside", holds: false });
    expect(verdict.sentence).toContain("not the one of these entries");
  });

  test("nothing measured: tells the scale and judges nothing", () => {
    expect(compute({}).verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(compute({}).verdict.sentence).toBe("One millimetre of travel is 6.519 counts.");
  });

  test("half of a run gets a sentence at the missing field", () => {
    expect(compute({ travel: 20 }).problems.map(({ field }) => field)).toEqual(["count"]);
    expect(compute({ count: 20 }).problems.map(({ field }) => field)).toEqual(["travel"]);
  });
});

test("with the encoder on the motor the gear is needed and multiplies the counts", () => {
  expect(compute({ place: "motor" }).missing).toEqual(["gear"]);
  const of = (input: CalculatorInput) => compute(input).values.find(({ key }) => key === "scale")?.value ?? 0;
  expect(of({ place: "motor", gear: 41 }) / of({})).toBeCloseTo(41, 10);
});

test("more of pulses, edges, roping or gear, more counts; a larger sheave, fewer", () => {
  for (const roping of ropingNames) {
    const entered = { pulses: 500, edges: 2, turns: 3, roping: ropingRatio[roping], sheaveDiameter: 0.5 };
    const now = countsPerMetre(entered);
    for (const key of ["pulses", "edges", "turns", "roping"] as const) {
      expect(countsPerMetre({ ...entered, [key]: entered[key] * 2 })).toBeCloseTo(2 * now, 8);
    }
    expect(countsPerMetre({ ...entered, sheaveDiameter: 0.6 })).toBeLessThan(now);
  }
});
