import { defineCalculator, type Outcome } from "./calculator.ts";
import { doorFields } from "./door-fields.ts";
import {
  closingEnergy,
  fastestClosing,
  isTelescopic,
  reducedTravel,
  referredMass,
  shortestClosing,
} from "./door-physics.ts";
import type { Drawing } from "./drawing.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, ValueLine, Verdict } from "./result.ts";
import { clause, derived, whoDecides } from "./source.ts";

type Values = ValuesOf<typeof doorFields>;

const doorClause = (words: string) => clause("second-hand", "EN 81-20", "2020", "5.3.6.2.2.1", words);
const energySource = doorClause(
  "Kinetic energy of the door at average closing speed at most 10 J; at most 4 J with the protective device failed or overridden, and an acoustic signal at each closing",
);
const forceSource = doorClause(
  "Force to prevent closing at most 150 N, not in the first third of the travel",
);
const travelSource = doorClause(
  "Average speed over the travel reduced by 25 mm at each end of centre-closing, 50 mm at each end of side-closing doors",
);
const energyOfMotion = derived("energy of moving panels");

const withDevice = 10;
const withoutDevice = 4;
const mostForce = 150;

interface Plan {
  readonly mass: number;
  readonly travel: number;
  readonly limit: number;
  /** Average speed of the leading panel; null where nothing is measured. */
  readonly speed: number | null;
  readonly energy: number | null;
  readonly shortest: number;
}

function planOf(values: Values): Plan {
  const mass = isTelescopic(values.arrangement)
    ? referredMass(values.fastMass ?? 0, values.slowMass ?? 0)
    : (values.mass ?? 0);
  const travel = reducedTravel(values.arrangement, values.width);
  const limit = values.device === "failed" ? withoutDevice : withDevice;
  const byTime = values.closingTime === undefined ? null : travel / values.closingTime;
  const speed = values.measured === "speed" ? (values.closingSpeed ?? null) : byTime;
  return {
    mass,
    travel,
    limit,
    speed,
    energy: speed === null ? null : closingEnergy(mass, speed),
    shortest: shortestClosing(mass, limit, travel),
  };
}

function compare(values: Values, plan: Plan, pen: Pen): Comparison[] {
  const device = values.device === "failed" ? "protective device failed" : "protective device working";
  const energy = pen.compare({
    key: "energy",
    label: "Closing energy",
    value: plan.energy,
    unit: "J",
    digits: 2,
    most: plan.limit,
    limitWords: `at most ${pen.write(plan.limit, "J", 0)}, ${device}`,
    source: energySource,
    field: values.measured === "speed" ? "closingSpeed" : "closingTime",
    ...(plan.energy === null ? { open: "neither time nor speed is entered." } : {}),
  });
  if (values.force === undefined) return [energy];
  return [
    energy,
    pen.compare({
      key: "force",
      label: "Force that stops the closing",
      value: values.force,
      unit: "N",
      digits: 0,
      most: mostForce,
      limitWords: `at most ${pen.write(mostForce, "N", 0)}`,
      source: forceSource,
      field: "force",
    }),
  ];
}

const hurts = "Until then the door can hurt somebody.";

function failedVerdict(plan: Plan, failed: Comparison, pen: Pen): Verdict {
  const outside = { word: "Outside", holds: false, until: `${hurts} ${whoDecides}` } as const;
  if (failed.key === "force") {
    return {
      ...outside,
      sentence: `The door pushes with ${pen.write(failed.value ?? 0, "N", 0)} before it stops.`,
      because: "",
      next: "Set force or torque limit of the door operator by the maker's instructions; look for stiff rollers that were compensated with force. Measure again after the first third of the travel.",
    };
  }
  const time = pen.write(plan.shortest, "s", 2);
  return {
    ...outside,
    sentence: `The door closes too fast: ${pen.write(plan.energy ?? 0, "J", 2)} where ${pen.write(plan.limit, "J", 0)} are allowed.`,
    because: `With ${pen.write(plan.mass, "kg", 0)} it may not be faster than ${pen.write(fastestClosing(plan.mass, plan.limit), "m/s", 3)} on average.`,
    next: `Set the closing so that it takes at least ${time} over ${pen.write(plan.travel, "mm", 0)}, by the maker's instructions, and measure again.`,
  };
}

function verdictOf(plan: Plan, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const failed = comparisons.find((each) => each.holds === false);
  if (failed !== undefined) return failedVerdict(plan, failed, pen);
  const shortest = `at least ${pen.write(plan.shortest, "s", 2)} over ${pen.write(plan.travel, "mm", 0)}`;
  if (plan.energy === null) {
    return {
      word: "Not enough",
      holds: null,
      sentence: `The closing must take ${shortest} for ${pen.write(plan.limit, "J", 0)}.`,
      because: "How it closes is not entered.",
      next: "Take the closing time between the two marks of the reduced distance, as the mean of several closings.",
      until: whoDecides,
    };
  }
  const force = comparisons.some((each) => each.key === "force");
  return {
    word: "Within",
    holds: true,
    sentence: `The door closes with ${pen.write(plan.energy, "J", 2)}; ${pen.write(plan.limit, "J", 0)} are allowed.`,
    because: force ? "" : "The force that stops it was not compared.",
    next: "Prove that an obstacle reopens the door, and do it at every landing: landing panels differ.",
    until: whoDecides,
  };
}

