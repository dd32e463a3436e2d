import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import {
  carSpeedAt,
  type Hoist,
  ropingRatio,
  sheaveSpeed,
  sheaveTorque,
  slipOf,
  steadyPower,
  synchronousFrequency,
  synchronousSpeed,
} from "./drive-physics.ts";
import type { ValuesOf } from "./field.ts";
import { motorFields } from "./motor-fields.ts";
import { driveSource, motorFormulas } from "./motor-formulas.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, ValueLine, Verdict } from "./result.ts";
import { clause, whoDecides } from "./source.ts";

type Values = ValuesOf<typeof motorFields>;

const speedSource = clause(
  "from memory",
  "EN 81-20",
  "2020",
  "5.9.2.4",
  "Car speed at half load, down, mid travel, all acceleration excluded, not above rated by more than 5 %",
);
const notSlower = {
  status: "common practice",
  document: "",
  edition: "",
  clause: "",
  words: "not slower than rated by more than 8 %",
} as const;

/** Slip from which plate and poles rather contradict each other than describe a motor. */
const likelySlip = 0.25;

interface Plan {
  readonly hoist: Hoist;
  readonly hung: { readonly sheaveDiameter: number; readonly roping: number };
  readonly sheave: number;
  readonly motor: number;
  readonly fullUp: number;
  readonly emptyDown: number;
  readonly largest: number;
  /** Poles where they are an even number, as motors have. */
  readonly poles: number | null;
  readonly synchronous: number | null;
}

function planOf(values: Values): Plan {
  const { ratedLoad, balance, speed, efficiency, sheaveDiameter, frequency } = values;
  const hoist: Hoist = { ratedLoad, balance, speed, efficiency };
  const hung = { sheaveDiameter, roping: ropingRatio[values.roping] };
  const sheave = sheaveSpeed(speed, hung);
  const fullUp = steadyPower(hoist, ratedLoad, "up");
  const emptyDown = steadyPower(hoist, 0, "down");
  const poles = values.poles !== undefined && values.poles % 2 === 0 ? values.poles : null;
  return {
    hoist,
    hung,
    sheave,
    motor: sheave * values.gear,
    fullUp,
    emptyDown,
    largest: Math.max(fullUp, emptyDown),
    poles,
    synchronous: poles === null || frequency === undefined ? null : synchronousSpeed(frequency, poles),
  };
}

function compare(values: Values, plan: Plan, pen: Pen): Comparison[] {
  const { platePower, measuredSpeed, speed } = values;
  const found: Comparison[] = [];
  if (platePower !== undefined) {
    const most = pen.write(platePower, "kW", 2);
    const source = driveSource;
    const label = "Largest steady power";
    const limitWords = `at most the plate's ${most}`;
    found.push(
      pen.compare({
        key: "power",
        label,
        value: plan.largest,
        unit: "kW",
        digits: 2,
        most: platePower,
        limitWords,
        source,
        field: "platePower",
      }),
    );
  }
  if (measuredSpeed === undefined) return found;
  const asked = {
    label: "Car speed measured",
    value: measuredSpeed,
    unit: "m/s",
    digits: 3,
    field: "measuredSpeed",
  } as const;
  const [least, most] = [speed * 0.92, speed * 1.05];
  return [
    ...found,
    pen.compare({
      ...asked,
      key: "fast",
      most,
      limitWords: `at most ${pen.write(most, "m/s", 3)}`,
      source: speedSource,
    }),
    pen.compare({
      ...asked,
      key: "slow",
      least,
      limitWords: `at least ${pen.write(least, "m/s", 3)}`,
      source: notSlower,
    }),
  ];
}

const failedWords = {
  power: {
    because: "It would run hot, and trip with a full car or with an empty one.",
    next: "Compare balance, efficiency and speed with the maker's data. A motor rated for short or intermittent duty is judged by the maker's curve.",
  },
  fast: {
    because: "Speed set too high, wrong sheave, gear or roping entered, or a wrong encoder scale.",
    next: "Measure the speed again at mid travel, then compare the entries of the drive with the lift.",
  },
  slow: {
    because: "Slip under load, low supply voltage, or a wrong entry of the drive.",
    next: "Measure the supply while it runs, by trained people with a rated meter, then compare the entries of the drive.",
  },
} as const;

