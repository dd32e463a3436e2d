import { defineCalculator, notEnough, type Outcome } from "./calculator.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Problem, ValueLine } from "./result.ts";
import { clause } from "./source.ts";
import { magnetDetail, type Orders, orderDrawing, zoneBars } from "./zone-drawings.ts";
import { positionKey, timeKey, zoneFields } from "./zone-fields.ts";
import { zoneFormulas } from "./zone-formulas.ts";
import { centreFromRuns, delayFromRuns, lengthOf, zonesOf } from "./zone-geometry.ts";
import {
  compareZone,
  stoppingAccuracy,
  unlockingZoneSource,
  type ZoneState,
  zoneGeometry,
  zoneVerdict,
} from "./zone-judgement.ts";
import {
  contradictionProblems,
  meanOfKnown,
  measureRun,
  positionsFromTimes,
  type RunEdges,
  type RunMeasure,
} from "./zone-measure.ts";
import { type Direction, readRun, type ZoneEdge } from "./zone-order.ts";
import { orderVerdict } from "./zone-order-verdict.ts";

type Values = ValuesOf<typeof zoneFields>;

const edges: readonly ZoneEdge[] = ["upperOn", "lowerOn", "upperOff", "lowerOff"];
const whereOf = (values: Values): string =>
  values.landing === undefined || values.landing.trim() === ""
    ? "here"
    : `at landing ${values.landing.trim()}`;

const practice =
  "Check values of common practice, no source: a 300 mm magnet with its middle between the two sensors when the sills are level; moving down, the lower sensor comes on first.";
const learned =
  "With learned positions the zone centre need not be where the car stops: the sills are measured on their own.";

function orderOutcome(orders: Orders, values: Values, problems: Problem[] = []): Outcome {
  const verdict = orderVerdict({
    up: readRun(orders.up, "up", values.sensorsOn),
    down: readRun(orders.down, "down", values.sensorsOn),
    seenAt: values.seenAt ?? "unknown",
    count: values.countDirection ?? "unknown",
    where: whereOf(values),
  });
  return {
    verdict,
    comparisons: [],
    values: [],
    drawings: [orderDrawing(orders, values.sensorsOn)],
    problems,
    notes: [practice],
  };
}

/** The check speed, or the sentence why it is not believed. A lift may run up to 5 % over its rated speed. */
function checkSpeed(values: Values, pen: Pen): { speed: number | undefined; problems: Problem[] } {
  const { speed, ratedSpeed } = values;
  if (speed === undefined || ratedSpeed === undefined || speed <= 1.05 * ratedSpeed)
    return { speed, problems: [] };
  const rated = pen.write(ratedSpeed, "m/s", 2);
  const slip = speed / 10 <= ratedSpeed ? ` A slipped point, ${pen.write(speed / 10, "m/s", 2)}?` : "";
  const sentence = `Above this lift's ${rated}.${slip} No signal delay is computed until you decide.`;
  return { speed: undefined, problems: [{ field: "speed", sentence }] };
}

function runEdges(values: Values, direction: Direction): RunEdges {
  const found: Partial<Record<ZoneEdge, number>> = {};
  for (const edge of edges) {
    const value =
      values.measured === "times" ? values[timeKey(direction, edge)] : values[positionKey(direction, edge)];
    if (value !== undefined) found[edge] = value;
  }
  return found;
}

interface Measured {
  readonly up: RunMeasure;
  readonly down: RunMeasure;
  readonly problems: Problem[];
}

function measureRuns(values: Values, speed: number): Measured {
  const measure = (direction: Direction): RunMeasure => {
    const raw = runEdges(values, direction);
    const level = direction === "up" ? values.upLevelTime : values.downLevelTime;
    const byTime = values.measured === "times";
    const positions = byTime ? positionsFromTimes({ edges: raw, level }, direction, speed) : raw;
    const run = measureRun(positions, direction, values.sensorsOn, values.sensorSpacing);
    return byTime && level === undefined ? { ...run, centre: null } : run;
  };
  const [up, down] = [measure("up"), measure("down")];
  const keyOf = values.measured === "times" ? timeKey : positionKey;
  const problems = (["up", "down"] as const).flatMap((direction) =>
    contradictionProblems(direction === "up" ? up : down, direction, (edge) => keyOf(direction, edge)),
  );
  return { up, down, problems };
}

/** Centres of the two runs, and lengths and spacing as measured, else as entered. */
interface Known {
  readonly centreUp: number | null;
  readonly centreDown: number | null;
  readonly upperLength: number | null;
  readonly lowerLength: number | null;
  readonly spacing: number | null;
}

