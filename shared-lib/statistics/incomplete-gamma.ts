import { deviance, stirlingError } from "./log-gamma.ts";
import { convergedSum, lentzFraction, solveQuantile, type Tail } from "./numeric.ts";

/**
 * Regularised incomplete gamma function, both tails: series and continued fraction of Abramowitz and Stegun 6.5.29
 * and 6.5.31, each tail from the side on which it does not cancel.
 */

/** x^a e^-x / Gamma(a), which is x times the density at x. */
function scaledDensity(shape: number, x: number): number {
  return Math.sqrt(shape / (2 * Math.PI)) * Math.exp(-shape * deviance(x / shape) - stirlingError(shape));
}

/** P(a, x) = x^a e^-x / Gamma(a + 1) (1 + x/(a + 1) + x²/((a + 1)(a + 2)) + ...) */
const bySeries = (shape: number, x: number): number =>
  (scaledDensity(shape, x) / shape) * convergedSum(1, (index) => x / (shape + index));

/** Q(a, x) = x^a e^-x / Gamma(a) / (x + 1 - a - 1 (1 - a)/(x + 3 - a - ...)) */
const byFraction = (shape: number, x: number): number =>
  scaledDensity(shape, x) /
  lentzFraction(x + 1 - shape, (index) => [index * (shape - index), x + 2 * index + 1 - shape]);

function check(shape: number): void {
  if (!(shape > 0) || !Number.isFinite(shape))
    throw new RangeError(`The shape must be positive, not ${shape}`);
}

/**
 * Probability that a gamma variable of this shape and scale 1 is below (lower) or above (upper) x.
 * @param x >= 0
 */
export function gammaProbability(x: number, shape: number, tail: Tail): number {
  check(shape);
  if (!(x >= 0)) throw new RangeError(`x must not be negative, as ${x} is`);
  if (x === 0 || x === Number.POSITIVE_INFINITY) return (x === 0) === (tail === "upper") ? 1 : 0;
  const direct: Tail = x < shape + 1 ? "lower" : "upper";
  const probability = Math.min(1, direct === "lower" ? bySeries(shape, x) : byFraction(shape, x));
  return tail === direct ? probability : 1 - probability;
}

/** Start of the search: Wilson and Hilferty's cube, or the leading term x^a / Gamma(a + 1) where that is too low. */
function startOf(shape: number): number {
  return Math.log(shape) + (shape < 1 ? 0 : Math.log(Math.max(0.1, (1 - 1 / (9 * shape)) ** 3)));
}

/**
 * x below (lower) or above (upper) which a gamma variable of this shape lies with this probability.
 * @param probability between 0 and 1, both exclusive
 */
export function gammaQuantile(probability: number, shape: number, tail: Tail): number {
  check(shape);
  const u = solveQuantile(probability, tail, startOf(shape), (at, side) => {
    const x = Math.exp(at);
    return { probability: gammaProbability(x, shape, side), slope: scaledDensity(shape, x) };
  });
  return Math.exp(u);
}
