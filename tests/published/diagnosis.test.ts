import { describe, expect, test } from "vitest";
import { dirichletMean, priorCounts } from "#shared-lib/diagnosis/pool-counts.ts";
import { expectedRepairMinutes, repairOrder } from "#shared-lib/diagnosis/repair-order.ts";
import { betaQuantile } from "#shared-lib/statistics/incomplete-beta.ts";

const repairs = (probability: Record<string, number>, minutes: Record<string, number>) =>
  Object.entries(probability).map(([causeKey, p]) => ({
    causeKey,
    probability: p,
    minutes: minutes[causeKey] as number,
  }));
const keys = (list: readonly { causeKey: string }[]): string => list.map(({ causeKey }) => causeKey).join("");

/**
 * Order by probability over time with one fault: Heckerman, Breese and Rommelse (1995), Communications of the ACM
 * 38(3):49-57, and Kadane and Simon (1977). Status: the rule is published, the numbers were made with it and verified
 * over all 24 orders ("pc-order-4").
 */
describe("repairs by p/c, four causes", () => {
  const four = repairs({ A: 0.45, B: 0.3, C: 0.15, D: 0.1 }, { A: 30, B: 5, C: 8, D: 20 });

  test("order B C A D, expected cost 29.1; by probability alone 36.75; worst 52.1", () => {
    const best = repairOrder(four);
    expect(keys(best)).toBe("BCAD");
    expect(expectedRepairMinutes(best)).toBeCloseTo(29.1, 9);
    expect(expectedRepairMinutes(four)).toBeCloseTo(36.75, 9);
    expect(expectedRepairMinutes([...best].reverse())).toBeCloseTo(52.1, 9);
  });
});

/** The same scheme with a test before it; status: numbers made on the 1995 scheme, verified by enumeration ("voi-test-3causes"). */
describe("what a test is worth before the repairs, three causes", () => {
  const cost = { A: 60, B: 25, C: 40 };
  const answered = (likelihood: Record<string, number>) => {
    const prior: Record<string, number> = { A: 0.5, B: 0.3, C: 0.2 };
    const joint = Object.entries(prior).map(([key, p]) => [key, p * (likelihood[key] as number)] as const);
    const sum = joint.reduce((total, [, p]) => total + p, 0);
    return {
      sum,
      order: repairOrder(repairs(Object.fromEntries(joint.map(([key, p]) => [key, p / sum])), cost)),
    };
  };

  test("75 minutes without it; positive A B C, negative B C A, 58.25 minutes with it", () => {
    const without = answered({ A: 1, B: 1, C: 1 });
    expect(expectedRepairMinutes(without.order)).toBeCloseTo(75, 9);
    const positive = answered({ A: 0.9, B: 0.15, C: 0.15 });
    const negative = answered({ A: 0.1, B: 0.85, C: 0.85 });
    expect([positive.sum, keys(positive.order)]).toEqual([expect.closeTo(0.525, 9), "ABC"]);
    expect([negative.sum, keys(negative.order)]).toEqual([expect.closeTo(0.475, 9), "BCA"]);
    expect(expectedRepairMinutes(positive.order)).toBeCloseTo(65.85714285714286, 9);
    expect(expectedRepairMinutes(negative.order)).toBeCloseTo(49.84210526315789, 9);
    const mean =
      positive.sum * expectedRepairMinutes(positive.order) +
      negative.sum * expectedRepairMinutes(negative.order);
    expect(mean).toBeCloseTo(58.25, 9);
  });
});

/** Jeffreys' prior of 0.5 a cause on counts; status: made from the formula ("dirichlet-jeffreys"). */
describe("Dirichlet with Jeffreys' prior", () => {
  const counts = [12, 5, 2, 1, 0];
  const causes = ["a", "b", "c", "d", "e"];

  test("means of five causes, and the interval of the first", () => {
    const mean = dirichletMean(
      new Map(causes.map((key, index) => [key, counts[index] as number])),
      priorCounts(causes, false),
    );
    for (const [index, value] of [0.5555556, 0.2444444, 0.1111111, 0.0666667, 0.0222222].entries())
      expect(mean.get(causes[index] as string)).toBeCloseTo(value, 6);
    expect(betaQuantile(0.025, 12.5, 10, "lower")).toBeCloseTo(0.3520676, 6);
    expect(betaQuantile(0.975, 12.5, 10, "lower")).toBeCloseTo(0.7496825, 6);
  });
});
