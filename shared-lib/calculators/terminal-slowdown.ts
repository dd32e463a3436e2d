import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { ValuesOf } from "./field.ts";
import { motionDuring, type Stop, type StopRequest, stopFrom } from "./kinematics.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, Verdict } from "./result.ts";
import { slowdownFields } from "./slowdown-fields.ts";
import { kinematics, slowdownFormulas } from "./slowdown-formulas.ts";
import { clause, site, whoDecides } from "./source.ts";

type Values = ValuesOf<typeof slowdownFields>;

const normalStop = site("below the normal start of slowdown, unless the maker says otherwise");
const finalSwitches = clause(
  "from memory",
  "EN 81-20",
  "2020",
  "5.12.2",
  "Final limit switches act as near as possible to the terminal landings without risk of accidental action, before car or counterweight touches a buffer",
);

const points = 80;

interface Plan {
  readonly request: StopRequest;
  readonly stop: Stop;
  readonly reaction: number;
  readonly margin: number;
  /** v t_r + s + margin */
  readonly required: number;
  readonly switchAt: number | undefined;
  readonly where: string;
}

function planOf(values: Values): Plan {
  const request: StopRequest = {
    speed: values.speed,
    retardation: values.retardation,
    jerkStart: values.jerkStart,
    jerkEnd: values.jerkEnd ?? values.jerkStart,
  };
  const stop = stopFrom(request);
  const reaction = values.speed * values.reactionTime;
  const margin = values.margin ?? 0;
  return {
    request,
    stop,
    reaction,
    margin,
    required: reaction + stop.distance + margin,
    switchAt: values.side === "up" ? values.switchUp : values.switchDown,
    where: values.side === "up" ? "top landing" : "bottom landing",
  };
}

function compare(values: Values, plan: Plan, pen: Pen): Comparison[] {
  const { required, switchAt } = plan;
  const latest = pen.compare({
    key: "distance",
    label: "Switch before the level",
    value: switchAt ?? null,
    unit: "m",
    digits: 3,
    least: required,
    limitWords: `at least reaction, stop and margin, ${pen.write(required, "m", 3)}`,
    source: kinematics,
    field: values.side === "up" ? "switchUp" : "switchDown",
    ...(switchAt === undefined
      ? { open: `the switch is not entered; it needs at least ${pen.write(required, "m", 3)}.` }
      : {}),
  });
  const start = values.normalStart;
  if (start === undefined || values.makerAllows === "yes") return [latest];
  // "Less than": a switch exactly at the normal start would act in every ordinary stop.
  const most = start - 1e-6;
  const words = `less than the normal start of slowdown, ${pen.write(start, "m", 3)}`;
  const earliest =
    switchAt === undefined
      ? { key: "room", label: "Distance needed", value: required }
      : { key: "normal", label: "Switch before the level", value: switchAt };
  return [
    latest,
    pen.compare({ ...earliest, unit: "m", digits: 3, most, limitWords: words, source: normalStop }),
  ];
}

const keepOut = "Until then the lift stays out of service: the terminal stop is not sure.";

function failed(values: Values, plan: Plan, first: Comparison, pen: Pen): Verdict {
  const outside = { word: "Outside", holds: false, because: "" } as const;
  const write = (value: number): string => pen.write(value, "m", 3);
  const { required, switchAt = 0, reaction, stop } = plan;
  if (first.key === "room") {
    return {
      ...outside,
      sentence: `There is no place for the switch: the stop needs ${write(required)}, the normal slowdown begins at ${write(values.normalStart ?? 0)}.`,
      next: "Compare retardation, jerk, reaction time and the normal start with the maker's data.",
      until: `${keepOut} ${whoDecides}`,
    };
  }
  if (first.key === "normal") {
    return {
      ...outside,
      sentence: `The switch acts ${write(switchAt)} before the ${plan.where}, not after the normal start of slowdown.`,
      because: "It then cuts into every ordinary stop, and its own stop is never seen.",
      next: "Compare switch and normal start with the site's drawing and the maker's instructions.",
      until: whoDecides,
    };
  }
  const overrun = reaction + stop.distance - switchAt;
  const short = write(required - switchAt);
  return {
    ...outside,
    sentence: `The switch acts ${short} too late for the ${plan.where}.`,
    because:
      overrun > 0
        ? `The car would pass the level by ${write(overrun)} before it stands.`
        : `The car would still stand before the level, but ${short} of the margin is gone.`,
    next: `Bring the switch to at least ${write(required)} before the level, by the maker's instructions, and prove it with nobody in car or shaft.`,
    until: `${keepOut} ${whoDecides}`,
  };
}

function verdictOf(values: Values, plan: Plan, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const first = comparisons.find((each) => each.holds === false);
  if (first !== undefined) return failed(values, plan, first, pen);
  const write = (value: number): string => pen.write(value, "m", 3);
  const start = values.makerAllows === "yes" ? undefined : values.normalStart;
  const range = `at least ${write(plan.required)}${start === undefined ? "" : ` and less than ${write(start)}`}`;
  if (plan.switchAt === undefined) {
    return {
      word: "Not enough",
      holds: null,
      sentence: `The switch of the ${plan.where} belongs ${range} before the level.`,
      because: "Where it acts is not entered.",
      next: "Measure the distance at which the switch acts, with the car on inspection control.",
      until: whoDecides,
    };
  }
  return {
    word: "Within",
    holds: true,
    sentence: `The switch acts ${write(plan.switchAt)} before the ${plan.where}: ${range} is needed.`,
    because: start === undefined ? "The normal start of slowdown was not compared." : "",
    next: "Prove it with the car in both load cases the maker names.",
    until: whoDecides,
  };
}

