import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import { countsPerMetre, type EncoderScale, ropingRatio, sheaveSpeed } from "./drive-physics.ts";
import { type Suspect, scaleRatio, suspectsOf } from "./encoder-diagnosis.ts";
import { encoderFields } from "./encoder-fields.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, ValueLine, Verdict } from "./result.ts";
import { derived, site, whoDecides } from "./source.ts";

type Values = ValuesOf<typeof encoderFields>;

const geometry = derived("geometry of sheave, roping and encoder");
const allowed = site("the difference entered here");
const resolutions = {
  status: "common practice",
  document: "",
  edition: "",
  clause: "",
  words: "resolutions that encoders are commonly sold with",
} as const;

interface Plan {
  readonly entered: EncoderScale;
  /** Counts per metre, computed. */
  readonly scale: number;
  /** Counts per metre, from the measured run; null without one. */
  readonly counted: number | null;
  readonly suspects: readonly Suspect[];
}

function planOf(values: Values): Plan {
  const entered: EncoderScale = {
    pulses: values.pulses,
    edges: Number(values.edges),
    turns: values.place === "motor" ? (values.gear ?? 1) : 1,
    roping: ropingRatio[values.roping],
    sheaveDiameter: values.sheaveDiameter,
  };
  const { travel, count, tolerance } = values;
  const counted = travel === undefined || count === undefined ? null : count / travel;
  return {
    entered,
    scale: countsPerMetre(entered),
    counted,
    suspects: counted === null ? [] : suspectsOf(entered, counted, tolerance ?? 0.01),
  };
}

function compare(values: Values, plan: Plan, pen: Pen): Comparison[] {
  const tolerance = values.tolerance ?? 0.01;
  const within = `${pen.write(1 - tolerance, "one", 4)} to ${pen.write(1 + tolerance, "one", 4)}`;
  const found: Comparison[] = [
    pen.compare({
      key: "ratio",
      label: "Counted scale over computed scale",
      value: plan.counted === null ? null : scaleRatio(plan.entered, plan.counted),
      unit: "one",
      digits: 4,
      least: 1 - tolerance,
      most: 1 + tolerance,
      limitWords: within,
      source: allowed,
      field: "count",
      ...(plan.counted === null ? { open: "no measured run is entered." } : {}),
    }),
  ];
  if (values.setScale === undefined) return found;
  const least = plan.scale * (1 - tolerance);
  const most = plan.scale * (1 + tolerance);
  const limitWords = `${pen.write(least, "1/mm", 3)} to ${pen.write(most, "1/mm", 3)}`;
  return [
    ...found,
    pen.compare({
      key: "setScale",
      label: "Scale shown by the controller",
      value: values.setScale,
      unit: "1/mm",
      digits: 3,
      least,
      most,
      limitWords,
      source: allowed,
      field: "setScale",
    }),
  ];
}

/** "the roping is 1:1, not 2:1" */
function suspectWords(suspect: Suspect, values: Values, pen: Pen): string {
  switch (suspect.what) {
    case "roping":
      return `the roping is ${suspect.value}, not ${values.roping}`;
    case "edges":
      return `${suspect.value} of each pulse's edges are counted, not ${values.edges}`;
    case "roping and edges":
      return `roping and edges are ${suspect.value}, not ${values.roping} and ${values.edges}`;
    case "pulses":
      return `the encoder gives ${suspect.value} pulses, not ${values.pulses}`;
    case "diameter":
      return `the sheave measures ${pen.write(suspect.diameter ?? 0, "mm", 1)}, not ${pen.write(values.sheaveDiameter, "mm", 1)}`;
  }
}

