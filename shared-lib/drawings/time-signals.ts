import { axisSteps, decimalsOfStep, drawnNumber } from "./axis-steps.ts";
import { letteringWidth } from "./text-width.ts";

/** A stretch of time (in the picture's unit) in which a signal has one meaning. */
export interface SignalLevel {
  readonly from: number;
  readonly to: number;
  readonly state: "on" | "off" | "unknown";
}

export interface TimeSignal {
  readonly name: string;
  /** Drawn by meaning (on is up) all the same; the drawing says so. */
  readonly activeLow?: boolean;
  readonly levels: readonly SignalLevel[];
}

export interface SignalMoment {
  readonly at: number;
  /** What the rule calls this moment, for the reader: "lower on". */
  readonly words: string;
}

/** One picture of signals over time. Order of rows is the car's: upper above lower. */
export interface SignalPanel {
  readonly title: string;
  readonly from: number;
  readonly to: number;
  readonly unit: string;
  readonly signals: readonly TimeSignal[];
  /** Moments that a rule names; the time from each to the next is written below. */
  readonly moments: readonly SignalMoment[];
}

export interface SignalRowLayout {
  readonly name: string;
  readonly activeLow: boolean;
  readonly middleY: number;
  /** The level line, up for on; broken where nothing is known. */
  readonly path: string;
  readonly unknown: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
}

export interface SignalPanelLayout {
  readonly panel: SignalPanel;
  readonly left: number;
  readonly top: number;
  readonly plotLeft: number;
  readonly plotRight: number;
  readonly rowsTop: number;
  readonly rowsBottom: number;
  readonly showsNames: boolean;
  readonly rows: readonly SignalRowLayout[];
  readonly moments: readonly number[];
  /** Intervals between named moments on one dimension line; the words stand beside where they do not fit between. */
  readonly intervals: readonly {
    readonly from: number;
    readonly to: number;
    readonly words: string;
    readonly wordX: number;
    readonly y: number;
  }[];
  readonly axisY: number;
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
}

export interface TimeSignalsLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly panels: readonly SignalPanelLayout[];
}

const leastPlot = 190;

/** Expected left, seen right, never one over the other; one under the other where the width is too little. */
export function timeSignalsLayout(
  panels: readonly SignalPanel[],
  given: number,
  textSize: number,
): TimeSignalsLayout {
  const names = panels.flatMap((panel) => panel.signals.map((signal) => signal.name));
  const activeLow = panels.some((panel) => panel.signals.some((signal) => signal.activeLow));
  const words = activeLow ? [...names, "active low"] : names;
  const nameWidth = Math.ceil(Math.max(0, ...words.map((word) => letteringWidth(word, textSize)))) + 12;
  const sameNames =
    new Set(panels.map((panel) => panel.signals.map((signal) => signal.name).join("\n"))).size <= 1;
  const between = textSize * 2;
  const columns = panels.length;
  const namesShown = sameNames ? 1 : columns;
  const across = (given - nameWidth * namesShown - between * (columns - 1)) / Math.max(1, columns);
  const beside = columns > 1 && across >= leastPlot;
  const plotWidth = beside ? across : Math.max(leastPlot, given - nameWidth);
  const placed: SignalPanelLayout[] = [];
  let left = 0;
  let top = 0;
  for (const [index, panel] of panels.entries()) {
    const showsNames = index === 0 || !beside || !sameNames;
    const plotLeft = left + (showsNames ? nameWidth : 0);
    const next = panelLayout(panel, {
      left,
      top,
      plotLeft,
      plotRight: plotLeft + plotWidth - textSize,
      showsNames,
      textSize,
    });
    placed.push(next);
    if (beside) left = plotLeft + plotWidth + between;
    else top = next.axisY + textSize * 2.4;
  }
  const bottom = Math.max(0, ...placed.map((panel) => panel.axisY));
  const right = Math.max(given, ...placed.map((panel) => panel.plotRight + textSize));
  return { width: Math.ceil(right), height: Math.ceil(bottom + textSize * 2), textSize, panels: placed };
}

interface PanelPlace {
  readonly left: number;
  readonly top: number;
  readonly plotLeft: number;
  readonly plotRight: number;
  readonly showsNames: boolean;
  readonly textSize: number;
}

