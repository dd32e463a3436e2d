import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import { type UnitSystem, writeNumber } from "#shared-lib/quantities.ts";
import type { CurveDrawing } from "./curve-input.ts";
import { grooveTable } from "./groove-picture.ts";
import { slowdownPlaces } from "./slowdown-picture.ts";
import { type ShownUnit, shownUnit } from "./unit-words.ts";

/** The figures of a drawing for a reader, every cell written out. */
export interface FigureTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const mostRows = 21;

const head = (label: string, unit: ShownUnit): string =>
  unit.sign === "" ? label : `${label}, ${unit.sign}`;

/** At most 21 of the places, evenly taken, first and last always among them. */
function evenly<Item>(items: readonly Item[]): readonly Item[] {
  if (items.length <= mostRows) return items;
  const step = (items.length - 1) / (mostRows - 1);
  return Array.from({ length: mostRows }, (_, index) => items[Math.round(index * step)]).filter(
    (item) => item !== undefined,
  );
}

function curveTable(drawing: CurveDrawing, system: UnitSystem): FigureTable {
  const x = shownUnit(drawing.x.unit, drawing.x.digits, system);
  const y = shownUnit(drawing.y.unit, drawing.y.digits, system);
  const columns = [...drawing.series, ...(drawing.dots ?? [])];
  const xs = [...new Set(columns.flatMap((series) => series.points.map(([at]) => at)))].sort(
    (one, other) => one - other,
  );
  const found = columns.map((series) => new Map(series.points));
  // Between two rows an axis step must still be told apart.
  const xDigits = xs.length > 12 && !xs.every(Number.isInteger) ? x.digits + 1 : x.digits;
  const rows = evenly(xs).map((at) => [
    writeNumber(x.of(at), xDigits),
    ...found.map((values) => {
      const value = values.get(at);
      return value === undefined ? "" : writeNumber(y.of(value), y.digits);
    }),
  ]);
  const heads = columns.map((series) => head(columns.length === 1 ? drawing.y.label : series.name, y));
  return { heads: [head(drawing.x.label, x), ...heads], rows };
}

export function figureTable(drawing: Drawing, system: UnitSystem): FigureTable | null {
  const length = shownUnit("mm", 0, system);
  const write = (value: number, signed = false): string =>
    writeNumber(length.of(value), length.digits, signed);
  switch (drawing.kind) {
    case "curve":
      return curveTable(drawing, system);
    case "zone-bars":
      return {
        heads: ["Signal", head("From", length), head("To", length), head("Length", length)],
        rows: drawing.bars.map((bar) => [
          bar.unlocks ? `${bar.name}, unlocks` : bar.name,
          write(bar.from, true),
          write(bar.to, true),
          write(bar.length),
        ]),
      };
    case "edge-order":
      return {
        heads: ["Moving", "Expected", "Seen", "Finding"],
        rows: drawing.runs.map((run) => [
          run.direction,
          run.expected.join(", "),
          run.seen === null ? "not run" : run.seen.join(", ") || "nothing came",
          run.word,
        ]),
      };
    case "slowdown-range": {
      const metres = shownUnit("m", 3, system);
      return {
        heads: ["Place", head("Before the level", metres)],
        rows: slowdownPlaces(drawing).map((place) => [
          place.words,
          writeNumber(metres.of(place.at), metres.digits),
        ]),
      };
    }
    case "groove":
      return grooveTable(drawing);
    case "magnet-detail":
    case "bus-line":
      return null;
  }
}
