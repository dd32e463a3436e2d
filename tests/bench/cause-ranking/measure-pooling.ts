import { poolCounts, priorCounts } from "#shared-lib/diagnosis/pool-counts.ts";
import { SeededRandom } from "../../../main/data/demonstration/seeded-random.ts";
import { type Forecast, measureForecasts } from "./probability-measures.ts";

const causes = ["a", "b", "c", "d", "e"];
const families = 6;
const liftsPerFamily = 12;

interface Happening {
  readonly family: number;
  readonly lift: number;
  readonly cause: string;
}

/** Gamma variate by summing exponentials; shapes are whole numbers of quarters made by Johnk's trick for the rest. */
function gamma(random: SeededRandom, shape: number): number {
  let sum = 0;
  for (let whole = 0; whole < Math.floor(shape); whole++) sum -= Math.log(1 - random.next());
  const rest = shape - Math.floor(shape);
  if (rest === 0) return sum;
  for (;;) {
    const [x, y] = [random.next() ** (1 / rest), random.next() ** (1 / (1 - rest))];
    if (x + y <= 1 && x + y > 0) return sum - (Math.log(1 - random.next()) * x) / (x + y);
  }
}

function dirichlet(random: SeededRandom, masses: readonly number[]): number[] {
  const draws = masses.map((mass) => gamma(random, mass) + 1e-12);
  const sum = draws.reduce((total, draw) => total + draw, 0);
  return draws.map((draw) => draw / sum);
}

/** A company whose families and lifts truly differ: `alike` is how many callouts a lift's family is worth for it. */
function invent(random: SeededRandom, alike: number, callouts: number): Happening[] {
  const all = dirichlet(random, [3, 2, 1, 1, 0.5]);
  const ofFamily = Array.from({ length: families }, () =>
    dirichlet(
      random,
      all.map((share) => share * alike),
    ),
  );
  const ofLift = Array.from({ length: families * liftsPerFamily }, (_, lift) =>
    dirichlet(
      random,
      (ofFamily[lift % families] as number[]).map((share) => share * alike),
    ),
  );
  return Array.from({ length: callouts }, () => {
    const lift = random.integer(0, ofLift.length - 1);
    const cause = random.pickWeighted(causes, (key) => (ofLift[lift] as number[])[causes.indexOf(key)] ?? 0);
    return { lift, family: lift % families, cause };
  });
}

const countsOf = (some: readonly Happening[]): Map<string, number> =>
  new Map(causes.map((key) => [key, some.filter(({ cause }) => cause === key).length]));

export const strengths = [1, 2, 4, 8, 16];

/** Brier score by leave-one-out for each strength of pooling, beside everything in one pot and each lift alone. */
export function measurePooling(alike: number, callouts = 400): Record<string, string> {
  const random = new SeededRandom(4711 + alike);
  const happened = invent(random, alike, callouts);
  const prior = priorCounts(causes, false);
  const brierOf = (
    circles: (one: Happening, others: readonly Happening[]) => Map<string, number>[],
    strength = 1,
  ) => {
    const forecasts = happened.map((one): Forecast => {
      const others = happened.filter((other) => other !== one);
      return { truth: one.cause, probabilities: poolCounts(prior, circles(one, others), strength) };
    });
    return measureForecasts(forecasts).brier.toFixed(3);
  };
  const onLift = (one: Happening, others: readonly Happening[]) =>
    others.filter(({ lift }) => lift === one.lift);
  const inFamily = (one: Happening, others: readonly Happening[]) =>
    others.filter(({ family }) => family === one.family);
  return Object.fromEntries([
    ["one pot", brierOf((_, others) => [countsOf(others)])],
    ["each lift alone", brierOf((one, others) => [countsOf(onLift(one, others))])],
    ...strengths.map((strength) => [
      `pooled, strength ${strength}`,
      brierOf(
        (one, others) => [countsOf(others), countsOf(inFamily(one, others)), countsOf(onLift(one, others))],
        strength,
      ),
    ]),
  ]);
}