function wrongScale(values: Values, plan: Plan, ratio: number, pen: Pen): Verdict {
  const outside = {
    word: "Outside",
    holds: false,
    until: `Until then every distance the controller knows is wrong by this ratio. ${whoDecides}`,
  } as const;
  const sentence = `Counted is ${pen.write(ratio, "one", 4)} times what the entries give.`;
  if (plan.suspects.length === 0) {
    return {
      ...outside,
      sentence,
      because: "No roping, edges, usual encoder or likely sheave explains this ratio.",
      next: "Repeat the run over the whole travel, in both directions. Counts that come and go point to a slipping coupling, a lost channel or noise.",
    };
  }
  const [first, ...others] = plan.suspects.map((suspect) => suspectWords(suspect, values, pen));
  return {
    ...outside,
    sentence,
    because: `It fits if ${first}${others.map((words) => `, or if ${words}`).join("")}.`,
    next: "Look at the lift for the one named: count the rope falls, read the encoder's plate, measure the sheave isolated and locked off. Then correct the entry, not the scale.",
  };
}

function verdictOf(values: Values, plan: Plan, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const scale = `One millimetre of travel is ${pen.write(plan.scale / 1000, "one", 3)} counts.`;
  const ratio = comparisons.find((each) => each.key === "ratio");
  if (ratio?.holds === false) return wrongScale(values, plan, ratio.value ?? 1, pen);
  if (comparisons.some((each) => each.holds === false)) {
    return {
      word: "Outside",
      holds: false,
      sentence: `The controller's scale is not the one of these entries. ${scale}`,
      because: "Sheave, roping, encoder or edges differ between controller and this form.",
      next: "Compare each entry with the controller's and with the lift.",
      until: whoDecides,
    };
  }
  if (comparisons.every((each) => each.holds !== true)) {
    return {
      word: "Not enough",
      holds: null,
      sentence: scale,
      because: "Nothing measured is entered to compare it with.",
      next: "Run a long way that you can measure, and read the position counter before and after.",
      until: whoDecides,
    };
  }
  return {
    word: "Within",
    holds: true,
    sentence: `The scale agrees with what was ${ratio?.holds === true ? "counted" : "set"}. ${scale}`,
    because: "",
    next: "Learn the landing positions again if an entry was changed.",
    until: whoDecides,
  };
}

function valuesFor(values: Values, plan: Plan, pen: Pen): ValueLine[] {
  const lines = [
    pen.value("scale", "Counts for a length", plan.scale, "1/mm", 3),
    pen.value("perCount", "Travel for one count", 1 / plan.scale, "mm", 4),
  ];
  if (plan.counted !== null) {
    lines.push(
      pen.value("counted", "Counts for a length, from the run", plan.counted, "1/mm", 3),
      pen.value("ratio", "Counted over computed", scaleRatio(plan.entered, plan.counted), "one", 4),
    );
  }
  if (values.speed === undefined) return lines;
  const turning = sheaveSpeed(values.speed, plan.entered);
  return [
    ...lines,
    pen.value("sheaveSpeed", "Sheave at rated speed", turning, "1/min", 2),
    pen.value("encoderSpeed", "Encoder at rated speed", turning * plan.entered.turns, "1/min", 1),
    pen.value(
      "pulseFrequency",
      "Pulses of one channel at rated speed",
      turning * plan.entered.turns * plan.entered.pulses,
      "Hz",
      0,
    ),
  ];
}

function countCurve(values: Values, plan: Plan, pen: Pen): Drawing {
  const length = values.travel ?? 1;
  const expected = plan.scale * length;
  const counted = plan.counted === null ? null : plan.counted * length;
  const differs = plan.suspects.length > 0;
  return {
    kind: "curve",
    title: `Counts over the travel: ${pen.write(expected, "pieces", 0)} expected over ${pen.write(length, "m", 3)}`,
    x: { label: "Travel", quantity: "length", unit: "m", digits: 2 },
    y: { label: "Counts", quantity: "count", unit: "pieces", digits: 0 },
    series: [
      {
        name: "as entered",
        points: [
          [0, 0],
          [length, expected],
        ],
      },
      ...(counted === null
        ? []
        : [
            {
              name: "as counted",
              points: [
                [0, 0],
                [length, counted],
              ] as [number, number][],
            },
          ]),
    ],
    limits: [],
    marks:
      counted === null
        ? []
        : [{ x: length, y: counted, words: pen.write(counted, "pieces", 0), outside: differs }],
  };
}

