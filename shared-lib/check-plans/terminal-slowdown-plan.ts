import type { Expected, PlanStep } from "../contract/check.ts";
import type { Landing } from "../contract/lift.ts";
import { formatQuantity } from "../format.ts";
import {
  atLanding,
  type CheckedLift,
  type CheckPlan,
  cautions,
  fromBelow,
  fromMemory,
  inputWords,
  noSource,
} from "./check-plan.ts";

type End = "up" | "down";

const finalSource = fromMemory("5.12.2");
const measuring = `${cautions.carTop} One person in control, nobody in the pit while the car moves; measure with the stop switch pressed.`;

/** The lift's own recorded distance is the only limit there is: acting later than that leaves less than was set. */
function slowdownLimit(recorded: number | null): Expected {
  const source =
    recorded === null
      ? ""
      : `this lift's record: it acts ${formatQuantity(recorded, "m", 3)} before the level; less leaves less to stop in`;
  return { kind: "value", unit: "m", least: recorded, most: null, source };
}

function finalLimit(recorded: number | null): Expected {
  const source =
    recorded === null
      ? ""
      : `this lift's record: it acts ${formatQuantity(recorded, "m", 3)} beyond the level`;
  return { kind: "value", unit: "m", least: null, most: recorded, source };
}

function slowdownSteps({ lift, signals }: CheckedLift, end: End, landing: Landing): PlanStep[] {
  const recorded = end === "up" ? lift.upSlowdownDistance : lift.downSlowdownDistance;
  const inputs = inputWords(signals, end === "up" ? "up slowdown switch" : "down slowdown switch");
  const common = {
    ...atLanding(landing),
    part: "switch",
    searchWords: "terminal slowdown switch overruns the terminal landing",
  } as const;
  return [
    {
      ...common,
      key: `slowdown-distance-${end}`,
      title: `Distance of the ${end} slowdown switch before landing ${landing.marking}`,
      how: `Move the car slowly ${end} on inspection control until the signal changes, stop, and measure from the car sill to the level of landing ${landing.marking}.${inputs}`,
      caution: measuring,
      expected: slowdownLimit(recorded),
      source:
        recorded === null
          ? "no distance is recorded for this lift; the calculator for terminal slowdown says what it needs"
          : "the distance recorded for this lift",
    },
    {
      ...common,
      key: `slowdown-order-${end}`,
      title: `Order of the switches at the ${end === "up" ? "upper" : "lower"} end`,
      how: "From the car top or the pit, compare the ramp with the switches in the shaft and note in which order they act while the car comes to the terminal landing and beyond. The car is not run beyond its landing for this.",
      caution: end === "up" ? cautions.carTop : cautions.pit,
      expected: {
        kind: "order",
        direction: end,
        order: ["slowdown switch", "landing level", "final switch"],
      },
      source: `${noSource}; the final switch acts beyond the terminal landing and before car or counterweight touches a buffer, ${finalSource}`,
    },
  ];
}

function finalSteps({ lift, signals }: CheckedLift, end: End, landing: Landing): PlanStep[] {
  const recorded = end === "up" ? lift.upFinalDistance : lift.downFinalDistance;
  const inputs = inputWords(signals, end === "up" ? "up final switch" : "down final switch");
  const common = {
    ...atLanding(landing),
    part: "switch",
    searchWords: "final limit switch operated, lift dead at the terminal landing",
  } as const;
  return [
    {
      ...common,
      key: `final-distance-${end}`,
      title: `Distance of the ${end} final switch beyond landing ${landing.marking}`,
      how: `With the car at the level of landing ${landing.marking}, measure from the ramp to the point where the final switch acts.${inputs}`,
      caution: measuring,
      expected: finalLimit(recorded),
      source:
        recorded === null
          ? "no distance is recorded for this lift"
          : `the distance recorded for this lift; as near to the landing as it can be without acting by accident, ${finalSource}`,
    },
    {
      ...common,
      key: `final-chain-${end}`,
      title: `The ${end} final switch opens the safety chain`,
      how: "Operate the switch by hand with the car held still, watch the chain, by the maker's procedure. If the chain does not open, stop here. Try to move the car only from where nobody is in its way: never with a person in the pit, never towards the end with a person on the car top.",
      caution: `${cautions.chain} ${end === "up" ? cautions.carTop : cautions.pit}`,
      expected: { kind: "yes", question: "Does the chain open, and does the car stay still?" },
      source: finalSource,
    },
  ];
}

/** A hydraulic lift need not have a final switch at the lower end: it is checked where one is recorded. */
function hasFinal({ lift, signals }: CheckedLift, end: End): boolean {
  if (end === "up" || lift.driveKind !== "hydraulic") return true;
  return lift.downFinalDistance !== null || signals.some(({ role }) => role === "down final switch");
}

function stepsOfEnd(checked: CheckedLift, end: End, landing: Landing): PlanStep[] {
  return hasFinal(checked, end)
    ? [...slowdownSteps(checked, end, landing), ...finalSteps(checked, end, landing)]
    : slowdownSteps(checked, end, landing).slice(0, 1);
}

export const terminalSlowdownPlan: CheckPlan = {
  id: "terminal-slowdown",
  name: "Slowdown and final switches",
  purpose:
    "Proves that the switches at both ends act where they are recorded, in their order, and that the final ones open the chain.",
  cautions: [
    "Isolate and lock off before a switch or its ramp is moved.",
    "No limit or slowdown switch is held or linked for this check.",
    cautions.decide,
  ],
  steps: (checked) => {
    const landings = fromBelow(checked.landings);
    const [bottom, top] = [landings.at(0), landings.at(-1)];
    if (!bottom || !top || bottom === top) return [];
    return [...stepsOfEnd(checked, "up", top), ...stepsOfEnd(checked, "down", bottom)];
  },
};