function panelLayout(panel: SignalPanel, place: PanelPlace): SignalPanelLayout {
  const { top, plotLeft, plotRight, textSize } = place;
  const span = panel.to - panel.from;
  const xOf = (time: number) =>
    span > 0
      ? plotLeft + Math.min(1, Math.max(0, (time - panel.from) / span)) * (plotRight - plotLeft)
      : plotLeft;
  const rowsTop = top + textSize * 2;
  const rowHeight = Math.max(40, textSize * 2.7);
  const rows = panel.signals.map((signal, index) =>
    signalRow(signal, rowsTop + index * rowHeight, rowHeight, xOf),
  );
  const rowsBottom = rowsTop + panel.signals.length * rowHeight;
  const moments = panel.moments
    .filter((moment) => moment.at >= panel.from && moment.at <= panel.to)
    .sort((a, b) => a.at - b.at);
  const intervals = momentIntervals(moments, panel, xOf, rowsBottom + textSize, textSize);
  const lowest = Math.max(rowsBottom, ...intervals.map((interval) => interval.y + textSize * 0.8));
  return {
    ...place,
    panel,
    rowsTop,
    rowsBottom,
    rows,
    moments: moments.map((moment) => xOf(moment.at)),
    intervals,
    axisY: lowest + textSize * 0.6,
    ticks: timeTicks(panel, xOf, textSize),
  };
}

function signalRow(
  signal: TimeSignal,
  top: number,
  height: number,
  xOf: (time: number) => number,
): SignalRowLayout {
  const upY = top + height * 0.2;
  const downY = top + height * 0.75;
  const unknown: SignalRowLayout["unknown"][number][] = [];
  let path = "";
  let lastY: number | null = null;
  for (const level of [...signal.levels].sort((a, b) => a.from - b.from)) {
    const from = xOf(level.from);
    const to = xOf(level.to);
    if (level.state === "unknown") {
      unknown.push({ x: from, y: upY, width: Math.max(0, to - from), height: downY - upY });
      lastY = null;
      continue;
    }
    const y = level.state === "on" ? upY : downY;
    path += lastY === null ? `M${from} ${y}` : `H${from}V${y}`;
    path += `H${to}`;
    lastY = y;
  }
  return {
    name: signal.name,
    activeLow: signal.activeLow ?? false,
    middleY: (upY + downY) / 2,
    path,
    unknown,
  };
}

/** Short intervals stand on lines of their own, so that their words never meet. */
function momentIntervals(
  moments: readonly SignalMoment[],
  panel: SignalPanel,
  xOf: (time: number) => number,
  firstY: number,
  textSize: number,
): SignalPanelLayout["intervals"] {
  const lineEnds: number[] = [];
  return moments.slice(1).map((moment, index) => {
    const start = moments[index]?.at ?? moment.at;
    const from = xOf(start);
    const to = xOf(moment.at);
    const words = `${drawnNumber(moment.at - start, moment.at - start < 10 ? 1 : 0)}\u00a0${panel.unit}`;
    const wordWidth = letteringWidth(words, textSize);
    const fits = to - from > wordWidth + 18;
    const wordX = fits ? (from + to) / 2 : to + 8 + wordWidth / 2;
    const begin = Math.min(from, wordX - wordWidth / 2) - 6;
    const free = lineEnds.findIndex((end) => end <= begin);
    const line = free === -1 ? lineEnds.length : free;
    lineEnds[line] = Math.max(to, wordX + wordWidth / 2) + 6;
    return { from, to, words, wordX, y: firstY + line * textSize * 1.5 };
  });
}

function timeTicks(
  panel: SignalPanel,
  xOf: (time: number) => number,
  textSize: number,
): SignalPanelLayout["ticks"] {
  const room = Math.max(1, Math.floor((xOf(panel.to) - xOf(panel.from)) / (textSize * 4.5)));
  const steps = axisSteps(panel.from, panel.to, Math.min(5, room)).filter(
    (time) => time >= panel.from && time <= panel.to,
  );
  const decimals = decimalsOfStep(Math.abs((steps[1] ?? 1) - (steps[0] ?? 0)));
  return steps.map((time, index) => ({
    x: xOf(time),
    words: `${drawnNumber(time, decimals)}${index === steps.length - 1 ? `\u00a0${panel.unit}` : ""}`,
  }));
}

/** What a reader hears of one panel: for each signal, when it is on. */
export function signalPanelSentence(panel: SignalPanel): string {
  const said = panel.signals.map((signal) => {
    const on = signal.levels.filter((level) => level.state === "on");
    const when = on.map((level) => `${level.from} to ${level.to} ${panel.unit}`).join(" and ");
    return `${signal.name}${signal.activeLow ? ", active low," : ""} ${on.length > 0 ? `on ${when}` : "never on"}`;
  });
  return `${panel.title}: ${said.join("; ")}.`;
}
