/** The numbers of the ranking. Each was chosen on the even queries of the labelled sets (tests/bench/search-quality). */
export interface RankingSettings {
  /** k1 of BM25: how fast further occurrences of a word stop counting. */
  readonly saturation: number;
  /** How many of the best of each kind are looked at again for words standing near each other. */
  readonly nearnessDepth: number;
  /** Worth of two neighbouring words of the query standing side by side, as a share of the rarer one's worth. */
  readonly nearnessShare: number;
  /** Positions apart up to which two words count as near. */
  readonly nearnessReach: number;
}

export const rankingSettings: RankingSettings = {
  saturation: 1.2,
  nearnessDepth: 60,
  nearnessShare: 0.3,
  nearnessReach: 4,
};
