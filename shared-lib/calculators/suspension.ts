import { defineCalculator, notEnough, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem, ValueLine, Verdict } from "./result.ts";
import { whoDecides } from "./source.ts";
import { suspensionFields } from "./suspension-fields.ts";
import {
  bendSource,
  breakingSource,
  diameterSource,
  fixedSource,
  ratioSource,
  suspensionFormulas,
} from "./suspension-formulas.ts";
import {
  breakingForce,
  diagramRange,
  fixedMinimum,
  forceOfOneRope,
  grooveUndercut,
  grooveV,
  interpolated,
  pulleyBends,
  requiredByBends,
} from "./suspension-physics.ts";

type Values = ValuesOf<typeof suspensionFields>;

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const mostRopes = 20;

interface Ropes {
  readonly breaking: number;
  readonly force: number;
  readonly actual: number;
  readonly ratio: number;
  readonly sheaveBends: number;
  readonly bends: number;
  readonly fixed: number;
  /** By bending; null outside the diagram. */
  readonly byBends: number | null;
}

/** Equivalent pulleys of the traction sheave; the ranges of the angles are those of the tables. */
function sheaveBends(values: Values): number {
  switch (values.groove) {
    case "round":
      return 1;
    case "double":
      return 2;
    case "undercut":
      return interpolated(grooveUndercut, degrees(values.undercutAngle ?? 0)) ?? 0;
    case "wedge":
      return interpolated(grooveV, degrees(values.grooveAngle ?? 0)) ?? 0;
  }
}

const hasPulleys = (values: Values): boolean => values.simpleBends + values.reversedBends > 0;

const requestOf = (values: Values, ropes = values.ropes) => ({
  ropes,
  roping: Number(values.roping.charAt(0)),
  car: values.car,
  ratedLoad: values.ratedLoad,
  ropeMass: values.ropeMass,
});

function ropesOf(values: Values): Ropes {
  const breaking =
    values.breakingFrom === "certificate"
      ? (values.breakingForce ?? 0)
      : breakingForce(values.construction ?? "8x19 fibre", values.ropeDiameter, Number(values.tensile));
  const force = forceOfOneRope(requestOf(values));
  const ratio = values.sheave / values.ropeDiameter;
  const ofSheave = sheaveBends(values);
  const pulleys = {
    sheave: values.sheave,
    pulley: values.pulley ?? values.sheave,
    simple: values.simpleBends,
    reversed: values.reversedBends,
  };
  const bends = ofSheave + pulleyBends(pulleys);
  return {
    breaking,
    force,
    actual: breaking / force,
    ratio,
    sheaveBends: ofSheave,
    bends,
    fixed: fixedMinimum(values.ropes),
    byBends: requiredByBends(ratio, bends),
  };
}

function compare(values: Values, ropes: Ropes, pen: Pen): Comparison[] {
  const write = (value: number): string => pen.write(value, "one", 2);
  const factor = { label: "Safety factor", value: ropes.actual, unit: "one", digits: 2 } as const;
  const smallest = Math.min(values.sheave, hasPulleys(values) ? (values.pulley ?? values.sheave) : Infinity);
  return [
    pen.compare({
      ...factor,
      key: "bends",
      least: ropes.byBends,
      limitWords: `at least ${write(ropes.byBends ?? 0)} by the bends`,
      source: bendSource,
      ...(ropes.byBends === null ? { open: "by the bends: outside the diagram, nothing may be read." } : {}),
    }),
    pen.compare({
      ...factor,
      key: "fixed",
      least: ropes.fixed,
      limitWords: `at least ${write(ropes.fixed)} with ${values.ropes} ropes`,
      source: fixedSource,
      field: "ropes",
    }),
    pen.compare({
      key: "ratio",
      label: "Smallest sheave or pulley over rope",
      value: smallest / values.ropeDiameter,
      unit: "one",
      digits: 1,
      least: 40,
      limitWords: "at least 40 rope diameters",
      source: ratioSource,
      field: smallest < values.sheave ? "pulley" : "sheave",
    }),
    pen.compare({
      key: "diameter",
      label: "Rope diameter",
      value: values.ropeDiameter,
      unit: "mm",
      digits: 1,
      least: 0.008,
      limitWords: `at least ${pen.write(0.008, "mm", 0)}`,
      source: diameterSource,
      field: "ropeDiameter",
    }),
  ];
}

