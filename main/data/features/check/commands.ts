import { checkPlanById } from "#shared-lib/check-plans/plan-list.ts";
import { verdictOf } from "#shared-lib/check-verdict.ts";
import type { PlanStep } from "#shared-lib/contract/check.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { type Handlers, signerOf } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { refuseWhileDanger } from "../callout/commands.ts";
import { refuseOtherLift } from "../lift/refuse-other-lift.ts";
import { checkedLift } from "./checked-lift.ts";

function openCheck(check: StoredRecord): StoredRecord {
  if (!check.finishedAt) return check;
  throw new SillbookError("state-refused", "This signal check is finished. Start a new one.", {
    id: check.id,
  });
}

function findStep(check: StoredRecord, stepKey: string): PlanStep {
  const step = (check.steps as readonly PlanStep[]).find(({ key }) => key === stepKey);
  if (step) return step;
  throw new SillbookError("not-found", "This signal check has no such step.", { id: check.id, stepKey });
}

export const checkCommands: Handlers<"check.start" | "check.recordStep" | "check.finish"> = {
  /** The steps are kept as they are now: landings changed later do not change what this check asked. */
  "check.start"(context, { liftId, planId, calloutId, visitId }) {
    const plan = checkPlanById(planId);
    if (!plan) throw new SillbookError("not-found", `There is no check plan called "${planId}".`, { planId });
    const checked = checkedLift(context, liftId);
    refuseWhileDanger(context, liftId);
    refuseOtherLift(context, "callout", calloutId, liftId);
    refuseOtherLift(context, "visit", visitId, liftId);
    const steps = plan.steps(checked);
    if (steps.length === 0) {
      throw new SillbookError(
        "state-refused",
        "The landings of this lift are not recorded: enter them with the lift, then start the check.",
        { liftId, planId },
      );
    }
    return context.records.insert("check", {
      liftId,
      planId,
      planName: plan.name,
      startedAt: context.now,
      finishedAt: null,
      personId: signerOf(context).id,
      visitId,
      calloutId,
      steps,
    });
  },

  /** A step may be recorded again: the newest finding counts, the earlier ones stay. Answers the check's version. */
  "check.recordStep"(context, { checkId, stepKey, found, note }) {
    const check = openCheck(context.records.find("check", checkId));
    refuseWhileDanger(context, check.liftId);
    const step = findStep(check, stepKey);
    const judgement = verdictOf(step.expected, found);
    if (!judgement) {
      const message = `This step asks for ${step.expected.kind === "yes" ? "yes or no" : step.expected.kind}.`;
      throw new SillbookError("input-invalid", `${message} Nothing was recorded.`, {
        fields: [{ path: ["found", "kind"], message }],
      });
    }
    context.records.insert("check step", {
      checkId,
      stepKey,
      found,
      ...judgement,
      note,
      at: context.now,
      personId: signerOf(context).id,
    });
    return { id: checkId, version: check.version, ...judgement };
  },

  "check.finish"(context, { id, version }) {
    const check = openCheck(context.records.findAtVersion("check", id, version));
    return context.records.update("check", check, { finishedAt: context.now });
  },
};
