import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import { type UnitSystem, writeQuantity } from "#shared-lib/quantities.ts";

export type BusLineDrawing = Extract<Drawing, { kind: "bus-line" }>;

/** there: by the reading it is there. missing: by the reading it is not. unknown: the reading does not say. */
export type TerminatorState = "there" | "missing" | "unknown";

export interface BusLinePicture {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly lineY: number;
  readonly left: number;
  readonly right: number;
  readonly controller: { readonly x: number; readonly width: number };
  readonly panels: readonly { readonly x: number; readonly number: number }[];
  /** Panels that stand behind the break line; 0: all are drawn. */
  readonly leftOut: number;
  readonly breakX: number | null;
  readonly terminators: readonly {
    readonly x: number;
    readonly state: TerminatorState;
    readonly words: string;
  }[];
  readonly short: boolean;
  readonly lengthWords: string | null;
}

const leastStep = 26;
const panelWidth = 16;

const stateOf: Readonly<Record<BusLineDrawing["found"], TerminatorState>> = {
  two: "there",
  // One of two is missing, and the reading does not tell which end.
  one: "unknown",
  none: "missing",
  "more than two": "there",
  short: "unknown",
  unclear: "unknown",
  "not measured": "unknown",
};

function terminatorWords(found: BusLineDrawing["found"], state: TerminatorState): string {
  if (found === "one") return "one of the two";
  if (state === "there") return "terminator";
  return state === "missing" ? "no terminator" : "not known";
}

/** Which panels are drawn: all, or the first ones and the last one with a break line between. */
function drawnPanels(count: number, room: number): { readonly numbers: number[]; readonly leftOut: number } {
  const most = Math.max(3, Math.floor(room / leastStep));
  if (count <= most) return { numbers: Array.from({ length: count }, (_, index) => index + 1), leftOut: 0 };
  const first = Array.from({ length: most - 2 }, (_, index) => index + 1);
  return { numbers: [...first, count], leftOut: count - first.length - 1 };
}

/** Geometry of the bus as one line from the controller through the panels, a terminator at each end. */
export function busLinePicture(
  drawing: BusLineDrawing,
  given: number,
  textSize: number,
  system: UnitSystem,
): BusLinePicture {
  const width = Math.max(360, given);
  const end = Math.max(40, textSize * 4.2);
  const controllerWidth = Math.max(78, textSize * 5.8);
  const left = 10 + end / 2;
  const right = width - 10 - end;
  const lineY = textSize * 4.4;
  const firstPanel = left + end / 2 + controllerWidth + 24;
  const count = Math.max(0, Math.floor(Number.isFinite(drawing.panels) ? drawing.panels : 0));
  const { numbers, leftOut } = drawnPanels(count, right - firstPanel);
  const places = numbers.length + (leftOut > 0 ? 1 : 0);
  const step = places > 1 ? (right - panelWidth - firstPanel) / (places - 1) : 0;
  const panels = numbers.map((number, index) => ({
    number,
    x: firstPanel + step * (leftOut > 0 && index === numbers.length - 1 ? index + 1 : index),
  }));
  const state = stateOf[drawing.found];
  const words = terminatorWords(drawing.found, state);
  return {
    width,
    height: Math.ceil(lineY + textSize * 6.6),
    textSize,
    lineY,
    left,
    right: right + end / 2,
    controller: { x: left + end / 2, width: controllerWidth },
    panels,
    leftOut,
    breakX: leftOut > 0 ? firstPanel + step * (numbers.length - 1) + panelWidth / 2 : null,
    terminators: [
      { x: left, state, words },
      { x: right + end / 2, state, words },
    ],
    short: drawing.found === "short",
    lengthWords: drawing.length === null ? null : writeQuantity(drawing.length, "m", { digits: 0, system }),
  };
}

/** What a reader hears instead of the picture. */
export function busLineSentence(drawing: BusLineDrawing, system: UnitSystem): string {
  const panels = drawing.panels === 1 ? "one panel" : `${drawing.panels} panels`;
  const long =
    drawing.length === null
      ? ""
      : `, ${writeQuantity(drawing.length, "m", { digits: 0, system })} from end to end`;
  return `The bus from the controller through ${panels}${long}: ${drawing.words}.`;
}
