import { gammaProbability } from "../statistics/incomplete-gamma.ts";
import { type Interval, poissonInterval, rateRatioInterval } from "../statistics/poisson-interval.ts";

/** Call and availability figures in the style of EN 15341 and IEC 61703 (from memory). SI: s, 1/s. */

export interface CallRequest {
  readonly calls: number;
  readonly lifts: number;
  /** Time watched, s. */
  readonly period: number;
  /** As 0.95. */
  readonly confidence: number;
}

export interface CallRate {
  /** Time of all lifts together, s. */
  readonly exposure: number;
  /** Per lift, 1/s, with its exact interval. */
  readonly rate: number;
  readonly interval: Interval & { readonly upper: number };
}

export function callRate({ calls, lifts, period, confidence }: CallRequest): CallRate {
  const exposure = lifts * period;
  const counted = poissonInterval(calls, confidence);
  return {
    exposure,
    rate: calls / exposure,
    interval: { lower: counted.lower / exposure, upper: counted.upper / exposure },
  };
}

/** Chance of counting at most this many where the true rate is `rate`; Poisson, summed by the gamma function. */
export const chanceOfAtMost = (calls: number, rate: number, exposure: number): number =>
  gammaProbability(rate * exposure, calls + 1, "upper");

/** A = up/(up + down). */
export const availabilityOf = (down: number, exposure: number): number => (exposure - down) / exposure;

/** Ratio of the rate now to the rate before, with its exact interval; null where neither period had a call. */
export function changeOf(
  now: CallRequest,
  before: { readonly calls: number; readonly period: number },
): Interval | null {
  return rateRatioInterval(
    { count: now.calls, exposure: now.period },
    { count: before.calls, exposure: before.period },
    now.confidence,
  );
}