function valuesFor(plan: Plan, pen: Pen): ValueLine[] {
  const { mass, travel, speed, energy } = plan;
  const lines = [
    pen.value("mass", "Mass referred to the leading panel", mass, "kg", 2),
    pen.value("travel", "Reduced distance of the leading panel", travel, "mm", 0),
    pen.value("fastest10", "Fastest average speed for 10 J", fastestClosing(mass, withDevice), "m/s", 4),
    pen.value(
      "shortest10",
      "Shortest closing time for 10 J",
      shortestClosing(mass, withDevice, travel),
      "s",
      3,
    ),
    pen.value("fastest4", "Fastest average speed for 4 J", fastestClosing(mass, withoutDevice), "m/s", 4),
    pen.value(
      "shortest4",
      "Shortest closing time for 4 J",
      shortestClosing(mass, withoutDevice, travel),
      "s",
      3,
    ),
  ];
  if (speed === null || energy === null) return lines;
  return [
    pen.value("energy", "Closing energy", energy, "J", 3),
    pen.value("speed", "Average speed of the leading panel", speed, "m/s", 3),
    ...lines,
  ];
}

function energyCurve(plan: Plan, pen: Pen): Drawing {
  const { mass, travel, limit, shortest, speed, energy } = plan;
  const measured = speed === null ? shortest : travel / speed;
  const from = Math.min(shortest, measured) * 0.8;
  const to = Math.max(shortest, measured) * 1.3;
  const points = Array.from({ length: 61 }, (_, index): [number, number] => {
    const time = from + ((to - from) * index) / 60;
    return [time, closingEnergy(mass, travel / time)];
  });
  const at = energy ?? limit;
  return {
    kind: "curve",
    title: `Energy over the closing time: ${pen.write(limit, "J", 0)} at ${pen.write(shortest, "s", 2)}`,
    x: { label: "Closing time over the reduced distance", quantity: "time", unit: "s", digits: 2 },
    y: { label: "Closing energy", quantity: "energy", unit: "J", digits: 1 },
    series: [{ name: "energy", points }],
    limits: [{ axis: "y", at: limit, words: `most, ${pen.write(limit, "J", 0)}`, wrongSide: "above" }],
    marks: [{ x: measured, y: at, words: pen.write(at, "J", 2), outside: at > limit * (1 + 1e-9) }],
  };
}

function notesOf(values: Values): string[] {
  const notes = [
    "For power-operated doors that slide horizontally; hinged and vertical doors have other rules.",
    "Only EN 81-20 is compared. Codes of other regions have other energies and forces; do not mix them.",
  ];
  if (values.device !== "failed") return notes;
  return ["With the protective device failed, each closing needs an acoustic signal as well.", ...notes];
}

function work(values: Values, pen: Pen): Outcome {
  const plan = planOf(values);
  const comparisons = compare(values, plan, pen);
  return {
    verdict: verdictOf(plan, comparisons, pen),
    comparisons,
    values: valuesFor(plan, pen),
    drawings: [energyCurve(plan, pen)],
    problems: [],
    notes: notesOf(values),
  };
}

export const doorsEnergy = defineCalculator({
  id: "doors-energy",
  name: "Doors: closing energy and time",
  purpose:
    "Computes the energy of a closing door, the shortest closing time, and whether energy and force are allowed.",
  words: [
    "doors slam",
    "doors close too fast",
    "door hit somebody",
    "doors close on people",
    "closing time of the door",
    "closing force",
    "door kinetic energy",
    "door closing speed",
    "nudging",
    "door pushes too hard",
    "safety edge failed",
    "light curtain failed",
  ],
  inputs: doorFields,
  cautions: [
    "Measure with the lift out of use for others: keep fingers out of the meeting edges, and the gauge between you and the panel.",
    "Never hold a door against its drive by hand to try it out.",
    "With a landing door open and no car behind it somebody can fall: guard the entrance.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [energySource, forceSource, travelSource, energyOfMotion],
  formulas: [
    {
      name: "Closing energy",
      expression: "E = m*v^2/2; v = s/t; t_1 = s*sqrt(m/(2*E_1))",
      symbols: {
        E: ["J", "closing energy"],
        m: ["kg", "mass referred to the leading panel"],
        v: ["m/s", "average speed of the leading panel"],
        s: ["mm", "reduced distance of the leading panel"],
        t: ["s", "closing time over it"],
        t_1: ["s", "shortest closing time"],
        E_1: ["J", "energy allowed: 10 J, or 4 J"],
      },
      source: energyOfMotion,
    },
    {
      name: "Telescopic door of two speeds",
      expression: "m = m_1 + m_2/4",
      symbols: {
        m: ["kg", "mass referred to the leading panel"],
        m_1: ["kg", "mass of the fast panels"],
        m_2: ["kg", "mass of the slow panels"],
      },
      source: energyOfMotion,
    },
    {
      name: "Reduced distance",
      expression: "s_1 = W - 2*b; s_2 = W/2 - 2*c",
      symbols: {
        s_1: ["mm", "side opening"],
        s_2: ["mm", "each half of a centre opening"],
        W: ["mm", "clear opening width"],
      },
      constants: {
        b: [0.05, "m", "end of a side-closing door, 50 mm"],
        c: [0.025, "m", "end of a centre-closing door, 25 mm"],
      },
      source: travelSource,
    },
  ],
  work,
});
