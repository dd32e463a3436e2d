/** The numbers of the ranking. Each was chosen on the even queries of the labelled sets (tests/bench/search-quality). */
export interface RankingSettings {
  /** k1 of BM25: how fast further occurrences of a word stop counting. */
  readonly saturation: number;
  /**
   * How far a long text lowers the worth of one occurrence (b of BM25F): in fields that are `shortLength` words long
   * on average or less, and in those of `longLength` or more; between them it grows with the logarithm. In a note of
   * six words length says little; in prose it says how much else there is.
   */
  readonly shortShare: number;
  readonly shortLength: number;
  readonly longShare: number;
  readonly longLength: number;
  /** How many of the best of each kind are looked at again for words standing near each other. */
  readonly nearnessDepth: number;
  /** Worth of two neighbouring words of the query standing side by side, as a share of the rarer one's worth. */
  readonly nearnessShare: number;
  /** Positions apart up to which two words count as near. */
  readonly nearnessReach: number;
  /** Words from which on a field is long enough for nearness to mean something: in a short note all is near. */
  readonly nearnessFrom: number;
}

export const rankingSettings: RankingSettings = {
  saturation: 2,
  shortShare: 0.3,
  shortLength: 8,
  longShare: 0.75,
  longLength: 60,
  nearnessDepth: 60,
  nearnessShare: 0.3,
  nearnessReach: 4,
  nearnessFrom: 16,
};

/** The length share (b) of a field that is `averageLength` words long on average. */
export function lengthShareOf(averageLength: number, settings: RankingSettings): number {
  const { shortShare, shortLength, longShare, longLength } = settings;
  const grown = Math.log(averageLength / shortLength) / Math.log(longLength / shortLength);
  return shortShare + (longShare - shortShare) * Math.min(1, Math.max(0, grown));
}
