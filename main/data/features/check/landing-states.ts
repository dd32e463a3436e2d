import { checkPlans } from "#shared-lib/check-plans/plan-list.ts";
import type { PlanStep, StepVerdict } from "#shared-lib/contract/check.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Context } from "../../context.ts";
import { stepsOfLiftSql } from "./check.sql.ts";
import { checkedLift } from "./checked-lift.ts";

type Place = OutputOf<"check.landingStates">["places"][number];

interface Recorded {
  readonly planId: string;
  readonly checkId: string;
  readonly stepKey: string;
  readonly verdict: StepVerdict;
  readonly sentence: string;
  readonly at: string;
}

interface PlannedStep {
  readonly planId: string;
  readonly step: PlanStep;
  /** Newest result of this step, whichever check it was recorded in. */
  readonly newest: Recorded | undefined;
}

/** A plan that was never carried out at a place does not count there: it was not asked. */
function relevant(steps: readonly PlannedStep[]): readonly PlannedStep[] {
  const carriedOut = new Set(steps.filter(({ newest }) => newest).map(({ planId }) => planId));
  return steps.filter(({ planId }) => carriedOut.has(planId));
}

const laterOf = (one: Recorded, other: Recorded): Recorded => (other.at >= one.at ? other : one);

/** A place has failed while any of its steps has, and has passed only when all of them have. */
function stateOf(steps: readonly PlannedStep[]): Pick<Place, "verdict" | "sentence" | "at" | "checkId"> {
  const asked = relevant(steps);
  const results = asked.map(({ newest }) => newest).filter((result) => result !== undefined);
  if (results.length === 0)
    return { verdict: "unchecked", sentence: "Not checked yet.", at: null, checkId: null };
  const failed = results.filter(({ verdict }) => verdict === "failed");
  const passed = results.filter(({ verdict }) => verdict === "passed");
  const shown = (failed.length > 0 ? failed : results).reduce(laterOf);
  const { at, checkId } = shown;
  if (failed.length > 0) return { verdict: "failed", sentence: shown.sentence, at, checkId };
  if (passed.length === asked.length) {
    const sentence = asked.length === 1 ? shown.sentence : `All ${asked.length} steps passed.`;
    return { verdict: "passed", sentence, at, checkId };
  }
  const sentence = `${passed.length} of ${asked.length} steps passed, the others are not checked.`;
  return { verdict: "unchecked", sentence, at, checkId };
}

/** Every landing and part that the built-in plans look at on this lift, with what was found there last. */
export function landingStates(context: Context, liftId: string): Place[] {
  const checked = checkedLift(context, liftId);
  const newest = new Map(
    context.store
      .all<Recorded>(stepsOfLiftSql, { liftId })
      .map((row) => [`${row.planId} ${row.stepKey}`, row]),
  );
  const places = new Map<string, PlannedStep[]>();
  for (const plan of checkPlans) {
    for (const step of plan.steps(checked)) {
      const place = `${step.landingId} ${step.part}`;
      const planned = { planId: plan.id, step, newest: newest.get(`${plan.id} ${step.key}`) };
      places.set(place, [...(places.get(place) ?? []), planned]);
    }
  }
  return [...places.values()].flatMap((steps) => {
    const [first] = steps;
    return first ? [{ landingId: first.step.landingId, part: first.step.part, ...stateOf(steps) }] : [];
  });
}
