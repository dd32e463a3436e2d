import { axisSteps, decimalsOfStep, drawnNumber } from "./axis-steps.ts";
import type { Point } from "./drawing-paths.ts";
import { linePath } from "./drawing-paths.ts";
import { spreadLabels } from "./spread-labels.ts";
import { letteringWidth } from "./text-width.ts";

export interface CurveSeries {
  /** Stands at the line's end; there is no legend. */
  readonly name: string;
  readonly points: readonly Point[];
}

export interface CurveLimit {
  readonly value: number;
  readonly words: string;
  /** The side that is not allowed, hatched lightly. */
  readonly wrongSide: "above" | "below" | "none";
}

export interface CurveAxis {
  readonly words: string;
  readonly unit: string;
  /** Nought stays on the axis; set for counts and rates. */
  readonly fromZero?: boolean;
}

export interface CurveInput {
  readonly x: CurveAxis;
  readonly y: CurveAxis;
  /** At most three: solid, dashed, dotted. Beyond three, small multiples. */
  readonly series: readonly CurveSeries[];
  readonly limits: readonly CurveLimit[];
  /** Single readings; the first set is drawn filled, the others open. */
  readonly dots?: readonly CurveSeries[];
  /** An earlier result, in construction blue. */
  readonly earlier?: CurveSeries;
  /** The point in question, with its words ("2.56 m"). */
  readonly mark?: {
    readonly x: number;
    readonly y: number;
    readonly words: string;
    readonly failed: boolean;
  };
}

export interface CurveLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly xTicks: readonly { readonly at: number; readonly words: string }[];
  readonly yTicks: readonly { readonly at: number; readonly words: string }[];
  readonly lines: readonly {
    readonly name: string;
    readonly path: string;
    readonly pen: "solid" | "dashed" | "dotted" | "earlier";
  }[];
  readonly ends: readonly {
    readonly name: string;
    readonly y: number;
    readonly lineY: number;
    readonly pen: "ink" | "earlier";
  }[];
  readonly limits: readonly {
    readonly words: string;
    readonly y: number;
    readonly wordY: number;
    readonly wrong: { readonly y: number; readonly height: number } | null;
  }[];
  readonly dots: readonly (Point & { readonly key: string; readonly open: boolean })[];
  readonly mark:
    | (Point & {
        readonly words: string;
        readonly failed: boolean;
        readonly wordX: number;
        readonly wordY: number;
        readonly align: "start" | "end";
      })
    | null;
}

const pens = ["solid", "dashed", "dotted"] as const;

function finite(points: readonly Point[]): Point[] {
  return points.filter((point) => Number.isFinite(point.x) && Number.isFinite(point.y));
}

export function curveLayout(input: CurveInput, given: number, textSize: number): CurveLayout {
  const drawn = [...input.series, ...(input.earlier ? [input.earlier] : [])].map((series) => ({
    ...series,
    points: finite(series.points),
  }));
  const dots = (input.dots ?? []).map((set) => finite(set.points));
  const points = [...drawn.flatMap((series) => series.points), ...dots.flat()].concat(
    input.mark ? finite([input.mark]) : [],
  );
  const xs = axisRange(
    points.map((point) => point.x),
    input.x.fromZero ?? false,
  );
  const limitValues = input.limits.map((limit) => limit.value).filter(Number.isFinite);
  const ys = axisRange([...points.map((point) => point.y), ...limitValues], input.y.fromZero ?? false);
  const yWords = tickWords(ys, input.y.unit);
  const endWidth = endWidthOf(input, textSize);
  const left = Math.ceil(Math.max(0, ...yWords.map((words) => letteringWidth(words, textSize)))) + 8;
  const right = Math.max(left + 120, given - endWidth - 12);
  const height = Math.max(180, Math.min(280, given * 0.42));
  const plot = { left, right, top: textSize * 2, bottom: height - textSize * 3 };
  const xOf = scaleOf(xs, plot.left, plot.right);
  const yOf = scaleOf(ys, plot.bottom, plot.top);
  const limits = input.limits.filter((limit) => Number.isFinite(limit.value));
  const endItems = drawn.map((series) => ({
    name: series.name,
    y: yOf(series.points.at(-1)?.y ?? ys[0] ?? 0),
  }));
  const places = spreadLabels(
    [...endItems.map((item) => item.y), ...limits.map((limit) => yOf(limit.value))].map((anchor) => ({
      anchor,
      extent: textSize * 1.2,
    })),
    plot.top - textSize,
    plot.bottom + textSize * 0.3,
  );
  const xWords = tickWords(xs, input.x.unit);
  return {
    width: Math.max(given, Math.ceil(right + endWidth + 12)),
    height: Math.ceil(height),
    textSize,
    plot,
    xTicks: xs.map((value, index) => ({ at: xOf(value), words: xWords[index] ?? "" })),
    yTicks: ys.map((value, index) => ({ at: yOf(value), words: yWords[index] ?? "" })),
    lines: drawn.map((series, index) => ({
      name: series.name,
      path: linePath(series.points.map((point) => ({ x: xOf(point.x), y: yOf(point.y) }))),
      pen: index < input.series.length ? (pens[index % 3] ?? "solid") : "earlier",
    })),
    ends: endItems.map((item, index) => ({
      name: item.name,
      lineY: item.y,
      y: places[index] ?? item.y,
      pen: index < input.series.length ? "ink" : "earlier",
    })),
    limits: limits.map((limit, index) => placedLimit(limit, yOf, plot, places[endItems.length + index])),
    dots: placedDots(dots, xOf, yOf),
    mark: placedMark(input.mark, xOf, yOf, plot, textSize),
  };
}