/** Ropes of the same kind with which both factors would be kept; null where even twenty would not do. */
function ropesNeeded(values: Values, ropes: Ropes): number | null {
  for (let count = 2; count <= mostRopes; count += 1) {
    const needed = Math.max(fixedMinimum(count), ropes.byBends ?? 0);
    if (ropes.breaking / forceOfOneRope(requestOf(values, count)) >= needed) return count;
  }
  return null;
}

const outOfService = "Until then the lift stays out of service: it hangs on these ropes.";

function verdictOf(values: Values, ropes: Ropes, comparisons: readonly Comparison[], pen: Pen): Verdict {
  const write = (value: number): string => pen.write(value, "one", 2);
  const needed = Math.max(ropes.fixed, ropes.byBends ?? 0);
  const governs =
    (ropes.byBends ?? 0) > ropes.fixed
      ? "The bends over sheave and pulleys govern: they ask for more than the fixed value."
      : "The fixed value governs: the bends ask for less.";
  const failed = comparisons.find((each) => each.holds === false);
  const measured = "Compare breaking force and masses with certificate and plate before anybody acts on it.";
  if (failed === undefined) {
    return ropes.byBends === null
      ? {
          word: "Not enough",
          holds: null,
          sentence: `The fixed value ${write(ropes.fixed)} is kept; what the bends ask for cannot be read.`,
          because: "Sheave over rope diameter lies outside the diagram.",
          next: "Ask the maker of the lift for the proof of the suspension.",
          until: whoDecides,
        }
      : {
          word: "Within",
          holds: true,
          sentence: `The ropes have a safety factor of ${write(ropes.actual)}; ${write(needed)} is needed.`,
          because: governs,
          next: "Rope wear, broken wires and terminations are judged by themselves: this is the factor of new ropes.",
          until: whoDecides,
        };
  }
  const outside = { word: "Outside", holds: false, until: `${outOfService} ${whoDecides}` } as const;
  if (failed.key === "ratio" || failed.key === "diameter") {
    return {
      ...outside,
      sentence:
        failed.key === "ratio"
          ? "Sheave or pulley is too small for this rope."
          : "The rope is thinner than the clause allows.",
      because: failed.key === "ratio" ? "Every bend over it wears the rope more than the proof assumes." : "",
      next: "Compare with the proof of the suspension; lifts with a certified exception have their own.",
      until: whoDecides,
    };
  }
  const enough = ropesNeeded(values, ropes);
  return {
    ...outside,
    sentence: `The ropes have a safety factor of ${write(ropes.actual)}; ${write(needed)} is needed.`,
    because: ropes.byBends === null ? "" : governs,
    next:
      enough === null
        ? measured
        : `${measured} With everything else as entered it takes ${enough} such ropes.`,
  };
}

function valuesOf(values: Values, ropes: Ropes, pen: Pen): ValueLine[] {
  const lines = [
    pen.value("breaking", "Least breaking force of one rope", ropes.breaking, "kN", 2),
    pen.value("force", "Largest force in one rope", ropes.force, "kN", 3),
    pen.value("actual", "Safety factor", ropes.actual, "one", 2),
    pen.value("ratio", "Sheave over rope diameter", ropes.ratio, "one", 2),
    pen.value("sheaveBends", "Equivalent pulleys of the sheave", ropes.sheaveBends, "one", 2),
    pen.value("bends", "Equivalent pulleys in all", ropes.bends, "one", 2),
    pen.value("fixed", "Fixed least factor", ropes.fixed, "one", 0),
  ];
  if (ropes.byBends !== null) {
    lines.push(pen.value("byBends", "Least factor by the bends", ropes.byBends, "one", 2));
  }
  const enough = ropesNeeded(values, ropes);
  if (enough !== null) lines.push(pen.value("enough", "Ropes of this kind needed", enough, "pieces", 0));
  return lines;
}

