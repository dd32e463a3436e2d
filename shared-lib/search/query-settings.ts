/** Weights of the readings of a query word beside 1 for the word itself, chosen like the ranking's numbers. */
export interface QuerySettings {
  readonly inflection: number;
  readonly sameThing: number;
  readonly nearMeaning: number;
  readonly compound: number;
  readonly completion: number;
  /** A part of a marking, or a number without its unit or landing. */
  readonly part: number;
  /** A word that is also read as part of a phrase of the trade: what it is worth alone. */
  readonly phraseWord: number;
  /** What "replace", "repair" and the like are worth beside a word that names a thing or a trouble. */
  readonly workWord: number;
}

export const querySettings: QuerySettings = {
  inflection: 0.8,
  sameThing: 0.6,
  nearMeaning: 0.4,
  compound: 0.8,
  completion: 0.6,
  part: 0.3,
  phraseWord: 0.2,
  workWord: 0.4,
};
