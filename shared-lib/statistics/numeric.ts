/** Which end of a distribution a probability counts from. */
export type Tail = "lower" | "upper";

const enough = 1e-16;
const mostSteps = 1_000_000;

/** Sum first + first r(1) + first r(1) r(2) + ... until a term no longer counts. */
export function convergedSum(first: number, ratio: (index: number) => number): number {
  let term = first;
  let sum = first;
  for (let index = 1; index < mostSteps; index += 1) {
    term *= ratio(index);
    sum += term;
    if (Math.abs(term) < Math.abs(sum) * enough) return sum;
  }
  throw new RangeError("A series did not converge.");
}

/** b0 + a1/(b1 + a2/(b2 + ...)) by the modified method of Lentz (Thompson and Barnett 1986). */
export function lentzFraction(b0: number, parts: (index: number) => readonly [number, number]): number {
  const tiny = 1e-300;
  let value = b0 === 0 ? tiny : b0;
  let c = value;
  let d = 0;
  for (let index = 1; index < mostSteps; index += 1) {
    const [a, b] = parts(index);
    d = b + a * d;
    d = 1 / (d === 0 ? tiny : d);
    c = b + a / c;
    if (c === 0) c = tiny;
    value *= c * d;
    if (Math.abs(c * d - 1) < 4 * Number.EPSILON) return value;
  }
  throw new RangeError("A continued fraction did not converge.");
}

export interface At {
  readonly probability: number;
  /** Change of the lower probability per unit of the search variable. */
  readonly slope: number;
}

/**
 * Newton's method on the logarithm of the smaller tail, kept inside a bracket. The search variable is a logarithm
 * or a logit of the quantile, so that a step is a relative error.
 */
export function solveQuantile(
  probability: number,
  tail: Tail,
  start: number,
  evaluate: (at: number, tail: Tail) => At,
): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`A probability lies between 0 and 1, not ${probability}`);
  }
  const swap = probability > 0.5;
  const side: Tail = swap === (tail === "lower") ? "upper" : "lower";
  const target = Math.log(swap ? 1 - probability : probability);
  const rising = side === "lower" ? 1 : -1;
  let [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let at = start;
  for (let step = 0; step < 2000; step += 1) {
    const { probability: there, slope } = evaluate(at, side);
    const miss = Math.log(there) - target;
    if (miss * rising > 0) most = at;
    else least = at;
    const newton = at - (miss * there) / (rising * slope);
    // Asked before the bracket: where the search has arrived, rounding may put the step on the bracket's edge.
    if (isClose(newton, at)) return newton;
    const next = insideOf(newton, least, most, at);
    if (isClose(next, at)) return next;
    at = next;
  }
  throw new RangeError("The quantile was not found.");
}

const isClose = (one: number, other: number): boolean =>
  Math.abs(one - other) <= 2e-15 * Math.max(1, Math.abs(other));

function insideOf(newton: number, least: number, most: number, at: number): number {
  if (newton > least && newton < most && Math.abs(newton - at) < 50) return newton;
  if (least === Number.NEGATIVE_INFINITY) return at - 8;
  if (most === Number.POSITIVE_INFINITY) return at + 8;
  return (least + most) / 2;
}
