import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { Pen } from "./pen.ts";
import type { Problem, ValueLine } from "./result.ts";
import { tractionFields } from "./traction-fields.ts";
import {
  caseSource,
  conditionSource,
  frictionSource,
  pressureSource,
  tractionFormulas,
} from "./traction-formulas.ts";
import {
  compareTraction,
  type Traction,
  type TractionValues,
  tractionOf,
  tractionVerdict,
} from "./traction-judgement.ts";
import { frictionCoefficient, frictionRatio, heldRatio } from "./traction-physics.ts";

const cases = [
  ["loading", "loading"],
  ["braking", "emergency stop"],
  ["stalled", "stalled"],
] as const;

function valuesOf(traction: Traction, pen: Pen): ValueLine[] {
  const { groove, ropeSpeed, held, masses, loading, braking, stalled } = traction;
  const lines = [
    pen.value("ropeSpeed", "Speed of the rope", ropeSpeed, "m/s", 2),
    pen.value("ropes", "Ropes over the travel", masses.ropes, "kg", 1),
  ];
  for (const [key, words] of cases) {
    const friction = frictionCoefficient(key, ropeSpeed);
    const ratio = frictionRatio(groove, key);
    lines.push(
      pen.value(`${key}Coefficient`, `Friction coefficient, ${words}`, friction, "one", 4),
      pen.value(`${key}Friction`, `Friction factor f, ${words}`, friction * ratio, "one", 4),
      pen.value(`${key}Held`, `Held ratio, ${words}`, held[key], "one", 3),
    );
  }
  const wrapFor = (key: "loading" | "braking", ratio: number): number =>
    Math.log(ratio) / (frictionCoefficient(key, ropeSpeed) * frictionRatio(groove, key));
  lines.push(
    pen.value("loadingRatio", "Forces over the sheave, loading", loading.ratio, "one", 3),
    pen.value("brakingRatio", "Forces over the sheave, emergency stop", braking.ratio, "one", 3),
    pen.value("stalledRatio", "Forces over the sheave, stalled", stalled.ratio, "one", 3),
    pen.value("loadingWrap", "Wrap needed, loading", wrapFor("loading", loading.ratio), "°", 1),
    pen.value("brakingWrap", "Wrap needed, emergency stop", wrapFor("braking", braking.ratio), "°", 1),
  );
  if (traction.pressure !== null) {
    lines.push(pen.value("pressure", "Pressure in the groove", traction.pressure, "N/mm²", 3));
  }
  return lines;
}

const points = 40;

/** What the groove holds over the angle of wrap, with the forces of the two cases as lines across. */
function curveOf(values: TractionValues, traction: Traction, pen: Pen): Drawing {
  const { groove, ropeSpeed, loading, braking, held } = traction;
  const most = Math.max(values.wrap * 1.2, Math.PI * 1.1);
  const least = Math.PI / 2;
  const series = (["loading", "braking"] as const).map((key) => ({
    name: key === "loading" ? "held while loading" : "held in an emergency stop",
    points: Array.from({ length: points + 1 }, (_, index): [number, number] => {
      const wrap = least + ((most - least) * index) / points;
      return [wrap, heldRatio(groove, key, ropeSpeed, wrap)];
    }),
  }));
  const worse = held.loading / loading.ratio < held.braking / braking.ratio ? "loading" : "braking";
  const line = (ratio: number, words: string) =>
    ({ axis: "y", at: ratio, words: `${words}, ${pen.write(ratio, "one", 3)}`, wrongSide: "below" }) as const;
  return {
    kind: "curve",
    title: `Held over the angle of wrap: ${pen.write(held[worse], "one", 3)} at ${pen.write(values.wrap, "°", 0)}`,
    x: { label: "Angle of wrap", quantity: "angle", unit: "°", digits: 0 },
    y: { label: "Larger over smaller force", quantity: "ratio", unit: "one", digits: 2 },
    series,
    limits: [line(loading.ratio, "loading"), line(braking.ratio, "emergency stop")],
    marks: [
      {
        x: values.wrap,
        y: held[worse],
        words: pen.write(held[worse], "one", 3),
        outside: held[worse] < (worse === "loading" ? loading.ratio : braking.ratio) - 1e-9,
      },
    ],
  };
}

const grooveWords = { round: "round", wedge: "V, not hardened", "hardened wedge": "V, hardened" } as const;

function grooveDrawing(values: TractionValues, { groove }: Traction, pen: Pen): Drawing {
  const undercut = groove.beta > 0 ? `, β ${pen.write(groove.beta, "°", 1)}` : "";
  return {
    kind: "groove",
    title: `Groove, ${grooveWords[groove.form]}: γ ${pen.write(groove.gamma, "°", 1)}${undercut}`,
    form: groove.form,
    gamma: groove.gamma,
    beta: groove.beta,
    ropeDiameter: values.ropeDiameter ?? null,
  };
}

function contradictions(values: TractionValues, pen: Pen): Problem[] {
  const { car, ratedLoad, counterweight } = values;
  if (counterweight > car && counterweight < car + ratedLoad) return [];
  const half = pen.write(car + ratedLoad / 2, "kg", 0);
  const sentence = `A counterweight is heavier than the empty car and lighter than the full one; half of the load would be ${half}. Computed as entered until you decide.`;
  return [{ field: "counterweight", sentence }];
}

function work(values: TractionValues, pen: Pen): Outcome {
  const traction = tractionOf(values);
  const comparisons = compareTraction(values, traction, pen);
  return {
    verdict: tractionVerdict(values, traction, comparisons, pen),
    comparisons,
    values: valuesOf(traction, pen),
    drawings: [grooveDrawing(values, traction, pen), curveOf(values, traction, pen)],
    problems: contradictions(values, pen),
    notes: [
      "Mass and friction of pulleys and friction in the guides are not in it; the full equations stand in EN 81-50, 5.11.3.",
      "Angles as EN 81-50 names them, whole ones. For another way of counting: undercut half angle is β/2, end of contact from the bottom is 90° − γ/2.",
    ],
  };
}

export const traction = defineCalculator({
  id: "traction",
  name: "Traction of the ropes on the sheave",
  purpose:
    "Tells for loading, emergency stop and stalled car whether the groove holds the ropes, and by how much.",
  words: [
    "ropes slip on the sheave",
    "traction lost",
    "car slides at an emergency stop",
    "slips when loaded",
    "worn grooves",
    "angle of wrap",
    "undercut groove",
    "friction of the ropes",
    "counterweight on the buffer and the car goes on",
    "car made lighter",
    "new sheave",
    "rope pressure in the groove",
  ],
  inputs: tractionFields,
  cautions: [
    "A slipping lift stays out of service, car and shaft empty, until a competent person has found why.",
    "Traction tests with load are made only by trained people, by the maker's instructions, with nobody in car or shaft.",
    "Groove and ropes are measured with the machine locked off and the car secured: hands are drawn in.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [conditionSource, frictionSource, caseSource, pressureSource],
  formulas: tractionFormulas,
  work,
});
