import { betaQuantile } from "./incomplete-beta.ts";
import { gammaQuantile } from "./incomplete-gamma.ts";

export interface Interval {
  readonly lower: number;
  /** null: without end. */
  readonly upper: number | null;
}

/**
 * Exact two-sided interval for the mean of a Poisson count (Garwood 1936): gamma quantiles of shape k and k + 1.
 * @param count whole, >= 0
 * @param confidence between 0 and 1, as 0.95
 */
export function poissonInterval(count: number, confidence: number): Interval & { readonly upper: number } {
  const tail = (1 - confidence) / 2;
  return {
    lower: count === 0 ? 0 : gammaQuantile(tail, count, "lower"),
    upper: gammaQuantile(tail, count + 1, "upper"),
  };
}

export interface Counted {
  /** whole, >= 0 */
  readonly count: number;
  /** Time watched, > 0; the same unit for both. */
  readonly exposure: number;
}

/**
 * Exact interval for the ratio of two Poisson rates, first over second: given their sum the first count is binomial,
 * its share in Clopper and Pearson's interval.
 * @returns null where neither counted anything
 */
export function rateRatioInterval(first: Counted, second: Counted, confidence: number): Interval | null {
  if (first.count + second.count === 0) return null;
  const tail = (1 - confidence) / 2;
  const ratio = (share: number): number => (share / (1 - share)) * (second.exposure / first.exposure);
  return {
    lower: first.count === 0 ? 0 : ratio(betaQuantile(tail, first.count, second.count + 1, "lower")),
    upper: second.count === 0 ? null : ratio(betaQuantile(tail, first.count + 1, second.count, "upper")),
  };
}
