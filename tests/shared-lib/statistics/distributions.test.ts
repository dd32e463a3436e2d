import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { betaProbability, betaQuantile } from "#shared-lib/statistics/incomplete-beta.ts";
import { gammaProbability, gammaQuantile } from "#shared-lib/statistics/incomplete-gamma.ts";
import { logGamma } from "#shared-lib/statistics/log-gamma.ts";
import { normalProbability, normalQuantile } from "#shared-lib/statistics/normal.ts";

const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);
const shape = fc.double({ min: 0.05, max: 1e5, noNaN: true });
const probability = fc.double({ min: 1e-6, max: 0.5, noNaN: true });
const tail = fc.constantFrom("lower" as const, "upper" as const);

describe("closed forms", () => {
  test("gamma of shape 1 is exponential in both tails", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-8, max: 600, noNaN: true }), (x) => {
        expect(relative(gammaProbability(x, 1, "upper"), Math.exp(-x))).toBeLessThan(1e-12);
        expect(relative(gammaProbability(x, 1, "lower"), -Math.expm1(-x))).toBeLessThan(1e-12);
      }),
    );
  });

  test("beta with a shape of 1 is a power in both tails", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-8, max: 0.999, noNaN: true }), shape, (x, b) => {
        const upper = Math.exp(b * Math.log1p(-x));
        fc.pre(upper > 1e-280);
        expect(relative(betaProbability(x, 1, b, "upper"), upper)).toBeLessThan(1e-9);
      }),
    );
  });

  test("logGamma steps by the logarithm", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e6, noNaN: true }), (x) => {
        const scale = Math.max(1, Math.abs(logGamma(x)));
        expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x)) / scale).toBeLessThan(1e-13);
      }),
    );
  });
});

describe("quantile and probability undo each other", () => {
  test("gamma", () => {
    fc.assert(
      fc.property(probability, shape, tail, (p, a, side) => {
        expect(relative(gammaProbability(gammaQuantile(p, a, side), a, side), p)).toBeLessThan(1e-9);
      }),
    );
  });

  test("beta", () => {
    fc.assert(
      fc.property(probability, fc.double({ min: 0.5, max: 1e4, noNaN: true }), tail, (p, a, side) => {
        for (const b of [0.5, 1, 30, 5000]) {
          const x = betaQuantile(p, a, b, side);
          // Where x rounds to 1 the upper tail cannot be asked for through x any more.
          if (x > 1 - 1e-6) continue;
          expect(relative(betaProbability(x, a, b, side), p)).toBeLessThan(1e-8);
        }
      }),
    );
  });

  test("normal", () => {
    fc.assert(
      fc.property(probability, tail, (p, side) => {
        expect(relative(normalProbability(normalQuantile(p, side), side), p)).toBeLessThan(1e-10);
      }),
    );
  });
});

test("both tails together are 1, and more x is more probability", () => {
  fc.assert(
    fc.property(shape, fc.double({ min: 0.01, max: 3, noNaN: true }), (a, share) => {
      const x = a * share;
      const lower = gammaProbability(x, a, "lower");
      expect(lower + gammaProbability(x, a, "upper")).toBeCloseTo(1, 12);
      expect(gammaProbability(x * 1.01, a, "lower")).toBeGreaterThanOrEqual(lower - 1e-12);
    }),
  );
});

test("nonsense is refused", () => {
  expect(() => gammaQuantile(0, 1, "lower")).toThrow(RangeError);
  expect(() => gammaQuantile(1, 1, "lower")).toThrow(RangeError);
  expect(() => gammaQuantile(0.5, 0, "lower")).toThrow(RangeError);
  expect(() => gammaQuantile(Number.NaN, 1, "lower")).toThrow(RangeError);
  expect(() => gammaProbability(-1, 1, "lower")).toThrow(RangeError);
  expect(() => betaProbability(1.1, 1, 1, "lower")).toThrow(RangeError);
  expect(() => betaQuantile(0.5, -1, 1, "upper")).toThrow(RangeError);
  expect(() => logGamma(0)).toThrow(RangeError);
});
