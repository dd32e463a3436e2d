/** A forecast over causes and the cause that it was. */
export interface Forecast {
  readonly probabilities: ReadonlyMap<string, number>;
  readonly truth: string;
}

export interface ForecastFigures {
  readonly callouts: number;
  readonly first: number;
  readonly firstThree: number;
  /** Mean of the squared differences summed over all causes (Brier 1950): 0 best, 2 worst. */
  readonly brier: number;
}

export function measureForecasts(forecasts: readonly Forecast[]): ForecastFigures {
  const rankOf = ({ probabilities, truth }: Forecast): number =>
    [...probabilities].sort(([, one], [, other]) => other - one).findIndex(([key]) => key === truth);
  const share = (test: (rank: number) => boolean): number =>
    forecasts.filter((one) => test(rankOf(one))).length / forecasts.length;
  const brier = ({ probabilities, truth }: Forecast): number => {
    const known = [...probabilities].reduce((sum, [key, p]) => sum + (p - (key === truth ? 1 : 0)) ** 2, 0);
    return probabilities.has(truth) ? known : known + 1;
  };
  return {
    callouts: forecasts.length,
    first: share((rank) => rank === 0),
    firstThree: share((rank) => rank >= 0 && rank < 3),
    brier: forecasts.reduce((sum, one) => sum + brier(one), 0) / forecasts.length,
  };
}

export interface CalibrationBin {
  readonly from: number;
  readonly count: number;
  readonly said: number;
  readonly happened: number;
}

/** Every cause of every forecast, by what was said of it: what was said beside how often it was so. */
export function calibration(forecasts: readonly Forecast[], bins = 5): CalibrationBin[] {
  const all = forecasts.flatMap(({ probabilities, truth }) =>
    [...probabilities].map(([key, p]) => ({ p, so: key === truth ? 1 : 0 })),
  );
  return Array.from({ length: bins }, (_, index) => {
    const inside = all.filter(({ p }) => Math.min(bins - 1, Math.floor(p * bins)) === index);
    const mean = (of: (one: (typeof all)[number]) => number): number =>
      inside.reduce((sum, one) => sum + of(one), 0) / inside.length;
    return {
      from: index / bins,
      count: inside.length,
      said: mean(({ p }) => p),
      happened: mean(({ so }) => so),
    };
  });
}
