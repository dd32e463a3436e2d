import { axisSteps, drawnNumber } from "./axis-steps.ts";
import type { Point } from "./drawing-paths.ts";
import { linePath, tenth } from "./drawing-paths.ts";
import { letteringWidth } from "./text-width.ts";

/** Events added up over time, a fitted curve and the band in which such histories would lie. Times in milliseconds. */
export interface StepCurveInput {
  readonly from: number;
  readonly to: number;
  readonly events: readonly number[];
  readonly ticks: readonly { readonly at: number; readonly words: string }[];
  readonly fit: readonly { readonly at: number; readonly count: number }[];
  readonly band: readonly { readonly at: number; readonly low: number; readonly high: number }[];
  /** Words at the line's end, one or two lines: "now 2.0", "a month". */
  readonly endWords: readonly string[];
  readonly notes: readonly { readonly at: number; readonly words: string }[];
}

export interface StepCurveLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly steps: string;
  readonly fit: string;
  readonly band: string;
  readonly xTicks: readonly { readonly x: number; readonly words: string }[];
  readonly yTicks: readonly { readonly y: number; readonly words: string }[];
  readonly end: Point;
  readonly notes: readonly {
    readonly x: number;
    readonly top: number;
    readonly bottom: number;
    readonly words: string;
  }[];
}

export function stepCurveLayout(input: StepCurveInput, given: number, textSize: number): StepCurveLayout {
  const events = input.events.filter((time) => time >= input.from && time <= input.to).sort((a, b) => a - b);
  const highest = Math.max(events.length, 1, ...input.fit.map((point) => point.count));
  const counts = axisSteps(0, highest, 4).filter(Number.isInteger);
  const most = Math.max(counts.at(-1) ?? 1, 1);
  // The first and last words of time stand under the ends of the axis and need half their width beyond it.
  const firstTick = letteringWidth(input.ticks[0]?.words ?? "", textSize) / 2;
  const lastTick = letteringWidth(input.ticks.at(-1)?.words ?? "", textSize) / 2;
  const left = Math.ceil(Math.max(letteringWidth(String(most), textSize) + 8, firstTick));
  const endWidth = Math.max(
    0,
    ...input.endWords.map((words) => letteringWidth(words, textSize * 1.22, true)),
  );
  const right = Math.max(left + 140, given - Math.max(endWidth + 14, lastTick));
  const height = Math.max(170, Math.min(240, given * 0.42));
  const plot = { left, right, top: textSize * 0.8, bottom: height - textSize * 2 };
  const span = input.to - input.from;
  const xOf = (time: number) =>
    span > 0 ? left + Math.min(1, Math.max(0, (time - input.from) / span)) * (right - left) : left;
  const yOf = (count: number) =>
    plot.bottom - (Math.min(most, Math.max(0, count)) / most) * (plot.bottom - plot.top);
  const fitAt = (time: number) =>
    nearest(input.fit, time)?.count ?? events.filter((event) => event <= time).length;
  return {
    width: Math.ceil(Math.max(given, right + endWidth + 14)),
    height: Math.ceil(height),
    textSize,
    plot,
    steps: stepPath(events, xOf, yOf, right),
    fit: linePath(input.fit.map((point) => ({ x: xOf(point.at), y: yOf(point.count) }))),
    band: bandPath(input.band, xOf, yOf),
    xTicks: input.ticks
      .filter((tick) => tick.at >= input.from && tick.at <= input.to)
      .map((tick) => ({ x: xOf(tick.at), words: tick.words })),
    yTicks: counts.map((count) => ({ y: yOf(count), words: drawnNumber(count, 0) })),
    end: { x: right + 10, y: yOf(events.length) },
    notes: input.notes.map((note) => {
      const y = yOf(fitAt(note.at));
      return {
        x: xOf(note.at),
        top: Math.max(plot.top + textSize * 1.4, y - 68),
        bottom: y,
        words: note.words,
      };
    }),
  };
}

function nearest<T extends { readonly at: number }>(points: readonly T[], time: number): T | undefined {
  let best: T | undefined;
  for (const point of points) if (!best || Math.abs(point.at - time) < Math.abs(best.at - time)) best = point;
  return best;
}

function stepPath(
  events: readonly number[],
  xOf: (time: number) => number,
  yOf: (count: number) => number,
  right: number,
): string {
  const rises = events.map((time, index) => `H${tenth(xOf(time))}V${tenth(yOf(index + 1))}`).join("");
  return `M${tenth(xOf(Number.NEGATIVE_INFINITY))} ${tenth(yOf(0))}${rises}H${tenth(right)}`;
}

function bandPath(
  band: StepCurveInput["band"],
  xOf: (time: number) => number,
  yOf: (count: number) => number,
): string {
  if (band.length < 2) return "";
  const upper = band.map((point) => ({ x: xOf(point.at), y: yOf(point.high) }));
  const lower = [...band].reverse().map((point) => ({ x: xOf(point.at), y: yOf(point.low) }));
  return `${linePath([...upper, ...lower])}Z`;
}
