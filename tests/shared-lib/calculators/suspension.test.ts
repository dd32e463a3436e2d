import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { suspension } from "#shared-lib/calculators/suspension.ts";
import { requiredByBends } from "#shared-lib/calculators/suspension-physics.ts";

const base = {
  ropes: 5,
  ropeDiameter: 0.01,
  breakingFrom: "certificate",
  breakingForce: 43_950,
  roping: "1:1",
  car: 1000,
  ratedLoad: 630,
  ropeMass: 35,
  sheave: 0.4,
  groove: "round",
  simpleBends: 0,
  reversedBends: 0,
} as const;
const compute = (input: CalculatorInput) => suspension.compute({ ...base, ...input });
const value = (input: CalculatorInput, key: string): number =>
  compute(input).values.find((each) => each.key === key)?.value ?? Number.NaN;

describe("which factor governs", () => {
  test("the fixed one where the bends ask for less", () => {
    expect(value({}, "byBends")).toBeLessThan(12);
    const { verdict } = compute({});
    expect(verdict).toMatchObject({ word: "Within", holds: true });
    expect(verdict.sentence).toContain("13.46; 12.00 is needed");
    expect(verdict.because).toContain("fixed value governs");
  });

  test("the bends where they ask for more: 13.46 is under 14.52 for five equivalent pulleys", () => {
    const { verdict, comparisons } = compute({ simpleBends: 4, pulley: 0.4 });
    expect(verdict).toMatchObject({ word: "Outside", holds: false });
    expect(verdict.sentence).toContain("13.46; 14.52 is needed");
    expect(comparisons.map((each) => [each.key, each.holds])).toEqual([
      ["bends", false],
      ["fixed", true],
      ["ratio", true],
      ["diameter", true],
    ]);
    expect(verdict.next).toContain("it takes 6 such ropes");
  });

  test("two ropes need 16, three 12", () => {
    expect(value({ ropes: 2 }, "fixed")).toBe(16);
    expect(value({ ropes: 3 }, "fixed")).toBe(12);
  });

  test("the fixed limit from both sides", () => {
    const force = value({}, "force");
    const at = (factor: number) => compute({ breakingForce: factor * force }).verdict.word;
    expect([at(12), at(12 - 1e-4)]).toEqual(["Within", "Outside"]);
  });
});

describe("refuses what the diagram does not cover", () => {
  test("outside 34 to 80 nothing is read, and says so at the sheave", () => {
    const far = compute({ sheave: 0.81 });
    expect(far.problems.map((each) => each.field)).toEqual(["sheave"]);
    expect(far.verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(far.values.map((each) => each.key)).not.toContain("byBends");
    expect(compute({ sheave: 0.8 }).verdict.word).toBe("Within");
    expect([requiredByBends(33.99, 5), requiredByBends(80.01, 5)]).toEqual([null, null]);
    expect(requiredByBends(34, 5)).not.toBeNull();
  });

  test("an angle outside the table gets a sentence at its field", () => {
    const wide = compute({ groove: "undercut", undercutAngle: (106 * Math.PI) / 180 });
    expect(wide.problems[0]?.field).toBe("undercutAngle");
    expect(wide.verdict.word).toBe("Not enough");
  });
});

test("pulleys need their diameter, and a small one fails by its ratio", () => {
  expect(compute({ simpleBends: 1 }).missing).toEqual(["pulley"]);
  const small = compute({ simpleBends: 1, pulley: 0.39, breakingForce: 100_000 });
  expect(small.verdict).toMatchObject({
    word: "Outside",
    sentence: "Sheave or pulley is too small for this rope.",
  });
  expect(small.comparisons.find((each) => each.key === "ratio")).toMatchObject({
    holds: false,
    field: "pulley",
  });
});

test("from the construction, and a grade that belongs to the other core is named", () => {
  const made = { breakingFrom: "construction", construction: "8x19 fibre" } as const;
  expect(value({ ...made, tensile: "1500" }, "breaking")).toBeCloseTo(43_950, 6);
  expect(compute({ ...made, tensile: "1500" }).problems).toEqual([]);
  expect(compute({ ...made, tensile: "1570" }).problems.map((each) => each.field)).toEqual(["tensile"]);
});

test("2:1 halves what hangs on one rope, but not the weight of the rope itself", () => {
  expect(value({ roping: "2:1", ropeMass: 0 }, "force")).toBeCloseTo(value({ ropeMass: 0 }, "force") / 2, 9);
  expect(value({ roping: "2:1" }, "force")).toBeGreaterThan(value({}, "force") / 2);
});

test("monotone: more bends ask for more, a larger sheave for less, more ropes carry more", () => {
  const ratio = fc.double({ min: 34, max: 79, noNaN: true });
  const bends = fc.double({ min: 1, max: 100, noNaN: true });
  fc.assert(
    fc.property(ratio, bends, (place, count) => {
      const needed = requiredByBends(place, count) ?? 0;
      expect(requiredByBends(place, count * 1.05) ?? 0).toBeGreaterThan(needed);
      expect(requiredByBends(place + 1, count) ?? 0).toBeLessThan(needed);
    }),
  );
  expect(value({ ropes: 6 }, "actual")).toBeGreaterThan(value({ ropes: 5 }, "actual"));
});
