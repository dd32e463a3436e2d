/** How sure each cause is, by its key; they sum to 1. */
export type Probabilities = ReadonlyMap<string, number>;

/** Weighted counts of callouts by cause key. */
export type Counts = ReadonlyMap<string, number>;

/** Scaled to a sum of 1; null where nothing is left to scale. */
export function normalise(weights: Counts): Probabilities | null {
  const sum = [...weights.values()].reduce((total, weight) => total + weight, 0);
  if (!(sum > 0)) return null;
  return new Map([...weights].map(([key, weight]) => [key, weight / sum]));
}

/** Uncertainty in bits: 0 when one cause is certain, log2 of their number when all are alike. */
export function entropy(probabilities: Probabilities): number {
  let bits = 0;
  for (const p of probabilities.values()) if (p > 0) bits -= p * Math.log2(p);
  return bits;
}