function curves(plan: Plan, pen: Pen, reactionTime: number): Drawing[] {
  const end = reactionTime + plan.stop.time;
  const begin = plan.switchAt ?? plan.required;
  const samples = Array.from({ length: points + 1 }, (_, index) => {
    const time = (end * index) / points;
    const reacting = Math.min(time, reactionTime);
    const motion = motionDuring(plan.request, Math.max(0, time - reactionTime));
    const left = begin - plan.request.speed * reacting - motion.travelled;
    return { time, speed: motion.speed, left };
  });
  const time = { label: "Time after the switch", quantity: "time", unit: "s", digits: 1 } as const;
  const rest = begin - plan.reaction - plan.stop.distance;
  return [
    {
      kind: "curve",
      title: `Speed: the car stands ${pen.write(end, "s", 2)} after the switch`,
      x: time,
      y: { label: "Speed", quantity: "speed", unit: "m/s", digits: 2 },
      series: [{ name: "speed", points: samples.map((sample) => [sample.time, sample.speed]) }],
      limits: [],
      marks: [],
    },
    {
      kind: "curve",
      title: `Distance left: the car stands ${pen.write(Math.abs(rest), "m", 3)} ${rest < -1e-9 ? "past" : "before"} the level`,
      x: time,
      y: { label: "Distance before the level", quantity: "length", unit: "m", digits: 2 },
      series: [{ name: "distance left", points: samples.map((sample) => [sample.time, sample.left]) }],
      limits: [{ axis: "y", at: 0, words: "level", wrongSide: "below" }],
      marks: [{ x: end, y: rest, words: pen.write(rest, "m", 3, true), outside: rest < -1e-9 }],
    },
  ];
}

function contradictions(values: Values, plan: Plan, pen: Pen): Problem[] {
  if (values.normalStart === undefined || values.normalStart >= plan.stop.distance) return [];
  const needs = pen.write(plan.stop.distance, "m", 3);
  const start = pen.write(values.normalStart, "m", 3);
  return [
    {
      field: "normalStart",
      sentence: `From ${start} the lift cannot stop with this retardation and jerk: it needs ${needs}. A steeper normal stop, or a slipped point? The range is computed as entered.`,
    },
  ];
}

function notesOf(plan: Plan, pen: Pen): string[] {
  const notes = [
    "This is not a proof of the monitored retardation that buffers of reduced stroke need.",
    "Computed for constant retardation and jerk; load, brake wear and slip are not in it.",
  ];
  if (!plan.stop.reached) {
    notes.unshift(
      `At this speed the retardation only reaches ${pen.write(plan.stop.peak, "m/s²", 2)} before it eases off.`,
    );
  }
  return notes;
}

function work(values: Values, pen: Pen): Outcome {
  const plan = planOf(values);
  const comparisons = compare(values, plan, pen);
  const outside = comparisons.some((each) => each.holds === false);
  return {
    verdict: verdictOf(values, plan, comparisons, pen),
    comparisons,
    values: [
      pen.value("stopTime", "Stopping time without reaction", plan.stop.time, "s", 3),
      pen.value("reaction", "Travelled while reacting", plan.reaction, "m", 3),
      pen.value("stop", "Stopping distance", plan.stop.distance, "m", 3),
      pen.value("margin", "Margin", plan.margin, "m", 3),
      pen.value("required", "Distance needed", plan.required, "m", 3),
      pen.value("peak", "Largest retardation", plan.stop.peak, "m/s²", 3),
    ],
    drawings: [
      {
        kind: "slowdown-range",
        title: `Places before the ${plan.where}`,
        side: values.side,
        reaction: plan.reaction,
        stop: plan.stop.distance,
        margin: plan.margin,
        required: plan.required,
        normalStart: values.normalStart ?? null,
        switchAt: plan.switchAt ?? null,
        outside,
      },
      ...curves(plan, pen, values.reactionTime),
    ],
    problems: contradictions(values, plan, pen),
    notes: notesOf(plan, pen),
  };
}

export const terminalSlowdown = defineCalculator({
  id: "terminal-slowdown",
  name: "Terminal slowdown distance",
  purpose: "Computes how far before a terminal landing its slowdown switch must act, and whether it does.",
  words: [
    "overruns the top floor",
    "overruns the bottom floor",
    "runs into the final limit switch",
    "hits the final limit",
    "slowdown switch distance",
    "slowdown too late",
    "stopping distance",
    "pre-limit switch",
    "emergency slowdown at the terminal",
    "does not slow down",
  ],
  inputs: slowdownFields,
  cautions: [
    "Measure on inspection control, one person in control, nobody in the pit while the car moves; know the refuge spaces.",
    "Isolate and lock off before you move a switch or its ramp.",
    "Final limit and slowdown switches are never bridged for this test.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [kinematics, normalStop, finalSwitches],
  formulas: slowdownFormulas,
  work,
});
