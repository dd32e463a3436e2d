import type { PlanStep } from "../contract/check.ts";
import type { Landing, Lift, Signal } from "../contract/lift.ts";

/** What a plan makes its steps from. Landings from the lowest to the highest. */
export interface CheckedLift {
  readonly lift: Lift;
  readonly landings: readonly Landing[];
  readonly signals: readonly Signal[];
}

/** A built-in check plan. Its steps have keys that stay the same as long as lift and landing stay: results are compared by them. */
export interface CheckPlan {
  readonly id: string;
  readonly name: string;
  readonly purpose: string;
  readonly cautions: readonly string[];
  readonly steps: (checked: CheckedLift) => readonly PlanStep[];
}

export const noSource = "common practice, no source";
export const fromMemory = (clause: string): string =>
  `EN 81-20:2020, ${clause} (from memory, check against the current text)`;

/** The place of a step that belongs to no landing. */
export const wholeLift = { landingId: null, landingMarking: null } as const;
export const atLanding = (landing: Landing) => ({ landingId: landing.id, landingMarking: landing.marking });

/** Landings from below, whatever order they came in. */
export function fromBelow(landings: readonly Landing[]): readonly Landing[] {
  return [...landings].sort((a, b) => a.level - b.level);
}

/** " Input X4:12 on this site's drawing." where the lift's record names one; empty where it does not. */
export function inputWords(
  signals: readonly Signal[],
  role: Signal["role"],
  landingId: string | null = null,
): string {
  const named = signals.filter((signal) => signal.role === role && signal.marking !== "");
  const signal =
    named.find((one) => one.landingId === landingId) ?? named.find((one) => one.landingId === null);
  return signal ? ` It is ${signal.marking} (${signal.name}) on this site's drawing.` : "";
}

export const cautions = {
  chain:
    "Watch the chain where the controller shows it, or with a rated meter by people trained for it. No contact is held or linked for this check.",
  carTop:
    "Go on the car top only if trained for it: stop switch first, then inspection control, prove both, and know the refuge space.",
  pit: "Go into the pit only if trained for it: stop switch first, prove it, and know the refuge space.",
  landing:
    "Keep people away from the landing: barrier the entrance while its door can be open without the car.",
  empty: "Nobody rides: the car is empty and its doors are kept from opening for passengers.",
  decide: "Only trained people; local codes and the maker's instructions decide.",
} as const;
