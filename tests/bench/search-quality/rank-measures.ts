import type { LabelledQuery } from "./labelled-set.ts";

export interface RankFigures {
  readonly ndcg10: number;
  readonly mrr: number;
  readonly success3: number;
}

const gain = (grade: number) => 2 ** grade - 1;
const discount = (rank: number) => 1 / Math.log2(rank + 1);

/** Figures of one ranking (document ids, best first): gain 2^grade - 1, discount 1 / log2(rank + 1). */
export function measureRanking(ranking: readonly string[], query: LabelledQuery): RankFigures {
  const found = ranking.filter((id) => !query.without.has(id)).map((id) => query.grades.get(id) ?? 0);
  const sum = (grades: readonly number[]) =>
    grades.slice(0, 10).reduce((total, grade, index) => total + gain(grade) * discount(index + 1), 0);
  const ideal = sum([...query.grades.values()].sort((one, other) => other - one));
  const first = found.findIndex((grade) => grade > 0);
  return {
    ndcg10: sum(found) / ideal,
    mrr: first < 0 ? 0 : 1 / (first + 1),
    success3: first >= 0 && first < 3 ? 1 : 0,
  };
}

export function averageFigures(figures: readonly RankFigures[]): RankFigures {
  const mean = (name: keyof RankFigures) =>
    figures.reduce((total, figure) => total + figure[name], 0) / figures.length;
  return { ndcg10: mean("ndcg10"), mrr: mean("mrr"), success3: mean("success3") };
}

/** The value below which `share` of the numbers lie. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
