import { entropy, type Probabilities } from "./cause-probabilities.ts";
import { afterOutcome, type NoteCheck, type Outcome, outcomeProbability } from "./check-outcomes.ts";

export interface ExpectedOutcome {
  readonly outcome: Outcome;
  readonly probability: number;
  /** The causes after it. */
  readonly after: Probabilities;
}

export interface WeighedCheck {
  readonly check: NoteCheck;
  /** Expected decrease of the uncertainty, bits. */
  readonly gain: number;
  readonly gainPerMinute: number;
  /** Dangerous or invasive: it carries a caution, and no arithmetic puts it before a harmless check. */
  readonly careful: boolean;
  readonly outcomes: readonly ExpectedOutcome[];
}

/** Less than this and a check no longer tells the causes apart, bits. */
export const leastGain = 0.01;
/** Walking there and looking takes a minute at least; keeps a check of "0 min" from an endless rate. */
const leastMinutes = 1;

export function isCareful(check: NoteCheck): boolean {
  return check.hazard !== "none" || (check.caution ?? "") !== "";
}

/**
 * What may come out of a check, with the causes after it. A cause for which the note rules out every outcome cannot
 * be weighed by the check and stays out of the sum.
 */
export function expectedOutcomes(probabilities: Probabilities, check: NoteCheck): ExpectedOutcome[] {
  const possible = check.outcomes.flatMap((outcome) => {
    const after = afterOutcome(probabilities, check, outcome);
    if (!after) return [];
    let probability = 0;
    for (const [key, p] of probabilities) probability += p * outcomeProbability(check, outcome, key);
    return [{ outcome, probability, after }];
  });
  const sum = possible.reduce((total, { probability }) => total + probability, 0);
  return possible.map((one) => ({ ...one, probability: one.probability / sum }));
}

/** Expected gain of a check: uncertainty now less the mean uncertainty after it. */
export function weighCheck(probabilities: Probabilities, check: NoteCheck): WeighedCheck {
  const outcomes = expectedOutcomes(probabilities, check);
  const after = outcomes.reduce((sum, one) => sum + one.probability * entropy(one.after), 0);
  const gain = outcomes.length === 0 ? 0 : Math.max(0, entropy(probabilities) - after);
  return {
    check,
    gain,
    gainPerMinute: gain / Math.max(leastMinutes, check.minutes),
    careful: isCareful(check),
    outcomes,
  };
}

/**
 * The checks in the order in which to do them: those that still tell something, the harmless before the careful ones,
 * then by expected gain a minute; equal ones as in the note.
 */
export function orderChecks(probabilities: Probabilities, checks: readonly NoteCheck[]): WeighedCheck[] {
  const tells = ({ gain }: WeighedCheck): number => (gain >= leastGain ? 0 : 1);
  return checks
    .map((check) => weighCheck(probabilities, check))
    .sort(
      (one, other) =>
        tells(one) - tells(other) ||
        Number(one.careful) - Number(other.careful) ||
        other.gainPerMinute - one.gainPerMinute,
    );
}
