import { type Direction, edgeWords, type ZoneEdge } from "../calculators/zone-order.ts";
import type { PlanStep } from "../contract/check.ts";
import type { Landing } from "../contract/lift.ts";
import {
  atLanding,
  type CheckedLift,
  type CheckPlan,
  cautions,
  fromBelow,
  inputWords,
  noSource,
} from "./check-plan.ts";

/** Where the car can be while it passes a landing in one direction: all the way, or only up to the terminal level. */
type Reach = "through" | "arriving" | "leaving";

interface Geometry {
  readonly magnetLength: number;
  readonly sensorSpacing: number;
}

/** Only whether the magnet is longer than the spacing changes the order; where it is not recorded, it usually is. */
const usual: Geometry = { magnetLength: 1, sensorSpacing: 0.5 };

function geometryOf({ lift }: CheckedLift): Geometry {
  const { magnetLength, sensorSpacing } = lift;
  return magnetLength !== null && sensorSpacing !== null ? { magnetLength, sensorSpacing } : usual;
}

/**
 * Edges in the order in which they come, sensors on the car with the upper one above: each sensor changes where it
 * meets an end of the magnet. Moving up past a landing: upper on, lower on, upper off, lower off; moving down: lower
 * on, upper on, lower off, upper off. At a terminal landing the car stops at the level, so half of them come.
 */
export function orderOfEdges(direction: Direction, reach: Reach, geometry: Geometry): readonly ZoneEdge[] {
  const [half, apart] = [geometry.magnetLength / 2, geometry.sensorSpacing / 2];
  const [on, off] = direction === "up" ? [-half, half] : [half, -half];
  const met: readonly { edge: ZoneEdge; at: number }[] = [
    { edge: "upperOn", at: on - apart },
    { edge: "upperOff", at: off - apart },
    { edge: "lowerOn", at: on + apart },
    { edge: "lowerOff", at: off + apart },
  ];
  const forward = direction === "up" ? 1 : -1;
  return met
    .map(({ edge, at }) => ({ edge, run: at * forward }))
    .filter(({ run }) => reach === "through" || (reach === "arriving" ? run < 0 : run > 0))
    .sort((a, b) => a.run - b.run)
    .map(({ edge }) => edge);
}

function reachOf(direction: Direction, index: number, count: number): Reach {
  if (index === count - 1) return direction === "up" ? "arriving" : "leaving";
  if (index === 0) return direction === "down" ? "arriving" : "leaving";
  return "through";
}

const runWords: Readonly<Record<Reach, (direction: Direction, marking: string) => string>> = {
  through: (direction, marking) =>
    `Let the lift run ${direction} past landing ${marking} without stopping there`,
  arriving: (direction, marking) => `Let the lift run ${direction} to landing ${marking} and stop`,
  leaving: (direction, marking) => `Let the lift leave landing ${marking} moving ${direction}`,
};

function step(checked: CheckedLift, landing: Landing, direction: Direction, reach: Reach): PlanStep {
  const inputs =
    inputWords(checked.signals, "upper zone sensor", landing.id) +
    inputWords(checked.signals, "lower zone sensor", landing.id);
  const practice =
    direction === "down"
      ? "moving down the lower sensor comes on before the upper one"
      : "moving up the upper sensor comes on before the lower one";
  return {
    key: `zone-${direction}-${landing.id}`,
    title: `Order of the zone sensors at ${landing.marking}, moving ${direction}`,
    how: `${runWords[reach](direction, landing.marking)}, and note the edges of both signals as they come.${inputs}`,
    caution: cautions.empty,
    ...atLanding(landing),
    part: "zone-magnet",
    expected: {
      kind: "order",
      direction,
      order: orderOfEdges(direction, reach, geometryOf(checked)).map((edge) => edgeWords[edge]),
    },
    source: `${noSource}: sensors on the car, ${practice}. Sensors in the well and magnet on the car: the two orders swap.`,
    searchWords: "zone sensor order reversed, will not level",
  };
}

/** Stopping accuracy is the distance of the two sills, measured; where the zone lies says nothing about it. */
function sillStep(landing: Landing): PlanStep {
  return {
    key: `sills-${landing.id}`,
    title: `Car sill to landing sill at ${landing.marking}`,
    how: `Let the lift stop at landing ${landing.marking}, doors fully open, nobody inside. Read a rule fixed at the landing sill from a step away. Car above the landing is positive.`,
    caution: `${cautions.landing} The car may creep or re-level with open doors: nobody steps over the sill, hands and feet stay out of the opening, and the rule is fixed or moved only after it is proved that the lift is kept from moving.`,
    ...atLanding(landing),
    part: "zone-magnet",
    expected: {
      kind: "value",
      unit: "mm",
      least: -10,
      most: 10,
      source: "EN 81-20:2020, 5.12.1.1.4: stopping accuracy; check the current text, local codes decide",
    },
    source: "EN 81-20:2020, 5.12.1.1.4",
    searchWords: "stops too low at one landing, zone magnet moved",
  };
}

export const zoneSensorsPlan: CheckPlan = {
  id: "zone-sensors",
  name: "Zone sensors at every landing",
  purpose:
    "Proves at each landing, up and down, that both zone signals come and in the right order, and that the car stops level.",
  cautions: [
    "Zone signals may allow movement or door opening with doors unlocked: the lift stays out of service until the order is proved in both directions at every landing.",
    cautions.carTop,
    cautions.decide,
  ],
  steps: (checked) => {
    const landings = fromBelow(checked.landings);
    if (landings.length < 2) return [];
    return landings.flatMap((landing, index) => [
      ...(["up", "down"] as const).map((direction) =>
        step(checked, landing, direction, reachOf(direction, index, landings.length)),
      ),
      sillStep(landing),
    ]);
  },
};
