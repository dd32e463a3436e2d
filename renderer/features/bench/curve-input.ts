import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import type { CurveInput, CurveSeries } from "#shared-lib/drawings/curve-layout.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { type ShownUnit, shownUnit } from "./unit-words.ts";

export type CurveDrawing = Extract<Drawing, { kind: "curve" }>;

type Series = CurveDrawing["series"][number];

function seriesIn(series: Series, name: string, x: ShownUnit, y: ShownUnit): CurveSeries {
  return { name, points: series.points.map(([at, value]) => ({ x: x.of(at), y: y.of(value) })) };
}

const axisWords = (axis: CurveDrawing["x"], unit: ShownUnit): string =>
  unit.sign === "" ? axis.label : `${axis.label}, ${unit.sign}`;

/** The point in question: the first one outside, else the last one. The picture carries one. */
export function markedPoint(drawing: CurveDrawing): CurveDrawing["marks"][number] | undefined {
  return drawing.marks.find((mark) => mark.outside) ?? drawing.marks.at(-1);
}

/**
 * A calculator's curve as the drawing takes it, in the person's units.
 * @param earlier the same curve of an earlier result, drawn in construction blue under `words`
 */
export function curveInput(
  drawing: CurveDrawing,
  system: UnitSystem,
  earlier?: { readonly drawing: CurveDrawing; readonly words: string },
): CurveInput {
  const x = shownUnit(drawing.x.unit, drawing.x.digits, system);
  const y = shownUnit(drawing.y.unit, drawing.y.digits, system);
  const mark = markedPoint(drawing);
  const before = earlier?.drawing.series[0];
  return {
    x: { words: axisWords(drawing.x, x), unit: x.sign },
    y: { words: axisWords(drawing.y, y), unit: y.sign, fromZero: drawing.y.quantity === "speed" },
    series: drawing.series.slice(0, 3).map((series) => seriesIn(series, series.name, x, y)),
    limits: drawing.limits
      .filter((limit) => limit.axis === "y")
      .map((limit) => ({ value: y.of(limit.at), words: limit.words, wrongSide: limit.wrongSide ?? "none" })),
    ...(drawing.dots === undefined ? {} : { dots: drawing.dots.map((set) => seriesIn(set, set.name, x, y)) }),
    ...(before === undefined || earlier === undefined
      ? {}
      : { earlier: seriesIn(before, earlier.words, x, y) }),
    ...(mark === undefined
      ? {}
      : { mark: { x: x.of(mark.x), y: y.of(mark.y), words: mark.words, failed: mark.outside } }),
  };
}

/** What the picture cannot carry is said below it: limits along the other axis, further points, a fourth curve. */
export function curveCaption(drawing: CurveDrawing): string {
  const shown = markedPoint(drawing);
  const parts = [
    ...drawing.limits.filter((limit) => limit.axis === "x").map((limit) => limit.words),
    ...drawing.marks.filter((mark) => mark !== shown).map((mark) => mark.words),
    ...drawing.series.slice(3).map((series) => `${series.name} stands in the table only`),
  ];
  return parts.length === 0 ? "" : `${parts.join("; ")}.`;
}