/** Half of a measured run is a question, not a comparison. */
function halfARun({ travel, count }: Values): Problem[] {
  if ((travel === undefined) === (count === undefined)) return [];
  return travel === undefined
    ? [
        {
          field: "travel",
          sentence: "The counts need the travel they were read over. They are left out until you enter it.",
        },
      ]
    : [
        {
          field: "count",
          sentence: "The travel needs the counts read over it. It is left out until you enter them.",
        },
      ];
}

function work(values: Values, pen: Pen): Outcome {
  const plan = planOf(values);
  const comparisons = compare(values, plan, pen);
  return {
    verdict: verdictOf(values, plan, comparisons, pen),
    comparisons,
    values: valuesFor(values, plan, pen),
    drawings: [countCurve(values, plan, pen)],
    problems: halfARun(values),
    notes: [
      "A wrong roping and wrong edges can hide each other: 1:1 for 2:1 with 4 edges for 2 gives the right scale.",
      "With an encoder at the governor, enter the governor's sheave and 1:1.",
      "Ropes creep a little on the sheave; a scale from the sheave is not a position of the car.",
    ],
  };
}

export const encoderScale = defineCalculator({
  id: "encoder-scale",
  name: "Encoder and speed scale",
  purpose:
    "Computes the counts of a travel from sheave, roping, gear and encoder, and tells from a measured run which of them is entered wrong.",
  words: [
    "encoder pulses per mm",
    "wrong distance after encoder change",
    "travels half the distance",
    "travels twice the distance",
    "speed shown is wrong",
    "runs at half speed",
    "position counter wrong",
    "encoder resolution",
    "quadrature edges",
    "roping factor",
    "sheave diameter wrong",
    "learn run fails, distance wrong",
  ],
  inputs: encoderFields,
  cautions: [
    "Measure the sheave only with the machine isolated, locked off and proved dead, and the car held: fingers are drawn in between rope and sheave.",
    "A wrong scale also makes slowdown distances and the zone wrong: keep people out of the car while you test.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [geometry, allowed, resolutions],
  formulas: [
    {
      name: "Counts for a length",
      expression: "c = N*k*i*r/(pi*D); d = 1/c",
      symbols: {
        c: ["1/mm", "counts for a length of car travel"],
        N: ["one", "pulses of one revolution of the encoder"],
        k: ["one", "edges counted of each pulse"],
        i: ["one", "encoder revolutions for one of the sheave"],
        r: ["one", "roping: 1, 2 or 4"],
        D: ["mm", "sheave diameter at the middle of the rope"],
        d: ["mm", "travel for one count"],
      },
      source: geometry,
    },
    {
      name: "Revolutions of the sheave",
      expression: "n = v*r/(pi*D)",
      symbols: {
        n: ["1/min", "speed of the sheave"],
        v: ["m/s", "speed of the car"],
        r: ["one", "roping: 1, 2 or 4"],
        D: ["mm", "sheave diameter at the middle of the rope"],
      },
      source: geometry,
    },
    {
      name: "Which entry is wrong",
      expression: "q = z/(s*c); D_1 = D/q",
      symbols: {
        q: ["one", "counted over computed: 2, 4, 1/2, 1/4 point to roping or edges"],
        z: ["one", "counts over the measured run"],
        s: ["m", "travel measured"],
        c: ["1/mm", "counts for a length, computed"],
        D: ["mm", "sheave diameter entered"],
        D_1: ["mm", "sheave diameter that would fit"],
      },
      source: geometry,
    },
  ],
  work,
});
