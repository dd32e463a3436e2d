import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { betaProbability, betaQuantile } from "#shared-lib/statistics/incomplete-beta.ts";
import { gammaProbability, gammaQuantile } from "#shared-lib/statistics/incomplete-gamma.ts";
import { logGamma } from "#shared-lib/statistics/log-gamma.ts";
import { normalProbability, normalQuantile } from "#shared-lib/statistics/normal.ts";

/** Rows of numbers below the source line and the head line. */
function rowsOf(name: string): number[][] {
  const lines = readFileSync(new URL(name, import.meta.url), "utf8")
    .trim()
    .split("\n");
  return lines.slice(2).map((line) => line.split(",").map(Number));
}

const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

function worst(rows: readonly number[][], errorOf: (row: readonly number[]) => number): number {
  return rows.reduce((largest, row) => Math.max(largest, errorOf(row)), 0);
}

describe("quantiles made with R 4.2.2, relative error below 1e-10", () => {
  const gammaRows = rowsOf("quantiles-gamma.csv");
  const betaRows = rowsOf("quantiles-beta.csv");

  test("the tables are the whole tables", () => {
    expect([gammaRows.length, betaRows.length]).toEqual([900, 432]);
  });

  test("gamma, lower tail", () => {
    const error = worst(gammaRows, ([a = 0, p = 0, q = 0]) => relative(gammaQuantile(p, a, "lower"), q));
    expect(error).toBeLessThan(1e-10);
  });

  test("gamma, upper tail", () => {
    const error = worst(gammaRows, ([a = 0, p = 0, q = 0]) => relative(gammaQuantile(1 - p, a, "upper"), q));
    expect(error).toBeLessThan(1e-10);
  });

  test("gamma, back from the quantile to the probability", () => {
    // The table has 15 digits, so a probability can only come back as exactly as density times quantile allows.
    const error = worst(gammaRows, ([a = 0, p = 0, q = 0]) => relative(gammaProbability(q, a, "lower"), p));
    expect(error).toBeLessThan(1e-10);
  });

  test("beta, lower tail", () => {
    const error = worst(betaRows, ([a = 0, b = 0, p = 0, q = 0]) =>
      relative(betaQuantile(p, a, b, "lower"), q),
    );
    expect(error).toBeLessThan(1e-10);
  });

  test("beta, upper tail, mirrored", () => {
    const error = worst(
      betaRows,
      ([a = 0, b = 0, p = 0, q = 0]) => Math.abs(1 - betaQuantile(p, b, a, "upper") - q) / q,
    );
    // 1 - x loses digits of a small x: this compares the tail, not the last digits.
    expect(error).toBeLessThan(1e-8);
  });

  test("beta, back from the quantile to the probability", () => {
    const error = worst(betaRows, ([a = 0, b = 0, p = 0, q = 0]) => {
      const [tail, expected] = p < 0.5 ? (["lower", p] as const) : (["upper", 1 - p] as const);
      // A quantile near 1 is printed to 15 digits: what is left of 1 - q has fewer.
      const digits = 3e-15 / Math.min(q, 1 - q);
      return relative(betaProbability(q, a, b, tail), expected) / Math.max(1, digits / 1e-12);
    });
    expect(error).toBeLessThan(1e-10);
  });
});

describe("normal distribution and logarithm of the gamma function", () => {
  // Published tables (any statistics book; digits of NIST DLMF and Abramowitz and Stegun tables 26.1 and 6.1).
  test.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [1.959963984540054, 0.975],
    [-1, 0.158655253931457],
    [-3, 0.00134989803163009],
  ])("probability below %d", (z, p) => {
    expect(relative(normalProbability(z, "lower"), p)).toBeLessThan(1e-13);
    expect(relative(normalProbability(-z, "upper"), p)).toBeLessThan(1e-13);
  });

  test.each([
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489],
    [0.05, -1.64485362695147],
  ])("quantile of %d", (p, z) => {
    expect(relative(normalQuantile(p, "lower"), z)).toBeLessThan(1e-13);
    expect(relative(normalQuantile(p, "upper"), -z)).toBeLessThan(1e-13);
  });

  test("factorials and the half", () => {
    expect(relative(logGamma(0.5), Math.log(Math.PI) / 2)).toBeLessThan(1e-14);
    expect(relative(logGamma(11), Math.log(3_628_800))).toBeLessThan(1e-14);
    expect(relative(logGamma(171), 706.573062245787)).toBeLessThan(1e-14);
    expect(Math.abs(logGamma(1))).toBeLessThan(1e-14);
    expect(Math.abs(logGamma(2))).toBeLessThan(1e-14);
  });
});
