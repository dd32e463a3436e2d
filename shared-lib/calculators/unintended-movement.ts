import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, ValueLine, Verdict } from "./result.ts";
import { clause, whoDecides } from "./source.ts";
import { unintendedFields } from "./unintended-fields.ts";
import { apronSource, distanceModel, limitSource, unintendedFormulas } from "./unintended-formulas.ts";
import {
  allowedTravel,
  naturalAcceleration,
  type Runaway,
  type RunawayStop,
  runawayAt,
  stopRunaway,
} from "./unintended-physics.ts";

type Values = ValuesOf<typeof unintendedFields>;

const detectionSource = clause(
  "from memory",
  "EN 81-20",
  "2020",
  "5.6.7.7",
  "Detection at the latest when the car leaves the unlocking zone",
);
const leastApron = 0.75;
/** Below this a car out of balance is held by friction: it does not move by itself. */
const leastAcceleration = 0.01;

interface Case {
  readonly direction: "up" | "down";
  /** "empty car", "full car"; "" where only the acceleration is known. */
  readonly load: string;
  readonly runaway: Runaway;
  readonly stop: RunawayStop;
  readonly allowed: number;
}

interface Plan {
  readonly cases: readonly Case[];
  /** Loads with which the car stays where it is. */
  readonly still: readonly string[];
}

type Pull = Pick<Case, "direction" | "load"> & { readonly acceleration: number };

function pullsOf(values: Values): Pull[] {
  if (values.from === "entered") {
    const acceleration = values.acceleration ?? 0;
    return [
      { direction: "up", load: "", acceleration },
      { direction: "down", load: "", acceleration },
    ];
  }
  const { carMass: car = 0, ratedLoad = 0, counterweight = 0 } = values;
  const pull = (name: string, load: number): Pull => {
    const signed = naturalAcceleration({ car, load, counterweight });
    return { direction: signed > 0 ? "down" : "up", load: name, acceleration: Math.abs(signed) };
  };
  return [pull("empty car", 0), pull("full car", ratedLoad)];
}

function planOf(values: Values): Plan {
  const { detection, reaction, braking, doorHeight, apronHeight } = values;
  const allowed = allowedTravel({ doorHeight, apronHeight });
  const pulls = pullsOf(values);
  const moving = pulls.filter(({ acceleration }) => acceleration >= leastAcceleration);
  return {
    cases: moving.map(({ direction, load, acceleration }) => {
      const runaway = { acceleration, detection, reaction, braking };
      return { direction, load, runaway, stop: stopRunaway(runaway), allowed: allowed[direction] };
    }),
    still: pulls.filter((pull) => !moving.includes(pull)).map(({ load }) => load),
  };
}

const named = ({ direction, load }: Case): string => (load === "" ? direction : `${direction}, ${load}`);

function compare(values: Values, plan: Plan, pen: Pen): Comparison[] {
  const travels = plan.cases.map((each) =>
    pen.compare({
      key: `travel ${named(each)}`,
      label: `Travel ${named(each)}`,
      value: each.stop.total,
      unit: "mm",
      digits: 0,
      most: each.allowed,
      limitWords: `at most ${pen.write(each.allowed, "mm", 0)}`,
      source: limitSource,
    }),
  );
  return [
    ...travels,
    pen.compare({
      key: "apron",
      label: "Vertical part of the car apron",
      value: values.apronHeight,
      unit: "mm",
      digits: 0,
      least: leastApron,
      limitWords: `at least ${pen.write(leastApron, "mm", 0)}`,
      source: apronSource,
      field: "apronHeight",
    }),
  ];
}

const keepOut = "Until then the lift stays out of service: somebody in the doorway could be crushed or fall.";

function verdictOf(plan: Plan, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const failed = comparisons.find((each) => each.holds === false);
  const outside = { word: "Outside", holds: false, until: `${keepOut} ${whoDecides}` } as const;
  if (failed?.key === "apron") {
    return {
      ...outside,
      sentence: `The car apron is too short: ${pen.write(failed.value ?? 0, "mm", 0)}.`,
      because: "Below the car a gap opens into the well when the car stands above a landing.",
      next: "Compare the apron with the lift's papers; in an existing building other rules may hold.",
    };
  }
  if (failed !== undefined) {
    const worst = plan.cases.find((each) => failed.key === `travel ${named(each)}`);
    const parts = worst?.stop;
    return {
      ...outside,
      sentence: `The ${worst?.load || "car"} would travel ${pen.write(failed.value ?? 0, "mm", 0)} ${worst?.direction ?? ""} before it stands.`,
      because:
        parts === undefined
          ? ""
          : `Until detected ${pen.write(worst?.runaway.detection ?? 0, "mm", 0)}, reacting ${pen.write(parts.reactionTravel, "mm", 0)}, braking ${pen.write(parts.brakingTravel, "mm", 0)}.`,
      next: "Earlier detection, a shorter reaction or a stronger stopping element, by the maker's instructions; then the test of the maker with empty and full car.",
    };
  }
  if (plan.cases.length === 0) {
    return {
      word: "Not enough",
      holds: null,
      sentence: "With these masses the car does not begin to move by itself.",
      because: "Car and counterweight are nearly in balance in every case entered.",
      next: "Check the masses: a car this near to balance with and without load is unusual.",
      until: whoDecides,
    };
  }
  const travels = plan.cases.map((each) => `${pen.write(each.stop.total, "mm", 0)} ${named(each)}`);
  return {
    word: "Within",
    holds: true,
    sentence: `The car would stand after ${travels.join(", ")}.`,
    because: plan.cases
      .map((each) => `${pen.write(each.allowed, "mm", 0)} allowed ${each.direction}`)
      .join(", ")
      .concat("."),
    next: "A computation is no test: prove it as the maker describes, empty car up and full car down.",
    until: whoDecides,
  };
}

