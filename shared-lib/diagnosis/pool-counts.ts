import { type Counts, normalise, type Probabilities } from "./cause-probabilities.ts";

/** Mass of Jeffreys' prior for one cause (Jeffreys 1946): half a callout. */
const jeffreys = 0.5;

/**
 * Jeffreys' mass of 0.5 a cause, laid out as 1/place in the order of the fault note: "most likely first" is all a note
 * says. `ordered` false: 0.5 each.
 */
export function priorCounts(causeKeys: readonly string[], ordered = true): Counts {
  const shares = causeKeys.map((_, index) => (ordered ? 1 / (index + 1) : 1));
  const sum = shares.reduce((total, share) => total + share, 0);
  const mass = jeffreys * causeKeys.length;
  return new Map(causeKeys.map((key, index) => [key, (mass * (shares[index] as number)) / sum]));
}

/** Mean of a Dirichlet distribution: counts over a prior given as counts. */
export function dirichletMean(counts: Counts, prior: Counts): Probabilities {
  const posterior = new Map([...prior].map(([key, mass]) => [key, mass + (counts.get(key) ?? 0)]));
  return normalise(posterior) ?? new Map();
}

/** As many callouts weigh the wider circle against the narrower one. Between 4 and 16 the Brier score differs little (tests/bench/cause-ranking). */
export const poolingStrength = 8;

/**
 * Partial pooling: the mean of each circle is the prior of the next narrower one, worth `strength` callouts
 * (hierarchical Dirichlet, MacKay and Peto 1995, equation 2). Circles from the widest to the narrowest; a wider one
 * contains the narrower ones. A lift with few callouts follows its family, one with many its own history.
 */
export function poolCounts(
  prior: Counts,
  circles: readonly Counts[],
  strength: number = poolingStrength,
): Probabilities {
  const [widest, ...narrower] = circles;
  let mean = dirichletMean(widest ?? new Map(), prior);
  for (const counts of narrower) {
    const pulled = new Map([...mean].map(([key, share]) => [key, share * strength]));
    mean = dirichletMean(counts, pulled);
  }
  return mean;
}
