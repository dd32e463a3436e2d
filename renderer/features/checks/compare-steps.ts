import type { Found } from "#shared-lib/contract/check.ts";
import type { CheckStep } from "./check-types.ts";
import { writtenNumber } from "./step-words.ts";

export interface StepChange {
  readonly words: string;
  /** Worse than the previous time: it needs a person. */
  readonly worse: boolean;
}

type Compared = Pick<CheckStep, "expected" | "found" | "verdict" | "previous">;

const same = (one: Found, other: Found): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What changed since the step was last checked with the same plan on the same lift. */
export function changeOf(step: Compared): StepChange {
  const { found, verdict, previous } = step;
  const plain = (words: string): StepChange => ({ words, worse: false });
  if (found === null || found.kind === "not checked") {
    if (previous?.verdict === "failed") return { words: "failed before, not checked since", worse: true };
    return plain(previous ? "not checked this time" : "never checked");
  }
  if (previous === null) return plain("checked for the first time");
  if (previous.verdict === "failed" && verdict === "passed") return plain("in order again");
  if (previous.verdict === "passed" && verdict === "failed")
    return { words: "was in order before", worse: true };
  if (same(found, previous.found))
    return verdict === "failed" ? { words: "failed as before", worse: true } : plain("the same");
  return { words: differenceWords(step, found, previous.found), worse: verdict === "failed" };
}

function differenceWords({ expected, verdict }: Compared, now: Found, before: Found): string {
  const still = verdict === "failed" ? "failed again, " : "";
  if (now.kind !== "value" || before.kind !== "value") return `${still}other than before`;
  const unit = expected.kind === "value" ? expected.unit : "";
  // Typed decimals are compared as typed, not as binary fractions.
  const difference = Number((now.value - before.value).toFixed(6));
  return `${still}${writtenNumber(Math.abs(difference), unit)} ${difference > 0 ? "more" : "less"}`;
}

/** Whether there is anything to compare with. */
export const hasPrevious = (steps: readonly Pick<CheckStep, "previous">[]): boolean =>
  steps.some(({ previous }) => previous !== null);
