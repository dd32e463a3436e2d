import { deviance, stirlingError } from "./log-gamma.ts";
import { lentzFraction, solveQuantile, type Tail } from "./numeric.ts";

/**
 * Regularised incomplete beta function, both tails: continued fraction of Abramowitz and Stegun 26.5.8 on the side of
 * the mean on which it converges fast. x is passed together with 1 - x, so that neither end loses digits.
 */
interface Share {
  readonly x: number;
  /** 1 - x */
  readonly rest: number;
}

/** x^a (1 - x)^b / B(a, b), which is x (1 - x) times the density at x. */
function scaledDensity(a: number, b: number, { x, rest }: Share): number {
  const sum = a + b;
  const exponent =
    -a * deviance((x * sum) / a) -
    b * deviance((rest * sum) / b) +
    stirlingError(sum) -
    stirlingError(a) -
    stirlingError(b);
  return Math.sqrt((a / (2 * Math.PI)) * (b / sum)) * Math.exp(exponent);
}

function lowerByFraction(a: number, b: number, share: Share): number {
  const { x } = share;
  const fraction = lentzFraction(1, (index) => {
    const half = Math.floor(index / 2);
    const numerator =
      index % 2 === 1
        ? (-(a + half) * (a + b + half) * x) / ((a + 2 * half) * (a + 2 * half + 1))
        : (half * (b - half) * x) / ((a + 2 * half - 1) * (a + 2 * half));
    return [numerator, 1];
  });
  return scaledDensity(a, b, share) / (a * fraction);
}

function check(a: number, b: number): void {
  if (!(a > 0 && b > 0 && Number.isFinite(a + b))) {
    throw new RangeError(`Both shapes must be positive, not ${a} and ${b}`);
  }
}

function probabilityAt(share: Share, a: number, b: number, tail: Tail): number {
  if (share.x <= 0 || share.rest <= 0) return share.x <= 0 === (tail === "upper") ? 1 : 0;
  const direct: Tail = share.x < (a + 1) / (a + b + 2) ? "lower" : "upper";
  const turned: Share = { x: share.rest, rest: share.x };
  const found = direct === "lower" ? lowerByFraction(a, b, share) : lowerByFraction(b, a, turned);
  const probability = Math.min(1, found);
  return tail === direct ? probability : 1 - probability;
}

/** Probability that a beta variable of these shapes is below (lower) or above (upper) x, 0 <= x <= 1. */
export function betaProbability(x: number, a: number, b: number, tail: Tail): number {
  check(a, b);
  if (!(x >= 0 && x <= 1)) throw new RangeError(`x lies between 0 and 1, not ${x}`);
  return probabilityAt({ x, rest: 1 - x }, a, b, tail);
}

const shareAt = (logit: number): Share => ({
  x: 1 / (1 + Math.exp(-logit)),
  rest: 1 / (1 + Math.exp(logit)),
});

/** x below (lower) or above (upper) which a beta variable lies with this probability, 0 < probability < 1. */
export function betaQuantile(probability: number, a: number, b: number, tail: Tail): number {
  check(a, b);
  const logit = solveQuantile(probability, tail, Math.log(a / b), (at, side) => {
    const share = shareAt(at);
    return { probability: probabilityAt(share, a, b, side), slope: scaledDensity(a, b, share) };
  });
  return shareAt(logit).x;
}
