import type { Expected, Found, StepVerdict } from "./contract/check.ts";
import { formatNumber, noBreakSpace } from "./format.ts";

export interface StepJudgement {
  readonly verdict: StepVerdict;
  /** What was expected and what was found, in one sentence. */
  readonly sentence: string;
}

/** Decimals and units are typed by people: a difference far below any reading is none. */
const negligible = 1e-9;

const judge = (passed: boolean, sentence: string): StepJudgement => ({
  verdict: passed ? "passed" : "failed",
  sentence,
});

const onOff = (on: boolean): string => (on ? "on" : "off");

function decimalsOf(value: number): number {
  return Math.min(6, (String(value).split(".")[1] ?? "").length);
}

function written(value: number, unit: string): string {
  const number = formatNumber(value, decimalsOf(value));
  return unit === "" ? number : `${number}${noBreakSpace}${unit}`;
}

function judgeOrder(expected: readonly string[], found: readonly string[]): StepJudgement {
  const order = expected.join(", ");
  if (found.length === 0) return judge(false, `Expected ${order}; nothing came.`);
  if (found.join("\n") === expected.join("\n")) return judge(true, `As expected: ${order}.`);
  return judge(false, `Expected ${order}; found ${found.join(", ")}.`);
}

function judgeValue(expected: Expected & { kind: "value" }, value: number): StepJudgement {
  const { least, most, unit } = expected;
  const found = written(value, unit);
  if (least === null && most === null)
    return { verdict: "unchecked", sentence: `Found ${found}. No limit is recorded to compare it with.` };
  const tooLow = least !== null && value < least - negligible;
  const tooHigh = most !== null && value > most + negligible;
  const limits = [
    ...(least === null ? [] : [`at least ${written(least, unit)}`]),
    ...(most === null ? [] : [`at most ${written(most, unit)}`]),
  ].join(" and ");
  return judge(!tooLow && !tooHigh, `Expected ${limits}; found ${found}.`);
}

/**
 * What a step's finding means. Pure; `unchecked` where there is no limit to compare with, because a number without one
 * proves nothing, and where the step could not be checked.
 * @returns null where the finding is of another kind than the step asks for
 */
export function verdictOf(expected: Expected, found: Found): StepJudgement | null {
  if (found.kind === "not checked") return { verdict: "unchecked", sentence: "Not checked." };
  if (expected.kind === "state" && found.kind === "state")
    return judge(found.on === expected.on, `Expected ${onOff(expected.on)}; found ${onOff(found.on)}.`);
  if (expected.kind === "order" && found.kind === "order") return judgeOrder(expected.order, found.order);
  if (expected.kind === "value" && found.kind === "value") return judgeValue(expected, found.value);
  if (expected.kind === "yes" && found.kind === "yes")
    return judge(found.yes, `${expected.question} ${found.yes ? "Yes" : "No"}.`);
  return null;
}
