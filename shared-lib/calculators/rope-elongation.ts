import type { Formula } from "../formulas/formula.ts";
import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, ValueLine, Verdict } from "./result.ts";
import { sinkFields } from "./sink-fields.ts";
import { metalArea, type SinkRequest, sinkPerMass } from "./sink-physics.ts";
import { clause, derived, whoDecides } from "./source.ts";

type Values = ValuesOf<typeof sinkFields>;

const elastic = derived("elastic ropes and springs");
const levelling = clause(
  "second-hand",
  "EN 81-20",
  "2020",
  "5.12.1.1.4",
  "stopping within ±10 mm; a levelling accuracy of ±20 mm that is exceeded while loading is corrected to ±10 mm",
);
const ropeData = clause(
  "from memory",
  "",
  "",
  "",
  "modulus of lift ropes 40 to 90 kN/mm²; the rope maker gives it for the range of load",
);

const limit = 0.02;
const person = 75;

interface Sink {
  readonly request: SinkRequest;
  /** m/kg */
  readonly perMass: number;
  readonly ofRopes: number;
  readonly ofSprings: number;
  readonly total: number;
  /** Below the landing at the end, m. */
  readonly end: number;
}

function sinkOf(values: Values): Sink {
  const area =
    values.areaFrom === "data"
      ? (values.area ?? 0)
      : metalArea(values.construction ?? "8-strand fibre", values.ropeDiameter ?? 0);
  const request: SinkRequest = {
    roping: Number(values.roping.charAt(0)),
    ropes: values.ropes,
    height: values.height,
    area,
    modulus: values.modulus,
    spring: values.spring ?? null,
  };
  const perMass = sinkPerMass(request);
  const ofRopes = values.load * sinkPerMass({ ...request, spring: null });
  const total = values.load * perMass;
  return { request, perMass, ofRopes, ofSprings: total - ofRopes, total, end: values.below + total };
}

/** Load at which the car stands this far below the landing, kg; nothing where it stands there already. */
const loadUntil = (values: Values, sink: Sink, below: number): number =>
  Math.max(0, (below - values.below) / sink.perMass);

function compare(values: Values, sink: Sink, pen: Pen): Comparison[] {
  const corrects = values.relevels === "works";
  const found = [
    pen.compare({
      key: "levelling",
      label: "Below the landing with the load in",
      value: sink.end,
      unit: "mm",
      digits: 1,
      signed: true,
      most: limit,
      limitWords: `at most ${pen.write(limit, "mm", 0)} without correction`,
      source: levelling,
      field: "load",
      ...(corrects && sink.end > limit ? { open: "re-levelling has to correct it." } : {}),
    }),
  ];
  if (!corrects || values.relevelAt === undefined) return found;
  return [
    ...found,
    pen.compare({
      key: "relevelAt",
      label: "Re-levelling begins at",
      value: values.relevelAt,
      unit: "mm",
      digits: 1,
      most: limit,
      limitWords: `before ${pen.write(limit, "mm", 0)} are exceeded`,
      source: levelling,
      field: "relevelAt",
    }),
  ];
}

const edge = "Until then the edge at the sill can trip people and stop trolleys.";

function verdictOf(values: Values, sink: Sink, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const write = (value: number): string => pen.write(value, "mm", 1);
  const isOpen = comparisons.some((each) => each.key === "levelling" && each.holds === null);
  const late = comparisons.find((each) => each.key === "relevelAt" && each.holds === false);
  const sinks = `${pen.write(values.load, "kg", 0)} lower the car by ${write(sink.total)}`;
  if (late !== undefined) {
    return {
      word: "Outside",
      holds: false,
      sentence: `Re-levelling begins only at ${write(values.relevelAt ?? 0)}: the car may stand further off than ${write(limit)} before.`,
      because: `${sinks}.`,
      next: "Compare the window of re-levelling with the maker's instructions, and the zone signals that begin it.",
      until: `${edge} ${whoDecides}`,
    };
  }
  if (comparisons[0]?.holds === false) {
    return {
      word: "Outside",
      holds: false,
      sentence: `${sinks}: it then stands ${write(sink.end)} below the landing.`,
      because: `From ${pen.write(loadUntil(values, sink, limit), "kg", 0)} on the limit is exceeded, and nothing corrects it.`,
      next: "It needs re-levelling, or stiffer suspension: ask the maker of the lift for the proof.",
      until: `${edge} ${whoDecides}`,
    };
  }
  if (isOpen && values.relevelAt === undefined) {
    return {
      word: "Not enough",
      holds: null,
      sentence: `${sinks}; where re-levelling begins is not entered.`,
      because: `Without it the car would stand ${write(sink.end)} below the landing.`,
      next: "Read where re-levelling begins from the maker's data, or from the zone signals.",
      until: whoDecides,
    };
  }
  return {
    word: "Within",
    holds: true,
    sentence: isOpen
      ? `${sinks}; re-levelling begins after ${pen.write(loadUntil(values, sink, values.relevelAt ?? 0), "kg", 0)}.`
      : `${sinks}: it stands ${pen.write(sink.end, "mm", 1, true)} against the landing at most, below counted plus.`,
    because: isOpen
      ? "The limit is exceeded only if re-levelling is too slow for how fast people get in."
      : "Even the whole load does not take the car past the limit.",
    next: "Measure it at the lowest landing with test weights, nobody stepping over the sill.",
    until: whoDecides,
  };
}