function curveOf(ropes: Ropes, pen: Pen): Drawing {
  const [least, most] = diagramRange;
  const points = Array.from({ length: 47 }, (_, index): [number, number] => {
    const ratio = least + ((most - least) * index) / 46;
    return [ratio, requiredByBends(ratio, ropes.bends) ?? 0];
  });
  const needed = Math.max(ropes.fixed, ropes.byBends ?? 0);
  const shown = ropes.ratio >= least && ropes.ratio <= most;
  const place = { x: ropes.ratio, y: ropes.actual, words: pen.write(ropes.actual, "one", 2) };
  return {
    kind: "curve",
    title: `Least safety factor for ${pen.write(ropes.bends, "one", 1)} equivalent pulleys`,
    x: { label: "Sheave over rope diameter", quantity: "ratio", unit: "one", digits: 0 },
    y: { label: "Safety factor", quantity: "ratio", unit: "one", digits: 1 },
    series: [{ name: "needed by the bends", points }],
    limits: [
      { axis: "y", at: ropes.fixed, words: `fixed, ${pen.write(ropes.fixed, "one", 0)}`, wrongSide: "below" },
    ],
    marks: shown ? [{ ...place, outside: ropes.actual < needed - 1e-9 }] : [],
  };
}

function contradictions(values: Values, ropes: Ropes, pen: Pen): Problem[] {
  const problems: Problem[] = [];
  if (ropes.byBends === null) {
    const sentence = `Sheave over rope diameter is ${pen.write(ropes.ratio, "one", 1)}; the diagram covers 34 to 80. Outside it nothing is read.`;
    problems.push({ field: "sheave", sentence });
  }
  if (values.breakingFrom !== "construction") return problems;
  const isSteel = values.construction === "8x19 steel";
  const forFibre = values.tensile === "1370" || values.tensile === "1500";
  const forSteel = values.tensile === "1570" || values.tensile === "1670";
  if ((isSteel && forFibre) || (!isSteel && forSteel)) {
    const sentence = `This grade belongs to a rope with a ${isSteel ? "fibre" : "steel"} core. Computed as entered until you decide.`;
    problems.push({ field: "tensile", sentence });
  }
  return problems;
}

function work(values: Values, pen: Pen): Outcome {
  if (hasPulleys(values) && values.pulley === undefined) {
    return notEnough("Some values are missing.", "Still needed: mean diameter of the pulleys.", {
      missing: ["pulley"],
    });
  }
  const ropes = ropesOf(values);
  const comparisons = compare(values, ropes, pen);
  return {
    verdict: verdictOf(values, ropes, comparisons, pen),
    comparisons,
    values: valuesOf(values, ropes, pen),
    drawings: [curveOf(ropes, pen)],
    problems: contradictions(values, ropes, pen),
    notes: [
      "For steel ropes after EN 12385-5 on sheaves of steel or cast iron, car at the lowest landing with rated load.",
      "A simple bend is one in a groove of at most 0.53 rope diameters radius. Terminations keep at least 80 % of the breaking force.",
    ],
  };
}

export const suspension = defineCalculator({
  id: "rope-safety-factor",
  name: "Rope safety factor",
  purpose: "Tells which safety factor the ropes have and which they need for their bends and their number.",
  words: [
    "rope safety factor",
    "suspension ropes",
    "breaking force of the ropes",
    "equivalent number of pulleys",
    "ropes wear out early",
    "ropes too thin",
    "replacing ropes",
    "new rope type",
    "fewer ropes",
    "sheave diameter over rope diameter",
    "heavier car after modernisation",
  ],
  inputs: suspensionFields,
  cautions: [
    "A computed factor is no proof that worn ropes may stay: wear, broken wires, rust and terminations are inspected by trained people.",
    "Ropes and terminations are touched only with the car secured as the maker says.",
    "Sheave and ropes are looked at from a safe stand with the machine locked off: hands are drawn in.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [bendSource, fixedSource, ratioSource, diameterSource, breakingSource],
  formulas: suspensionFormulas,
  work,
});
