import type { FaultNoteFields } from "../contract/fault-note.ts";
import type { Counts, Probabilities } from "./cause-probabilities.ts";
import { afterOutcome, meaningFor, type NoteCheck, type Outcome } from "./check-outcomes.ts";
import { poolCounts, priorCounts } from "./pool-counts.ts";

/** Narrowest circle that a past callout stands in: the lift itself, the same controller family and drive, any lift. */
export type Circle = "lift" | "alike" | "elsewhere";

/** One past callout that ended by one of the note's causes. */
export interface CauseEvidence {
  readonly calloutId: string;
  readonly causeKey: string;
  readonly circle: Circle;
  /** Of its words to those of the callout in hand, 0 to 1; 1 where there are none to compare. */
  readonly likeness: number;
}

export interface AnsweredCheck {
  readonly check: NoteCheck;
  readonly outcome: Outcome;
}

export interface RankedCause {
  readonly key: string;
  readonly probability: number;
  /** Distinct callouts that it ended. */
  readonly callouts: number;
  readonly onLift: number;
  /** Answers that rule it out, and answers that prove it. */
  readonly ruledOutBy: readonly AnsweredCheck[];
  readonly provedBy: readonly AnsweredCheck[];
}

export interface CauseRanking {
  /** Most likely first; causes that are ruled out stand last and are never left out. */
  readonly causes: readonly RankedCause[];
  /** Distinct callouts with a told cause: all, same family and drive (this lift included), this lift. */
  readonly callouts: number;
  readonly alike: number;
  readonly onLift: number;
  /** Fewer than `leastCallouts`: the order is the note's own, only the answers move it. */
  readonly thin: boolean;
  /** The answers rule out every cause: the probabilities are those without the answers. */
  readonly contradiction: boolean;
  readonly probabilities: Probabilities;
}

export const leastCallouts = 5;
/** A person attached the callout to this fault note: with quite other words it still counts half. */
const leastWeight = 0.5;

const distinct = (evidence: readonly CauseEvidence[]): number =>
  new Set(evidence.map(({ calloutId }) => calloutId)).size;

function weightedCounts(evidence: readonly CauseEvidence[]): Counts {
  const counts = new Map<string, number>();
  for (const { causeKey, likeness } of evidence) {
    const weight = leastWeight + (1 - leastWeight) * likeness;
    counts.set(causeKey, (counts.get(causeKey) ?? 0) + weight);
  }
  return counts;
}

/** The causes of a note by the company's own history alone. */
export function fromHistory(
  causeKeys: readonly string[],
  evidence: readonly CauseEvidence[],
  strength?: number,
): Probabilities {
  const prior = priorCounts(causeKeys);
  if (distinct(evidence) < leastCallouts) return poolCounts(prior, []);
  const onLift = evidence.filter(({ circle }) => circle === "lift");
  const alike = evidence.filter(({ circle }) => circle !== "elsewhere");
  return poolCounts(prior, [evidence, alike, onLift].map(weightedCounts), strength);
}

/**
 * Ranks the causes of a fault note: history first, then each answer by Bayes' rule. One cause is taken to be at work.
 * Evidence for causes that the note no longer has is left out.
 */
export function rankCauses(
  note: Pick<FaultNoteFields, "causes">,
  evidence: readonly CauseEvidence[],
  answers: readonly AnsweredCheck[],
): CauseRanking {
  const keys = note.causes.map(({ key }) => key);
  const counted = evidence.filter(({ causeKey }) => keys.includes(causeKey));
  const history = fromHistory(keys, counted);
  const answered = answers.reduce<Probabilities | null>(
    (before, { check, outcome }) => before && afterOutcome(before, check, outcome),
    history,
  );
  const contradiction = keys.length > 0 && answered === null;
  const probabilities = answered ?? history;
  const causes = keys.map((key): RankedCause => {
    const its = counted.filter(({ causeKey }) => causeKey === key);
    const saying = (meaning: string): AnsweredCheck[] =>
      answers.filter(({ outcome }) => meaningFor(outcome, key) === meaning);
    return {
      key,
      probability: probabilities.get(key) ?? 0,
      callouts: distinct(its),
      onLift: distinct(its.filter(({ circle }) => circle === "lift")),
      ruledOutBy: saying("excludes"),
      provedBy: saying("proves"),
    };
  });
  return {
    causes: causes.sort((one, other) => other.probability - one.probability),
    callouts: distinct(counted),
    alike: distinct(counted.filter(({ circle }) => circle !== "elsewhere")),
    onLift: distinct(counted.filter(({ circle }) => circle === "lift")),
    thin: distinct(counted) < leastCallouts,
    contradiction,
    probabilities,
  };
}
