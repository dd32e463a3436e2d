import type { CheckPlan } from "#shared-lib/check-plans/check-plan.ts";
import { checkPlans } from "#shared-lib/check-plans/plan-list.ts";
import type { Handlers } from "../../context.ts";
import { listChecksSql } from "./check.sql.ts";
import { checkSteps, findCheck, toCheck } from "./check-record.ts";
import { checkedLift } from "./checked-lift.ts";
import { landingStates } from "./landing-states.ts";

const describe = ({ id, name, purpose, cautions }: CheckPlan) => ({
  id,
  name,
  purpose,
  cautions: [...cautions],
});

export const checkQueries: Handlers<"check.plans" | "check.list" | "check.find" | "check.landingStates"> = {
  "check.plans"(context, { liftId }) {
    const checked = liftId ? checkedLift(context, liftId) : null;
    return {
      plans: checkPlans.map((plan) => ({
        ...describe(plan),
        steps: checked ? [...plan.steps(checked)] : [],
      })),
    };
  },

  "check.list"(context, { liftId, open, offset, limit }) {
    const sql = listChecksSql(liftId !== undefined, open);
    const rows = context.store.all<Record<string, unknown>>(sql, {
      limit,
      offset,
      ...(liftId ? { liftId } : {}),
    });
    return { checks: rows.map((row) => toCheck(row).check) };
  },

  "check.find"(context, { id }) {
    const found = findCheck(context.store, id);
    return { check: found.check, steps: checkSteps(context.store, found) };
  },

  "check.landingStates"(context, { liftId }) {
    return { places: landingStates(context, liftId) };
  },
};
