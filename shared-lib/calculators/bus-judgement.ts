import type { busFields } from "./bus-fields.ts";
import {
  type BusLine,
  bitRateLimits,
  conductorResistance,
  directCurrentLength,
  dropAt,
  type Riser,
  readTerminators,
  resistanceSeen,
  type TerminatorsFound,
} from "./bus-physics.ts";
import type { ValuesOf } from "./field.ts";
import type { Pen } from "./pen.ts";
import type { Comparison, Problem } from "./result.ts";
import { clause, derived, site } from "./source.ts";

export type BusValues = ValuesOf<typeof busFields>;

export const terminationSource = clause(
  "published",
  "ISO 11898-2",
  "",
  "",
  "120 ohm at both ends; about 60 ohm between the lines, accepted 50 to 70 ohm",
);
export const lengthSource = clause("published", "", "", "", "practice after CiA recommendations");
export const directCurrentSource = clause(
  "published",
  "application note AN96116",
  "",
  "equation 16",
  "voltage at the far node",
);
export const conductorSource = clause("published", "IEC 60228", "", "class 5", "largest resistance at 20 °C");
export const riserSource = derived("voltage drop along equal panels");
const panelData = site("from the panel's data");

/** What the reading says, or nothing where it was taken with power on: then it means nothing. */
export function terminatorsFound(values: BusValues): TerminatorsFound | "not measured" {
  if (values.reading === "none" || values.power !== "off") return "not measured";
  return values.reading === "open" ? "none" : readTerminators(values.resistance ?? 0);
}

export function powerProblem(values: BusValues): Problem[] {
  if (values.reading === "none" || values.power !== "on") return [];
  const sentence =
    "With power on a resistance reading means nothing. Switch off, lock off, prove dead, then measure again; the reading is left out until then.";
  return [{ field: "power", sentence }];
}

/** The riser as entered; null where a part of it is missing. */
export function riserOf(values: BusValues): Riser | null {
  const { supply, panels, panelCurrent, span, conductor } = values;
  if (supply === undefined || panels === undefined || panelCurrent === undefined) return null;
  if (span === undefined || conductor === undefined) return null;
  return {
    supply,
    panels,
    current: panelCurrent,
    span,
    feeder: values.feeder ?? 0,
    resistance: conductorResistance[conductor],
  };
}

export const lastVoltage = (riser: Riser): number => riser.supply - dropAt(riser, riser.panels);

export function expectedResistance(values: BusValues, ends: { near: boolean; far: boolean }): number | null {
  const line: BusLine = {
    length: values.lineResistance === undefined ? 0 : (values.busLength ?? 0),
    resistance: values.lineResistance ?? 0,
    panels: values.panels ?? 0,
    inputResistance: values.inputResistance ?? null,
    ...ends,
  };
  return resistanceSeen(line);
}

function compareReading(values: BusValues, pen: Pen): Comparison[] {
  const found = terminatorsFound(values);
  if (found === "not measured") return [];
  const ohm = values.reading === "open" ? null : (values.resistance ?? null);
  const compared = pen.compare({
    key: "termination",
    label: ohm === null ? "Between the bus lines, open" : "Between the bus lines",
    value: ohm,
    unit: "Ω",
    digits: 1,
    least: 50,
    most: 70,
    limitWords: `two terminators, ${pen.write(50, "Ω", 0)} to ${pen.write(70, "Ω", 0)}`,
    source: terminationSource,
    field: ohm === null ? "reading" : "resistance",
  });
  return [ohm === null ? { ...compared, holds: false, word: "outside" } : compared];
}

function compareLengths(values: BusValues, pen: Pen): Comparison[] {
  const row = bitRateLimits.find((limit) => String(limit.bitRate / 1000) === values.bitRate);
  if (row === undefined) return [];
  const rate = pen.write(row.bitRate, "kbit/s", 0);
  const against = (
    key: string,
    label: string,
    value: number | undefined,
    most: number | null,
    digits: number,
  ): Comparison[] => {
    if (value === undefined) return [];
    const limitWords = most === null ? "" : `at ${rate} up to ${pen.write(most, "m", digits)}`;
    const open = most === null ? { open: `the recommendations give none at ${rate}.` } : {};
    return [
      pen.compare({
        key,
        label,
        value,
        unit: "m",
        digits,
        most,
        limitWords,
        source: lengthSource,
        field: key,
        ...open,
      }),
    ];
  };
  return [
    ...against("busLength", "Bus length", values.busLength, row.length, 0),
    ...against("longestStub", "Longest stub", values.longestStub, row.stub, 1),
    ...against("allStubs", "All stubs together", values.allStubs, row.stubs, 1),
  ];
}

/** Controller and panels. */
const nodesOf = (panels: number): number => panels + 1;

function compareDirectCurrent(values: BusValues, pen: Pen): Comparison[] {
  const { busLength, lineResistance, panels } = values;
  if (busLength === undefined || lineResistance === undefined || panels === undefined) return [];
  const most = directCurrentLength({ resistance: lineResistance, nodes: nodesOf(panels), margin: 0.2 });
  return [
    pen.compare({
      key: "directCurrent",
      label: "Bus length, by its resistance,",
      value: busLength,
      unit: "m",
      digits: 0,
      most,
      limitWords: `up to ${pen.write(most, "m", 0)} with this cable and ${nodesOf(panels)} nodes`,
      source: directCurrentSource,
      field: "busLength",
    }),
  ];
}

function compareRiser(values: BusValues, riser: Riser | null, pen: Pen): Comparison[] {
  if (riser === null) return [];
  const last = lastVoltage(riser);
  if (last <= 0) {
    // Below nothing there is no voltage to compare: the constant currents entered cannot flow at all.
    const drop = dropAt(riser, riser.panels);
    return [
      pen.compare({
        key: "drop",
        label: "Drop to the last panel",
        value: drop,
        unit: "V",
        digits: 2,
        most: riser.supply - 1e-6,
        limitWords: `less than the supply, ${pen.write(riser.supply, "V", 1)}`,
        source: riserSource,
      }),
    ];
  }
  const least = values.leastVoltage;
  return [
    pen.compare({
      key: "lastVoltage",
      label: "Supply at the last panel",
      value: last,
      unit: "V",
      digits: 2,
      least: least ?? null,
      limitWords: least === undefined ? "" : `the panel's least, ${pen.write(least, "V", 1)}`,
      source: panelData,
      ...(least === undefined ? { open: "the least supply of a panel is not entered." } : {}),
    }),
  ];
}

export function compareBus(values: BusValues, riser: Riser | null, pen: Pen): Comparison[] {
  return [
    ...compareReading(values, pen),
    ...compareRiser(values, riser, pen),
    ...compareLengths(values, pen),
    ...compareDirectCurrent(values, pen),
  ];
}