function placedDots(
  sets: readonly (readonly Point[])[],
  xOf: (value: number) => number,
  yOf: (value: number) => number,
): CurveLayout["dots"] {
  return sets.flatMap((set, index) =>
    set.map((dot, place) => ({
      key: `${index} ${place}`,
      open: index > 0,
      x: xOf(dot.x),
      y: yOf(dot.y),
    })),
  );
}

/** Width of the widest words at the right end of the plot. */
function endWidthOf({ series, earlier, limits }: CurveInput, textSize: number): number {
  const names = [...series, ...(earlier ? [earlier] : [])].map(({ name }) => name);
  const words = [...names, ...limits.map((limit) => limit.words)];
  return Math.max(0, ...words.map((each) => letteringWidth(each, textSize)));
}

function axisRange(values: readonly number[], fromZero: boolean): number[] {
  const known = values.filter(Number.isFinite);
  const low = Math.min(...(fromZero || known.length === 0 ? [0] : []), ...known);
  const high = Math.max(...(fromZero || known.length === 0 ? [0] : []), ...known);
  return axisSteps(low, high, 4);
}

function scaleOf(steps: readonly number[], from: number, to: number): (value: number) => number {
  const low = steps[0] ?? 0;
  const high = steps.at(-1) ?? 1;
  return (value) => from + ((value - low) / (high - low)) * (to - from);
}

function tickWords(steps: readonly number[], unit: string): string[] {
  const decimals = decimalsOfStep((steps[1] ?? 1) - (steps[0] ?? 0));
  return steps.map(
    (value, index) =>
      `${drawnNumber(value, decimals)}${index === steps.length - 1 && unit !== "" ? `\u00a0${unit}` : ""}`,
  );
}

function placedLimit(
  limit: CurveLimit,
  yOf: (value: number) => number,
  plot: CurveLayout["plot"],
  wordY: number | undefined,
): CurveLayout["limits"][number] {
  const y = yOf(limit.value);
  const wrong = {
    above: { y: plot.top, height: y - plot.top },
    below: { y, height: plot.bottom - y },
    none: null,
  }[limit.wrongSide];
  return { words: limit.words, y, wordY: wordY ?? y, wrong: wrong && wrong.height > 0 ? wrong : null };
}

function placedMark(
  mark: CurveInput["mark"],
  xOf: (value: number) => number,
  yOf: (value: number) => number,
  plot: CurveLayout["plot"],
  textSize: number,
): CurveLayout["mark"] {
  if (!mark || !Number.isFinite(mark.x) || !Number.isFinite(mark.y)) return null;
  const x = xOf(mark.x);
  const y = yOf(mark.y);
  const width = letteringWidth(mark.words, textSize, true);
  const align = x + 10 + width > plot.right ? "end" : "start";
  return {
    x,
    y,
    words: mark.words,
    failed: mark.failed,
    align,
    wordX: align === "start" ? x + 10 : x - 10,
    wordY: Math.max(plot.top + textSize, y - 8),
  };
}
