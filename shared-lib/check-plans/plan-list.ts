import { chainFreeOfBridgesPlan } from "./chain-free-of-bridges-plan.ts";
import type { CheckPlan } from "./check-plan.ts";
import { doorCommandsPlan } from "./door-commands-plan.ts";
import { inspectionControlsPlan } from "./inspection-controls-plan.ts";
import { terminalSlowdownPlan } from "./terminal-slowdown-plan.ts";
import { zoneSensorsPlan } from "./zone-sensors-plan.ts";

/** Every built-in check plan, in the order of the list. */
export const checkPlans: readonly CheckPlan[] = [
  zoneSensorsPlan,
  terminalSlowdownPlan,
  doorCommandsPlan,
  inspectionControlsPlan,
  chainFreeOfBridgesPlan,
];

/** @returns undefined where no plan has this id: a fault note may name one of a later version. */
export const checkPlanById = (id: string): CheckPlan | undefined => checkPlans.find((plan) => plan.id === id);