function verdictOf(plan: Plan, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const power = (value: number): string => pen.write(value, "kW", 2);
  const needs = `Full load up needs ${power(plan.fullUp)}, the empty car down ${power(plan.emptyDown)} at the motor shaft.`;
  const failed = comparisons.find((each) => each.holds === false);
  if (failed !== undefined) {
    const words = failedWords[failed.key as keyof typeof failedWords];
    const sentence =
      failed.key === "power"
        ? `The motor is too small for this lift in steady travel. ${needs}`
        : `The car runs too ${failed.key === "fast" ? "fast" : "slowly"}: ${pen.write(failed.value ?? 0, "m/s", 3)}.`;
    return { word: "Outside", holds: false, sentence, ...words, until: whoDecides };
  }
  if (comparisons.length === 0) {
    return {
      word: "Not enough",
      holds: null,
      sentence: needs,
      because: "No plate power and no measured speed is entered to compare.",
      next: "Read power, speed, frequency and poles from the motor's plate.",
      until: whoDecides,
    };
  }
  return {
    word: "Within",
    holds: true,
    sentence: `Within what was entered. ${needs}`,
    because: comparisons.some((each) => each.key === "power") ? "" : "The motor's power was not compared.",
    next: "",
    until: whoDecides,
  };
}

function plateLines(values: Values, plan: Plan, pen: Pen): ValueLine[] {
  const lines: ValueLine[] = [];
  const { synchronous, poles } = plan;
  const { plateSpeed, motor, gear } = values;
  if (synchronous !== null)
    lines.push(pen.value("synchronous", "Synchronous speed", synchronous, "1/min", 1));
  if (
    synchronous !== null &&
    plateSpeed !== undefined &&
    motor === "asynchronous" &&
    plateSpeed < synchronous
  ) {
    lines.push(pen.value("slip", "Slip at the plate's speed", slipOf(synchronous, plateSpeed), "%", 2));
  }
  if (poles !== null && motor === "synchronous") {
    const needed = synchronousFrequency(plan.motor, poles);
    lines.push(pen.value("neededFrequency", "Frequency at rated speed", needed, "Hz", 2));
  }
  if (plateSpeed !== undefined) {
    const car = carSpeedAt(plateSpeed, gear, plan.hung);
    lines.push(pen.value("plateCarSpeed", "Car speed at the plate's motor speed", car, "m/s", 3));
  }
  return lines;
}

function valuesFor(values: Values, plan: Plan, pen: Pen): ValueLine[] {
  const { hoist, hung } = plan;
  const torque = sheaveTorque(hoist.ratedLoad * (1 - hoist.balance), hoist.efficiency, hung);
  const lines = [
    pen.value("sheaveSpeed", "Sheave at rated speed", plan.sheave, "1/min", 2),
    pen.value("motorSpeed", "Motor at rated speed", plan.motor, "1/min", 1),
    pen.value("fullUp", "Power, full load up", plan.fullUp, "kW", 3),
    pen.value("emptyDown", "Power, empty car down", plan.emptyDown, "kW", 3),
    pen.value("torque", "Torque at the sheave, full load up", torque, "N·m", 1),
    pen.value("motorTorque", "Torque at the motor, full load up", torque / values.gear, "N·m", 1),
    ...plateLines(values, plan, pen),
  ];
  const { acceleration, movingMass } = values;
  if (acceleration === undefined || movingMass === undefined) return lines;
  const added = (movingMass * acceleration * hoist.speed) / hoist.efficiency;
  return [
    ...lines,
    pen.value("accelerating", "Power added at the end of acceleration", added, "kW", 3),
    pen.value("peak", "Largest power while accelerating", plan.largest + added, "kW", 3),
  ];
}