function valuesOf(values: Values, sink: Sink, pen: Pen): ValueLine[] {
  const lines = [
    pen.value("area", "Metal area of one rope", sink.request.area, "mm²", 2),
    pen.value("sink", "Sink under this load", sink.total, "mm", 2),
    pen.value("ofRopes", "of it the ropes", sink.ofRopes, "mm", 2),
    pen.value("ofSprings", "of it the springs", sink.ofSprings, "mm", 2),
    pen.value("person", `Sink for one person, ${pen.write(person, "kg", 0)}`, person * sink.perMass, "mm", 3),
    pen.value("end", "Below the landing with the load in", sink.end, "mm", 2, true),
    pen.value("untilLimit", "Load up to the limit", loadUntil(values, sink, limit), "kg", 0),
  ];
  if (values.relevels === "works" && values.relevelAt !== undefined) {
    const load = loadUntil(values, sink, values.relevelAt);
    lines.push(pen.value("untilRelevel", "Load at which re-levelling begins", load, "kg", 0));
  }
  return lines;
}

function curveOf(values: Values, sink: Sink, pen: Pen): Drawing {
  const relevelAt = values.relevels === "works" ? values.relevelAt : undefined;
  return {
    kind: "curve",
    title: `Car below the landing: ${pen.write(sink.end, "mm", 1, true)} with ${pen.write(values.load, "kg", 0)}`,
    x: { label: "Load that has come in", quantity: "mass", unit: "kg", digits: 0 },
    y: { label: "Below the landing", quantity: "length", unit: "mm", digits: 1 },
    series: [
      {
        name: "without correction",
        points: Array.from({ length: 21 }, (_, index): [number, number] => {
          const load = (values.load * index) / 20;
          return [load, values.below + load * sink.perMass];
        }),
      },
    ],
    limits: [
      { axis: "y", at: limit, words: `limit, ${pen.write(limit, "mm", 0)}`, wrongSide: "above" },
      ...(relevelAt === undefined
        ? []
        : [{ axis: "y", at: relevelAt, words: "re-levelling begins", wrongSide: null } as const]),
    ],
    marks: [
      {
        x: values.load,
        y: sink.end,
        words: pen.write(sink.end, "mm", 1, true),
        outside: sink.end > limit + 1e-9,
      },
    ],
  };
}

/** A sink that ropes and springs do not explain has another cause. */
function notesOf(values: Values, sink: Sink, pen: Pen): string[] {
  const notes = [
    "Lasting stretch of new ropes, car isolation, frame and guide shoes are not in it.",
    "The modulus depends on the range of load; between the two ends of what the maker gives, sink changes as much.",
  ];
  const { measured } = values;
  if (measured === undefined) return notes;
  const more = measured - sink.total;
  const words =
    more > Math.max(0.003, sink.total * 0.3)
      ? `${pen.write(more, "mm", 1)} more than ropes and springs explain: look at springs, isolation, and whether the brake or the sheave lets the car creep.`
      : "Ropes and springs explain what was measured.";
  return [`Measured ${pen.write(measured, "mm", 1)}. ${words}`, ...notes];
}

function contradictions(values: Values, pen: Pen): Problem[] {
  const { below } = values;
  if (Math.abs(below) <= 0.01 + 1e-9) return [];
  const sentence = `The car stops within ${pen.write(0.01, "mm", 0)} of the landing where the stopping accuracy is kept. Computed as entered.`;
  return [{ field: "below", sentence }];
}

function work(values: Values, pen: Pen): Outcome {
  const sink = sinkOf(values);
  const comparisons = compare(values, sink, pen);
  return {
    verdict: verdictOf(values, sink, comparisons, pen),
    comparisons,
    values: valuesOf(values, sink, pen),
    drawings: [curveOf(values, sink, pen)],
    problems: contradictions(values, pen),
    notes: notesOf(values, sink, pen),
  };
}

const formulas: readonly Formula[] = [
  {
    name: "Sink of the car",
    expression: "x = m*g*h/(r*n*E*A) + m*g/(r^2*n*k)",
    symbols: {
      x: ["mm", "how far the car sinks"],
      m: ["kg", "load that comes in"],
      h: ["m", "free ropes from car to machine"],
      r: ["", "roping: 1, 2 or 4"],
      n: ["pieces", "ropes"],
      E: ["kN/mm²", "modulus of elasticity of the rope"],
      A: ["mm²", "metal area of one rope"],
      k: ["N/mm", "stiffness of one rope-end spring; without springs this part is left out"],
    },
    constants: { g: [9.80665, "m/s^2", "9.80665 m/s², free fall"] },
    source: elastic,
  },
  {
    name: "Metal area by construction",
    expression: "A = C*d^2",
    symbols: {
      A: ["mm²", "metal area of one rope"],
      C: ["", "0.384 for 6×19 fibre core, 0.357 for 8 strands fibre core, 0.468 for 8 strands steel core"],
      d: ["mm", "rope diameter"],
    },
    source: clause("published", "", "", "", "metal area of common ropes"),
  },
];

export const ropeElongation = defineCalculator({
  id: "rope-elongation",
  name: "Rope elongation and sink under load",
  purpose: "Tells how far the car sinks when it is loaded, and whether re-levelling has to correct it.",
  words: [
    "car sinks when loaded",
    "step at the sill when people get in",
    "sags at the landing",
    "rope stretch",
    "elongation of the ropes",
    "re-levels again and again",
    "trolley wheel jumps at the sill",
    "rope-end springs",
    "levelling accuracy with load",
  ],
  inputs: sinkFields,
  cautions: [
    "A car that goes on sinking while the load stays the same is out of service at once: nobody enters or leaves.",
    "While it is measured nobody steps over the sill; test weights go in from the landing, never above rated load.",
    "Springs and terminations are touched only with the car secured as the maker says.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [levelling, elastic, ropeData],
  formulas,
  work,
});