function valuesFor(plan: Plan, pen: Pen): ValueLine[] {
  return plan.cases.flatMap((each) => {
    const { stop, runaway } = each;
    const key = (name: string): string => `${name} ${named(each)}`;
    return [
      pen.value(key("acceleration"), `Acceleration, ${named(each)}`, runaway.acceleration, "m/s²", 3),
      pen.value(key("detected"), `Speed when detected, ${named(each)}`, stop.speedDetected, "m/s", 4),
      pen.value(key("reacting"), `Travelled while reacting, ${named(each)}`, stop.reactionTravel, "mm", 1),
      pen.value(key("braked"), `Speed when braking begins, ${named(each)}`, stop.speedBraked, "m/s", 4),
      pen.value(key("braking"), `Travelled while braking, ${named(each)}`, stop.brakingTravel, "mm", 1),
      pen.value(key("total"), `Whole travel, ${named(each)}`, stop.total, "mm", 1),
      pen.value(key("allowed"), `Travel allowed, ${each.direction}`, each.allowed, "mm", 0),
    ];
  });
}

function travelCurve(each: Case, pen: Pen): Drawing {
  const { runaway, stop, allowed } = each;
  const points = Array.from({ length: 81 }, (_, index): [number, number] => {
    const time = (stop.time * index) / 80;
    return [time, runawayAt(runaway, time)];
  });
  const outside = stop.total > allowed * (1 + 1e-9);
  return {
    kind: "curve",
    title: `Moving ${named(each)}: the car stands after ${pen.write(stop.total, "mm", 0)}`,
    x: { label: "Time after it begins to move", quantity: "time", unit: "s", digits: 2 },
    y: { label: "Distance from the landing", quantity: "length", unit: "mm", digits: 0 },
    series: [{ name: each.direction, points }],
    limits: [
      { axis: "y", at: allowed, words: `allowed, ${pen.write(allowed, "mm", 0)}`, wrongSide: "above" },
    ],
    marks: [{ x: stop.time, y: stop.total, words: pen.write(stop.total, "mm", 0), outside }],
  };
}

function notesOf(values: Values, plan: Plan): string[] {
  const notes = [
    "The distances allowed are from memory. Check them against the current text of EN 81-20, 5.6.7.5 before you rely on them.",
    "A partially enclosed well has one limit more, which is not compared here.",
  ];
  if (plan.still.length > 0) notes.unshift(`Does not move by itself: ${plan.still.join(", ")}.`);
  if (values.from === "masses") {
    notes.push(
      "Computed without friction and rotating parts, which make the movement slower; ropes are not counted.",
    );
  }
  return notes;
}

function work(values: Values, pen: Pen): Outcome {
  const plan = planOf(values);
  const comparisons = compare(values, plan, pen);
  return {
    verdict: verdictOf(plan, comparisons, pen),
    comparisons,
    values: valuesFor(plan, pen),
    drawings: plan.cases.map((each) => travelCurve(each, pen)),
    problems: [],
    notes: notesOf(values, plan),
  };
}

export const unintendedMovement = defineCalculator({
  id: "unintended-movement",
  name: "Unintended car movement",
  purpose:
    "Computes how far a car that leaves the landing with open doors travels before it stands, and how far it may.",
  words: [
    "unintended car movement",
    "car moves with open doors",
    "car drifts from the landing",
    "leaves the landing with doors open",
    "uncontrolled movement",
    "brake slides",
    "stopping element",
    "apron too short",
    "rollback at the landing",
    "UCM",
  ],
  inputs: unintendedFields,
  cautions: [
    "A lift whose car moved with open doors stays out of service until competent people have found the cause and reset it.",
    "The test is done by the maker's instructions with nobody in the car and the entrances guarded.",
    "The distances allowed here are from memory: check them against the current text.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [limitSource, apronSource, detectionSource, distanceModel],
  formulas: unintendedFormulas,
  work,
});