function powerCurve(values: Values, plan: Plan, pen: Pen): Drawing {
  const { hoist } = plan;
  const balanced = hoist.balance * hoist.ratedLoad;
  const loads = [0, balanced, hoist.ratedLoad];
  const line = (direction: "up" | "down"): [number, number][] =>
    loads.map((load) => [load, steadyPower(hoist, load, direction)]);
  const { platePower } = values;
  const heavier = plan.fullUp >= plan.emptyDown;
  return {
    kind: "curve",
    title: `Steady power over the load: nothing to lift at ${pen.write(balanced, "kg", 0)}`,
    x: { label: "Load in the car", quantity: "mass", unit: "kg", digits: 0 },
    y: { label: "Power at the motor shaft", quantity: "power", unit: "kW", digits: 1 },
    series: [
      { name: "up", points: line("up") },
      { name: "down", points: line("down") },
    ],
    limits:
      platePower === undefined
        ? []
        : [
            {
              axis: "y",
              at: platePower,
              words: `plate, ${pen.write(platePower, "kW", 1)}`,
              wrongSide: "above",
            },
          ],
    marks: [
      {
        x: heavier ? hoist.ratedLoad : 0,
        y: plan.largest,
        words: pen.write(plan.largest, "kW", 2),
        outside: platePower !== undefined && plan.largest > platePower * (1 + 1e-9),
      },
    ],
  };
}

function contradictions(values: Values, plan: Plan, pen: Pen): Problem[] {
  const problems: Problem[] = [];
  const { poles, plateSpeed, motor } = values;
  if (poles !== undefined && plan.poles === null) {
    problems.push({
      field: "poles",
      sentence: "Poles come in pairs: an even number. They are left out until you decide.",
    });
  }
  if (plan.synchronous === null || plateSpeed === undefined || motor !== "asynchronous") return problems;
  const field = pen.write(plan.synchronous, "1/min", 0);
  if (plateSpeed >= plan.synchronous) {
    const sentence = `An asynchronous motor that drives turns slower than its field, ${field}. Poles or frequency mistaken? The slip is left out until you decide.`;
    problems.push({ field: "plateSpeed", sentence });
  } else if (slipOf(plan.synchronous, plateSpeed) > likelySlip) {
    const sentence = `That is far below the field's ${field}: more poles, another frequency, or the low speed of a two-speed motor? Computed as entered.`;
    problems.push({ field: "plateSpeed", sentence });
  }
  return problems;
}

function notesOf(values: Values, plan: Plan, pen: Pen): string[] {
  const notes = [
    "Steady travel with the ropes in balance; rope weight and rotating parts are not in it.",
    "Below nothing the load drives the motor; that power goes back, into a resistor, or into the worm gear.",
  ];
  const { plateSpeed, speed, gear } = values;
  if (plateSpeed === undefined) return notes;
  const car = carSpeedAt(plateSpeed, gear, plan.hung);
  if (Math.abs(car / speed - 1) <= 0.1) return notes;
  return [
    `At the plate's speed the car would run ${pen.write(car, "m/s", 3)}, rated is ${pen.write(speed, "m/s", 2)}: gear, sheave or roping entered wrong, or a motor meant for another speed.`,
    ...notes,
  ];
}

function work(values: Values, pen: Pen): Outcome {
  const plan = planOf(values);
  const comparisons = compare(values, plan, pen);
  return {
    verdict: verdictOf(plan, comparisons, pen),
    comparisons,
    values: valuesFor(values, plan, pen),
    drawings: [powerCurve(values, plan, pen)],
    problems: contradictions(values, plan, pen),
    notes: notesOf(values, plan, pen),
  };
}

export const motorDrive = defineCalculator({
  id: "motor-drive",
  name: "Motor and drive",
  purpose:
    "Computes power, torque, speed, slip and frequency of the motor from the lift, and compares them with the plate and the measured speed.",
  words: [
    "motor runs hot",
    "motor overloaded",
    "drive overcurrent",
    "motor power",
    "motor torque",
    "synchronous speed",
    "slip",
    "number of poles",
    "motor frequency",
    "gear ratio",
    "runs too fast",
    "runs too slow",
    "rated speed not reached",
  ],
  inputs: motorFields,
  cautions: [
    "Rotating machine: keep hands, sleeves and cables away, covers on, one person in control.",
    "Drives stay charged after switching off: wait as the maker says and prove dead before you touch.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [driveSource, speedSource, notSlower],
  formulas: motorFormulas,
  work,
});
