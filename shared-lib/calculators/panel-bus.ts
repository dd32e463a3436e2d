import { busFields } from "./bus-fields.ts";
import { busFormulas } from "./bus-formulas.ts";
import {
  type BusValues,
  compareBus,
  conductorSource,
  directCurrentSource,
  expectedResistance,
  lastVoltage,
  lengthSource,
  powerProblem,
  riserOf,
  riserSource,
  terminationSource,
  terminatorsFound,
} from "./bus-judgement.ts";
import { dropAt, type Riser } from "./bus-physics.ts";
import { busVerdict } from "./bus-verdict.ts";
import { defineCalculator, type Outcome } from "./calculator.ts";
import type { Drawing } from "./drawing.ts";
import type { Pen } from "./pen.ts";
import type { Problem, ValueLine } from "./result.ts";

const endings = [
  ["bothEnds", "Expected with both terminators", { near: true, far: true }],
  ["nearOnly", "Expected with the far one missing", { near: true, far: false }],
  ["farOnly", "Expected with the near one missing", { near: false, far: true }],
] as const;

function valuesOf(values: BusValues, riser: Riser | null, pen: Pen): ValueLine[] {
  const lines: ValueLine[] = [];
  for (const [key, label, ends] of endings) {
    const ohm = expectedResistance(values, ends);
    if (ohm !== null) lines.push(pen.value(key, label, ohm, "Ω", 1));
  }
  if (riser === null) return lines;
  const drop = dropAt(riser, riser.panels);
  lines.push(pen.value("drop", "Drop to the last panel", drop, "V", 2));
  lines.push(pen.value("zeroShift", "Shift of the 0 V conductor there", drop / 2, "V", 2));
  if (drop < riser.supply)
    lines.push(pen.value("lastVoltage", "Supply at the last panel", lastVoltage(riser), "V", 2));
  return lines;
}

const foundWords = {
  two: "both terminators seen",
  one: "one terminator seen",
  none: "no terminator seen",
  "more than two": "more than two terminators seen",
  short: "bus lines shorted",
  unclear: "reading fits no number of terminators",
  "not measured": "terminators not measured",
} as const;

function busLine(values: BusValues): Drawing {
  const found = terminatorsFound(values);
  return {
    kind: "bus-line",
    title: "The bus from the controller through the panels",
    length: values.busLength ?? null,
    panels: values.panels ?? 0,
    found,
    words: foundWords[found],
  };
}

/** Voltage at every panel; below nothing the curve stays at nothing, for the currents entered cannot flow there. */
function riserCurve(values: BusValues, riser: Riser, pen: Pen): Drawing {
  const least = values.leastVoltage;
  const points = Array.from({ length: riser.panels + 1 }, (_, panel): [number, number] => {
    const voltage = panel === 0 ? riser.supply : riser.supply - dropAt(riser, panel);
    return [panel, Math.max(0, voltage)];
  });
  const last = Math.max(0, lastVoltage(riser));
  return {
    kind: "curve",
    title: `Supply along the riser: ${pen.write(last, "V", 2)} at the last panel`,
    x: { label: "Panel, counted from the supply", quantity: "count", unit: "pieces", digits: 0 },
    y: { label: "Supply at the panel", quantity: "voltage", unit: "V", digits: 1 },
    series: [{ name: "supply", points }],
    limits:
      least === undefined
        ? []
        : [{ axis: "y", at: least, words: `least, ${pen.write(least, "V", 1)}`, wrongSide: "below" }],
    marks: [
      {
        x: riser.panels,
        y: last,
        words: pen.write(last, "V", 2),
        outside: last <= 0 || (least !== undefined && last < least - 1e-9),
      },
    ],
  };
}

function contradictions(values: BusValues): Problem[] {
  const problems = powerProblem(values);
  const { supply, leastVoltage, longestStub, allStubs } = values;
  if (supply !== undefined && leastVoltage !== undefined && leastVoltage >= supply) {
    const sentence =
      "A panel cannot need more than the supply gives. Supply and least exchanged? Compared as entered until you decide.";
    problems.push({ field: "leastVoltage", sentence });
  }
  if (longestStub !== undefined && allStubs !== undefined && allStubs < longestStub) {
    const sentence =
      "All stubs together cannot be shorter than the longest one. Compared as entered until you decide.";
    problems.push({ field: "allStubs", sentence });
  }
  return problems;
}

const riserParts = [
  ["supply", "supply voltage"],
  ["panels", "panels"],
  ["panelCurrent", "current of one panel"],
  ["span", "distance between panels"],
  ["conductor", "conductor"],
] as const;

/** Named only once somebody has begun with the riser. */
function riserNotes(values: BusValues, riser: Riser | null): string[] {
  if (riser !== null) {
    return ["Computed for constant currents; panels that draw constant power pull the voltage down further."];
  }
  const begun =
    values.supply !== undefined || values.panelCurrent !== undefined || values.conductor !== undefined;
  const missing = riserParts.filter(([key]) => values[key] === undefined).map(([, words]) => words);
  return begun ? [`The riser is not computed; still needed: ${missing.join(", ")}.`] : [];
}

function work(values: BusValues, pen: Pen): Outcome {
  const riser = riserOf(values);
  const comparisons = compareBus(values, riser, pen);
  const notes = [
    "Measured with power off at every panel, between the two bus lines, at the controller's end.",
  ];
  if (values.lineResistance === undefined || values.busLength === undefined) {
    notes.push("Line resistance is left out of the expected readings: length or cable is not entered.");
  }
  return {
    verdict: busVerdict(values, riser, comparisons, pen),
    comparisons,
    values: valuesOf(values, riser, pen),
    drawings: [busLine(values), ...(riser === null ? [] : [riserCurve(values, riser, pen)])],
    problems: contradictions(values),
    notes: [...notes, ...riserNotes(values, riser)],
  };
}

export const panelBus = defineCalculator({
  id: "panel-bus",
  name: "Panel bus: termination, length, supply drop",
  purpose:
    "Tells from a resistance reading, the bit rate and the supply riser whether the bus of the panels can work.",
  words: [
    "landing panels dead",
    "panels drop out",
    "landing calls not taken",
    "bus terminator missing",
    "termination resistance",
    "bus too long",
    "stub length",
    "bit rate",
    "CAN bus",
    "displays flicker at the top floors",
    "supply drop along the riser",
    "panel restarts",
    "water in the shaft, panels out",
  ],
  inputs: busFields,
  cautions: [
    "Resistance only with every supply and battery off, locked off and proved dead.",
    "Live voltage only by trained people with a rated meter; stay clear of the shaft while the car can move.",
    "Panels and their plugs stand at the open shaft wall: mind the fall.",
    "Only trained people; local codes and the maker's instructions decide.",
  ],
  sources: [terminationSource, lengthSource, directCurrentSource, conductorSource, riserSource],
  formulas: busFormulas,
  work,
});
