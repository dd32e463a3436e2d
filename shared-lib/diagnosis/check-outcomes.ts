import type { FaultNoteFields, outcomeMeanings } from "../contract/fault-note.ts";
import { normalise, type Probabilities } from "./cause-probabilities.ts";

export type NoteCheck = FaultNoteFields["checks"][number];
export type Outcome = NoteCheck["outcomes"][number];
export type Meaning = (typeof outcomeMeanings)[number];

/**
 * How often an outcome is seen where a cause is the one, beside an outcome that says nothing of it. The words of the
 * note are five steps, not measurements: a factor of four a step (our choice, no source).
 */
const weights: Readonly<Record<Meaning, number>> = {
  excludes: 0,
  unlikely: 1 / 4,
  neutral: 1,
  likely: 4,
  proves: 16,
};

/** What an outcome says of a cause. Where it proves one, it rules out every cause that it does not speak of. */
export function meaningFor(outcome: Outcome, causeKey: string): Meaning {
  const said = outcome.means[causeKey];
  if (said) return said;
  return Object.values(outcome.means).includes("proves") ? "excludes" : "neutral";
}

/** Probability of an outcome where this cause is the one; over all outcomes of a check it sums to 1. */
export function outcomeProbability(check: NoteCheck, outcome: Outcome, causeKey: string): number {
  const weight = weights[meaningFor(outcome, causeKey)];
  if (weight === 0) return 0;
  const sum = check.outcomes.reduce((total, other) => total + weights[meaningFor(other, causeKey)], 0);
  return weight / sum;
}

/** Bayes' rule. Null where the outcome rules out every cause that was left. */
export function afterOutcome(
  before: Probabilities,
  check: NoteCheck,
  outcome: Outcome,
): Probabilities | null {
  return normalise(
    new Map([...before].map(([key, p]) => [key, p * outcomeProbability(check, outcome, key)])),
  );
}
