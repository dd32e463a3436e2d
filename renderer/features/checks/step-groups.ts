import type { StepVerdict } from "#shared-lib/contract/check.ts";
import type { CheckStep } from "./check-types.ts";
import { placeWords } from "./step-words.ts";

/** Steps that follow one another at one place, in the order of the plan. */
export interface StepGroup {
  readonly key: string;
  readonly words: string;
  /** What is written in a narrow place: the landing's marking, or the words. */
  readonly short: string;
  readonly steps: readonly CheckStep[];
}

/**
 * The plan's order is kept even where it comes back to a place: some steps prove something only after others.
 */
export function stepGroups(steps: readonly CheckStep[]): readonly StepGroup[] {
  const groups: { key: string; words: string; short: string; steps: CheckStep[] }[] = [];
  for (const step of steps) {
    const words = placeWords(step);
    const last = groups.at(-1);
    if (last?.words === words) last.steps.push(step);
    else groups.push({ key: step.key, words, short: step.landingMarking ?? words, steps: [step] });
  }
  return groups;
}

/** Failed while one step has, passed only when all have. */
export function groupVerdict(steps: readonly Pick<CheckStep, "verdict">[]): StepVerdict {
  if (steps.some(({ verdict }) => verdict === "failed")) return "failed";
  return steps.every(({ verdict }) => verdict === "passed") ? "passed" : "unchecked";
}

export interface VerdictCounts {
  readonly passed: number;
  readonly failed: number;
  readonly unchecked: number;
}

export function countVerdicts(steps: readonly Pick<CheckStep, "verdict">[]): VerdictCounts {
  const count = (wanted: StepVerdict) => steps.filter(({ verdict }) => verdict === wanted).length;
  return { passed: count("passed"), failed: count("failed"), unchecked: count("unchecked") };
}

/** "2 passed, 1 failed, 5 unchecked"; what there is none of is left out. */
export function countWords({ passed, failed, unchecked }: VerdictCounts): string {
  return [
    ...(passed > 0 ? [`${passed} passed`] : []),
    ...(failed > 0 ? [`${failed} failed`] : []),
    ...(unchecked > 0 ? [`${unchecked} unchecked`] : []),
  ].join(", ");
}

/** Where work goes on: the first step at which nothing was recorded, else the first one. */
export function firstOpenStep(steps: readonly CheckStep[]): CheckStep | undefined {
  return steps.find(({ at }) => at === null) ?? steps[0];
}
