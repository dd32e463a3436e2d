import { gammaProbability, gammaQuantile } from "./incomplete-gamma.ts";
import type { Tail } from "./numeric.ts";

/** Probability that a standard normal variable is below (lower) or above (upper) z: half of Q(1/2, z²/2) outwards. */
export function normalProbability(z: number, tail: Tail): number {
  const outwards = gammaProbability((z * z) / 2, 0.5, "upper") / 2;
  return z < 0 === (tail === "lower") ? outwards : 1 - outwards;
}

/** z below (lower) or above (upper) which a standard normal variable lies with this probability. */
export function normalQuantile(probability: number, tail: Tail): number {
  if (probability === 0.5) return 0;
  const outer = Math.min(probability, 1 - probability);
  const z = Math.sqrt(2 * gammaQuantile(2 * outer, 0.5, "upper"));
  return probability < 0.5 === (tail === "lower") ? -z : z;
}
