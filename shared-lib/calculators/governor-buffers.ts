import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import { standardGravity } from "./drive-physics.ts";
import { governorFields } from "./governor-fields.ts";
import { governorFormulas } from "./governor-formulas.ts";
import {
  accumulationSource,
  boundsOf,
  compareGovernor,
  contactOf,
  dissipationSource,
  type GovernorValues,
  gearSource,
  gravitySource,
  guidedSource,
  linearSource,
  measuredKeys,
  otherSource,
  strokeOf,
  switchSource,
  trippingRange,
  trippingSource,
} from "./governor-judgement.ts";
import {
  gravityStop,
  guidedTravel,
  leastStroke,
  reducedStrokeAbove,
  trippingBounds,
} from "./governor-physics.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, ValueLine, Verdict } from "./result.ts";
import { whoDecides } from "./source.ts";

/** By key of the comparison that failed: what is wrong and what to do. */
const failedWords: Readonly<Record<string, { readonly sentence: string; readonly next: string }>> = {
  gear: {
    sentence: "This safety gear may not be used at this rated speed.",
    next: "Compare its plate and certificate with the lift's papers; only a progressive one may stop a faster car.",
  },
  tripping: {
    sentence: "The governor trips outside its bounds.",
    next: "Compare the plate with the lift's papers. A governor is set, sealed and tested only by its maker or by people licensed for it.",
  },
  switch: {
    sentence: "The overspeed switch acts later than the governor trips.",
    next: "Have the governor tested and set by its maker or by people licensed for it.",
  },
  other: {
    sentence:
      "The two governors do not follow each other: the counterweight's trips above the car's, but not far above.",
    next: "Compare both plates with the lift's papers; setting is for the maker or people licensed for it.",
  },
  buffer: {
    sentence: "This kind of buffer may not be used at this rated speed.",
    next: "Compare the buffer's plate with the lift's papers; a faster lift needs energy dissipation.",
  },
  stroke: {
    sentence: "The buffer's stroke is too short.",
    next: "Compare the buffer's plate and the rated speed with the lift's papers.",
  },
  guided: {
    sentence: "The guides end too early beyond the compressed buffer.",
    next: "Measure buffer, run-by and rails again. Shortened ropes or a moved buffer change it.",
  },
};

const keepOut = "Until then the lift stays out of service: it would not be stopped as it must be.";

function needWords(values: GovernorValues, pen: Pen): string {
  const bounds = boundsOf(values);
  const stroke = strokeOf(values);
  const parts = [
    ...(bounds === null ? [] : [`The governor trips at ${trippingRange(bounds, pen)}.`]),
    ...(stroke === null ? [] : [`The buffer needs a stroke of at least ${pen.write(stroke, "mm", 1)}.`]),
    `Beyond the compressed opposite buffer ${pen.write(guidedTravel(values.speed), "mm", 1)} of guided travel are needed.`,
  ];
  return parts.join(" ");
}

/** What a tripping speed on the wrong side does; the numbers stand in the comparison itself. */
function reasonOf({ key, value, limit }: Comparison): string {
  if (key !== "tripping" || value === null) return "";
  return limit.least !== null && value < limit.least
    ? "It trips too early, and can catch the car in ordinary travel."
    : "It trips too late: the car is faster than the safety gear may have to stop.";
}

function verdictOf(values: GovernorValues, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const failed = comparisons.find((each) => each.holds === false);
  const words = failed === undefined ? undefined : failedWords[failed.key];
  if (failed !== undefined && words !== undefined) {
    return {
      word: "Outside",
      holds: false,
      ...words,
      because: reasonOf(failed),
      until: `${keepOut} ${whoDecides}`,
    };
  }
  const judged = comparisons.filter((each) => each.holds === true && measuredKeys.includes(each.key));
  if (judged.length === 0) {
    return {
      word: "Not enough",
      holds: null,
      sentence: needWords(values, pen),
      because: "Nothing of this lift's governor or buffer is entered to compare.",
      next: "Read the plates of governor and buffer.",
      until: whoDecides,
    };
  }
  return {
    word: "Within",
    holds: true,
    sentence: `Within: ${judged.map((each) => each.reading).join("; ")}.`,
    because: "Only what was entered was compared.",
    next: "The test of governor and safety gear itself follows the maker's instructions and the local code.",
    until: whoDecides,
  };
}

function valuesFor(values: GovernorValues, pen: Pen): ValueLine[] {
  const bounds = boundsOf(values);
  const stroke = strokeOf(values);
  return [
    ...(bounds === null
      ? []
      : [
          pen.value("least", "Lowest tripping speed", bounds.least, "m/s", 4),
          pen.value("below", "Tripping speed less than", bounds.below, "m/s", 4),
        ]),
    ...(stroke === null ? [] : [pen.value("leastStroke", "Least stroke of the buffer", stroke, "mm", 1)]),
    pen.value("guidedTravel", "Least guided travel", guidedTravel(values.speed), "mm", 1),
    pen.value(
      "gravityStop",
      "Stop by gravity at 115 % of rated speed",
      gravityStop(values.speed, standardGravity),
      "mm",
      1,
    ),
  ];
}

const speedAxis = (label: string) => ({ label, quantity: "speed", unit: "m/s", digits: 2 });