function knownFrom(values: Values, measured: Measured | null): Known {
  if (measured === null) {
    return {
      centreUp: values.centreUp ?? null,
      centreDown: values.centreDown ?? null,
      upperLength: values.magnetLength ?? null,
      lowerLength: values.magnetLength ?? null,
      spacing: values.sensorSpacing ?? null,
    };
  }
  const { up, down } = measured;
  const upper = meanOfKnown([up.upperLength, down.upperLength]);
  const lower = meanOfKnown([up.lowerLength, down.lowerLength]);
  return {
    centreUp: up.centre,
    centreDown: down.centre,
    upperLength: upper ?? lower ?? values.magnetLength ?? null,
    lowerLength: lower ?? upper ?? values.magnetLength ?? null,
    spacing: meanOfKnown([up.spacing, down.spacing]) ?? values.sensorSpacing ?? null,
  };
}

const downField = {
  positions: "centreDown",
  edges: "downUpperOn",
  times: "downLevelTime",
  order: "orderDown",
} as const;

interface Centred {
  readonly centre: number | null;
  readonly delay: number | null;
  readonly problems: Problem[];
  readonly notes: string[];
}

function centreAndDelay(values: Values, known: Known, speed: number | undefined, pen: Pen): Centred {
  const { centreUp, centreDown } = known;
  if (centreUp === null || centreDown === null) {
    const centre = centreUp ?? centreDown;
    const notes =
      centre === null
        ? []
        : [
            "One direction only: the signal delay is still in the zone centre. Run the other direction as well.",
          ];
    return { centre, delay: null, problems: [], notes };
  }
  const field = downField[values.measured];
  const longest = Math.max(known.upperLength ?? 0, known.lowerLength ?? 0);
  if (longest > 0 && Math.abs(centreUp - centreDown) > 2 * longest) {
    const sentence =
      "Up and down differ by more than twice the magnet length. Two landings, or a slipped point? No centre is computed until you decide.";
    return { centre: null, delay: null, problems: [{ field, sentence }], notes: [] };
  }
  const centre = centreFromRuns(centreUp, centreDown);
  if (centreUp < centreDown) {
    const sentence =
      "Moving down the zone lies higher than moving up: a delay shifts it the other way. Up and down exchanged? No signal delay is computed until you decide.";
    return { centre, delay: null, problems: [{ field, sentence }], notes: [] };
  }
  if (speed === undefined) return { centre, delay: null, problems: [], notes: [] };
  const delay = delayFromRuns(centreUp, centreDown, speed);
  const perTen = pen.write(0.01 * speed, "mm", 0);
  const notes = [
    `At this speed 10 ms of delay shift an edge by ${perTen}; the mean of both directions is free of it.`,
  ];
  return { centre, delay, problems: [], notes };
}

const upsideDown = (known: Known): string[] =>
  known.spacing !== null && known.spacing < 0
    ? ["The spacing comes out negative: the signals come in reversed order. Note all four edges to tell why."]
    : [];

/** Where length and spacing are off by the same ratio it is the speed, not both. */
function againstDrawing(values: Values, known: Known, pen: Pen): string[] {
  const length = meanOfKnown([known.upperLength, known.lowerLength]);
  const { magnetLength, sensorSpacing, speed } = values;
  if (values.measured !== "times" || speed === undefined) return [];
  if (length === null || known.spacing === null || magnetLength === undefined || !sensorSpacing) return [];
  const [one, other] = [length / magnetLength, known.spacing / sensorSpacing];
  if (Math.abs(one - 1) < 0.05 || Math.abs(one - other) > 0.03 * one) return [];
  const likely = pen.write(speed / one, "m/s", 2);
  return [
    `Length and spacing are off by the same ratio against the drawing: the speed was more likely ${likely}.`,
  ];
}

function zoneValues(state: ZoneState, known: Known, delay: number | null, pen: Pen): ValueLine[] {
  const lines: ValueLine[] = [];
  const add = (key: string, label: string, value: number | null, signed = false): void => {
    if (value !== null) lines.push(pen.value(key, label, value, "mm", 0, signed));
  };
  add("centre", "Zone centre", state.centre, true);
  if (delay !== null) lines.push(pen.value("delay", "Signal delay", delay, "ms", 0));
  add("upperLength", "Upper signal, length", known.upperLength);
  add("lowerLength", "Lower signal, length", known.lowerLength);
  add("spacing", "Sensor spacing", known.spacing);
  if (state.zones === null) return lines;
  add("overlap", "Both signals on, length", state.zones.both === null ? 0 : lengthOf(state.zones.both));
  add("union", "From first on to last off", lengthOf(state.zones.either));
  return lines;
}

