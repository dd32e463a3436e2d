import type { Circle } from "./rank-causes.ts";

/** A past callout that the search found for what is said now. */
export interface SimilarCandidate {
  readonly calloutId: string;
  /** The same for callouts that the same cause ended. */
  readonly causeId: string;
  readonly circle: Circle;
  /** Of the search, more than 0. */
  readonly score: number;
}

export interface SimilarCallout<One extends SimilarCandidate> {
  readonly candidate: One;
  /** Callouts about as near that the same cause ended, of all about as near. */
  readonly sameCause: number;
  readonly near: number;
}

/** Of two equally worded callouts the one on this lift counts more; measured in tests/bench/cause-ranking. */
const circleFactor: Readonly<Record<Circle, number>> = { lift: 2, alike: 1.2, elsewhere: 1 };
const circleOrder: readonly Circle[] = ["lift", "alike", "elsewhere"];
/** How fast a worse match loses its say. */
const sharpness = 4;
/** A callout is about as near when it scores this share of the best. */
const nearShare = 0.5;

interface Weighed<One> {
  readonly candidate: One;
  readonly weight: number;
}

/**
 * The nearest past callouts, one for each cause, so that a few lines show what it may be and not the same three times:
 * the causes with the most say among the matches, each by its nearest callout. Same lift first, then the same family
 * and drive.
 */
export function similarCallouts<One extends SimilarCandidate>(
  candidates: readonly One[],
  limit: number,
): SimilarCallout<One>[] {
  const best = candidates.reduce((most, { score }) => Math.max(most, score), 0);
  if (best === 0) return [];
  const near = new Set(
    candidates.filter(({ score }) => score >= nearShare * best).map(({ calloutId }) => calloutId),
  );
  const byCause = new Map<string, Weighed<One>[]>();
  for (const candidate of candidates) {
    const weight = circleFactor[candidate.circle] * (candidate.score / best) ** sharpness;
    byCause.set(candidate.causeId, [...(byCause.get(candidate.causeId) ?? []), { candidate, weight }]);
  }
  return [...byCause.values()]
    .map((of) => ({ of, say: of.reduce((sum, { weight }) => sum + weight, 0) }))
    .sort((one, other) => other.say - one.say)
    .slice(0, limit)
    .map(({ of }) => {
      const nearest = of.reduce((first, next) => (next.weight > first.weight ? next : first));
      const same = new Set(of.map(({ candidate }) => candidate.calloutId).filter((id) => near.has(id)));
      return { candidate: nearest.candidate, sameCause: same.size, near: near.size };
    })
    .sort(
      (one, other) => circleOrder.indexOf(one.candidate.circle) - circleOrder.indexOf(other.candidate.circle),
    );
}