function samples(from: number, to: number, of: (at: number) => number): [number, number][] {
  return Array.from({ length: 61 }, (_, index) => {
    const at = from + ((to - from) * index) / 60;
    return [at, of(at)];
  });
}

function trippingCurve(values: GovernorValues, pen: Pen): Drawing[] {
  const { speed, gear, tripping } = values;
  const bounds = boundsOf(values);
  if (gear === undefined || bounds === null) return [];
  const to = gear === "progressive" ? Math.max(1.25 * speed, 0.5) : 0.63;
  const outside = tripping !== undefined && (tripping < bounds.least || tripping >= bounds.below);
  return [
    {
      kind: "curve",
      title: `Tripping speed over rated speed: ${trippingRange(bounds, pen)} at ${pen.write(speed, "m/s", 2)}`,
      x: speedAxis("Rated speed"),
      y: speedAxis("Tripping speed"),
      series: [
        {
          name: "less than",
          points: samples(Math.min(0.25, to / 2), to, (at) => trippingBounds(at, gear).below),
        },
        {
          name: "at least",
          points: samples(Math.min(0.25, to / 2), to, (at) => trippingBounds(at, gear).least),
        },
      ],
      limits: [],
      marks:
        tripping === undefined
          ? []
          : [{ x: speed, y: tripping, words: pen.write(tripping, "m/s", 3), outside }],
    },
  ];
}

function strokeCurve(values: GovernorValues, pen: Pen): Drawing[] {
  const { speed, buffer, stroke } = values;
  const least = strokeOf(values);
  if (buffer === undefined || least === null) return [];
  const contact = contactOf(values);
  const at = contact ?? speed;
  const of = (x: number): number =>
    leastStroke({ buffer, speed: x, contactSpeed: contact === null ? null : x }) ?? 0;
  const shown = stroke ?? least;
  return [
    {
      kind: "curve",
      title: `Stroke of the buffer: at least ${pen.write(least, "mm", 1)} at ${pen.write(at, "m/s", 2)}`,
      x: speedAxis(contact === null ? "Rated speed" : "Speed at the buffer"),
      y: { label: "Stroke", quantity: "length", unit: "mm", digits: 0 },
      series: [{ name: "at least", points: samples(0, 1.25 * at, of) }],
      limits: [],
      marks: [
        {
          x: at,
          y: shown,
          words: pen.write(shown, "mm", 1),
          outside: shown < least - 1e-9 * Math.max(1, least),
        },
      ],
    },
  ];
}

function contradictions(values: GovernorValues, pen: Pen): Problem[] {
  const { buffer, speed, contactSpeed } = values;
  if (buffer !== "dissipation" || contactSpeed === undefined || contactOf(values) !== null) return [];
  const sentence =
    speed <= reducedStrokeAbove
      ? `The speed at the buffer counts only above a rated speed of ${pen.write(reducedStrokeAbove, "m/s", 2)}. Computed with the rated speed.`
      : "A monitored slowdown cannot make the car faster than rated. Computed with the rated speed.";
  return [{ field: "contactSpeed", sentence }];
}

function notesOf(values: GovernorValues): string[] {
  const notes = [
    "Some pages print the upper bound as v + 0.25/v, without the factor 1.25. That lies below 1.15 v and is not used here.",
  ];
  if (values.buffer === "linear") {
    return [
      "The stroke must be covered under 2.5 to 4 times the mass of the loaded car, or of the counterweight.",
      ...notes,
    ];
  }
  if (values.buffer !== "dissipation") return notes;
  return [
    "Whether the slowdown is monitored as a reduced stroke needs is not proved here.",
    "Strokes of one half and one third belong to EN 81-1, from memory; EN 81-20 does not have them.",
    ...notes,
  ];
}

function work(values: GovernorValues, pen: Pen): Outcome {
  const comparisons = compareGovernor(values, pen);
  return {
    verdict: verdictOf(values, comparisons, pen),
    comparisons,
    values: valuesFor(values, pen),
    drawings: [...trippingCurve(values, pen), ...strokeCurve(values, pen)],
    problems: contradictions(values, pen),
    notes: notesOf(values),
  };
}

export const governorBuffers = defineCalculator({
  id: "governor-buffers",
  name: "Overspeed governor and buffers",
  purpose:
    "Computes between which speeds the governor must trip, the least stroke of a buffer, and the guided travel beyond it.",
  words: [
    "overspeed governor tripping speed",
    "governor trips without overspeed",
    "safety gear engaged",
    "overspeed switch",
    "buffer stroke",
    "buffer too short",
    "counterweight clearance to the buffer",
    "run-by",
    "overtravel",
    "guided travel",
    "spring buffer",
    "oil buffer",
    "rated speed raised",
  ],
  inputs: governorFields,
  cautions: [
    "A tripped governor or safety gear is released and tested only by people trained for it, by the maker's instructions, with nobody in the car.",
    "A governor is never set or its seal opened on the strength of this page.",
    "In the pit: stop switch, lighting, refuge space, and nobody moves the car meanwhile.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [
    trippingSource,
    gearSource,
    switchSource,
    otherSource,
    accumulationSource,
    linearSource,
    dissipationSource,
    guidedSource,
    gravitySource,
  ],
  formulas: governorFormulas,
  work,
});