function othersOf(values: Values): { others: ZoneState["others"]; problems: Problem[] } {
  const { othersChecked, othersLargest } = values;
  if (othersLargest === undefined) return { others: null, problems: [] };
  if (othersChecked === undefined || othersChecked === 0) {
    const sentence =
      "A zone centre of other landings is given, but none is counted as checked. It is left out until you decide.";
    return { others: null, problems: [{ field: "othersChecked", sentence }] };
  }
  return { others: { checked: othersChecked, largest: othersLargest }, problems: [] };
}

function numbersOutcome(
  values: Values,
  speed: number | undefined,
  measured: Measured | null,
  pen: Pen,
): Outcome {
  const known = knownFrom(values, measured);
  const { centre, delay, problems, notes } = centreAndDelay(values, known, speed, pen);
  const { others, problems: otherProblems } = othersOf(values);
  const { upperLength, lowerLength, spacing } = known;
  const complete =
    centre !== null && upperLength !== null && lowerLength !== null && spacing !== null && spacing >= 0;
  const state: ZoneState = {
    where: whereOf(values),
    sensorsOn: values.sensorsOn,
    centre,
    zones: complete
      ? zonesOf({ upperLength, lowerLength, spacing, centre, sensorsOn: values.sensorsOn })
      : null,
    tolerance: values.zoneTolerance,
    unlockNeeds: values.unlockNeeds,
    unlockingZone:
      values.unlockingZone === undefined ? undefined : values.unlockingZone === "350" ? 0.35 : 0.2,
    sillDistance: values.sillDistance,
    others,
  };
  const comparisons = compareZone(state, pen);
  const verdict = zoneVerdict(state, comparisons, pen);
  return {
    verdict,
    comparisons,
    values: zoneValues(state, known, delay, pen),
    drawings: [
      ...magnetDetail(
        state,
        { length: meanOfKnown([upperLength, lowerLength]), spacing },
        values.landing ?? "",
        pen,
      ),
      ...zoneBars(state, pen),
    ],
    problems: [...problems, ...otherProblems],
    missing:
      centre === null && values.measured === "positions" && problems.length === 0
        ? ["centreUp", "centreDown"]
        : [],
    notes: [...notes, ...upsideDown(known), ...againstDrawing(values, known, pen), learned, practice],
  };
}

function work(values: Values, pen: Pen): Outcome {
  if (values.measured === "order") {
    const orders: Orders = {
      ...(values.orderUp === undefined ? {} : { up: values.orderUp }),
      ...(values.orderDown === undefined ? {} : { down: values.orderDown }),
    };
    return orderOutcome(orders, values);
  }
  const { speed, problems } = checkSpeed(values, pen);
  if (values.measured === "times" && speed === undefined) {
    return notEnough("Times need the speed at which the car passed.", "Correct the check speed.", {
      problems,
    });
  }
  const measured = values.measured === "positions" ? null : measureRuns(values, speed ?? 0);
  const all = [...problems, ...(measured?.problems ?? [])];
  if (measured !== null && all.length === 0) {
    const orders: Orders = {
      ...(measured.up.order === null ? {} : { up: measured.up.order }),
      ...(measured.down.order === null ? {} : { down: measured.down.order }),
    };
    const outcome = orderOutcome(orders, values);
    // A reversed order makes every computed place meaningless; only a right one is followed by numbers.
    if (outcome.verdict.holds === false) return outcome;
  }
  const outcome = numbersOutcome(values, speed, measured, pen);
  return { ...outcome, problems: [...all, ...outcome.problems] };
}

export const zoneSensors = defineCalculator({
  id: "zone-sensors",
  name: "Zone sensors and magnets",
  purpose:
    "Tells from positions, times or the mere order of the zone signals whether magnet and sensors are in place.",
  words: [
    "zone signals reversed",
    "zone sensors crossed",
    "zone sensor dead",
    "door zone magnet moved",
    "lift stops too low",
    "lift stops a hand's breadth too high",
    "step at the landing",
    "levelling wrong at one floor",
    "unlocking zone reach",
    "signal delay",
    "magnet length",
    "sensor spacing",
  ],
  inputs: zoneFields,
  cautions: [
    "Measure from the car roof on inspection control, one person in control, stop switch within reach.",
    "With doors open the car may creep or re-level: nobody steps over the sill, hands and feet out of the opening.",
    "Live voltage only by trained people with a rated meter.",
    "Isolate and lock off before you touch a magnet, a sensor or a wire.",
    "Nothing is bridged for this test, and car and landing doors are never bridged together.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [
    stoppingAccuracy,
    unlockingZoneSource,
    zoneGeometry,
    clause("common practice", "", "", "", "300 mm magnet, middle between the sensors with the sills level"),
  ],
  formulas: zoneFormulas,
  work,
});
