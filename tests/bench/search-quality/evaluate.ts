import type { Engine } from "./engines.ts";
import type { LabelledQuery } from "./labelled-set.ts";
import { averageFigures, measureRanking, quantile, type RankFigures } from "./rank-measures.ts";
import { seededRandom, withAllErrors, withOneError } from "./typing-errors.ts";

export type Typing = "clean" | "one error" | "all errors";

export const typings: readonly Typing[] = ["clean", "one error", "all errors"];

const depth = 1000;
const seeds: Readonly<Record<Typing, number>> = { clean: 0, "one error": 20_261, "all errors": 20_262 };

export interface Evaluation extends RankFigures {
  /** Milliseconds per query. */
  readonly p50: number;
  readonly p95: number;
}

/** The text of a query with errors of a kind; the same for every engine and every run. */
export function mistyped(query: LabelledQuery, typing: Typing): string {
  const random = seededRandom(seeds[typing] + Number(query.id.replace(/\D/g, "")) * 7919);
  if (typing === "clean") {
    return query.text;
  }
  return typing === "one error" ? withOneError(query.text, random) : withAllErrors(query.text, random);
}

export function evaluate(engine: Engine, queries: readonly LabelledQuery[], typing: Typing): Evaluation {
  const figures: RankFigures[] = [];
  const times: number[] = [];
  for (const query of queries) {
    const text = mistyped(query, typing);
    const start = performance.now();
    const ranking = engine(text, depth);
    times.push(performance.now() - start);
    figures.push(measureRanking(ranking, query));
  }
  return { ...averageFigures(figures), p50: quantile(times, 0.5), p95: quantile(times, 0.95) };
}
