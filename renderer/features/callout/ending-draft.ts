import type { InputOf } from "#shared-lib/contract/operations.ts";
import { readTime } from "#shared-lib/time-words.ts";
import type { awaited, Ending, FaultGroup, LiftState } from "#shared-lib/words.ts";
import { readDay } from "./read-day.ts";

/** What a person types while ending a callout, kept as a draft. */
export interface EndingDraft {
  readonly ending: Ending | null;
  readonly group: FaultGroup;
  readonly reason: string;
  readonly awaits: (typeof awaited)[number] | null;
  readonly returnVisit: string;
  readonly at: string;
  /** False while the proposed "now" stands: the program then takes its own time. */
  readonly atTouched: boolean;
  /** Once ending was tried, what is missing stands at its field. */
  readonly asked: boolean;
}

export type EndingProblems = Partial<Record<"ending" | "at" | "reason" | "awaits" | "returnVisit", string>>;

export function endingProblems(draft: EndingDraft, now: Date): EndingProblems {
  const problems: { -readonly [Field in keyof EndingProblems]: EndingProblems[Field] } = {};
  if (draft.ending === null) problems.ending = "Choose how it ended.";
  if (draft.atTouched) {
    const reading = readTime(draft.at, now, "past");
    if (reading.kind === "empty") problems.at = "Write when it ended, as in 09:05.";
    if (reading.kind === "unclear") problems.at = reading.problem;
  }
  if (draft.ending === "left out of service") {
    if (draft.reason.trim() === "") problems.reason = "Say why the lift is left out of service.";
    if (draft.awaits === null) problems.awaits = "Choose what is awaited, so that it is followed.";
  }
  if (draft.returnVisit.trim() !== "" && readDay(draft.returnVisit, now) === null)
    problems.returnVisit = "That is no day that can be read. Write it as in 27 Nov.";
  return problems;
}

/** The fields of `callout.end`; what does not belong to the chosen ending is not sent, though it stays typed. */
export function toEndInput(
  draft: EndingDraft,
  ending: Ending,
  now: Date,
): Omit<InputOf<"callout.end">, "id" | "version"> {
  const reading = draft.atTouched ? readTime(draft.at, now, "past") : undefined;
  const isOver = ending === "cancelled" || ending === "wrong address";
  return {
    ending,
    group: draft.group,
    reason: draft.reason,
    awaits: ending === "left out of service" ? draft.awaits : null,
    returnVisitOn: isOver ? null : readDay(draft.returnVisit, now),
    ...(reading?.kind === "moment" ? { at: reading.at } : {}),
  };
}

/** What the ending does to the lift, or asks of it first. */
export function endingAdvice(ending: Ending, state: LiftState | null): string {
  if (ending === "left out of service")
    return "The lift is recorded as out of service with this reason, wherever it is seen.";
  if (ending === "cancelled" || ending === "wrong address")
    return state === "out of service"
      ? "The lift stays recorded as out of service: this ending does not change its state."
      : "The state of the lift is not changed.";
  if (state === "out of service")
    return "The lift is recorded as out of service. Record back in service first, with the register compared, or end it as left out of service.";
  return state === null
    ? "Which lift it was is not settled yet. It can be settled later."
    : "The lift stays recorded as it is now.";
}
