import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import { type UnitSystem, writeQuantity } from "#shared-lib/quantities.ts";
import type { FigureTable } from "./drawing-table.ts";

export type GrooveDrawing = Extract<Drawing, { kind: "groove" }>;

interface Point {
  readonly x: number;
  readonly y: number;
}

export interface GroovePicture {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly middle: Point;
  readonly radius: number;
  /** The metal of the sheave, closed. */
  readonly body: string;
  /** The groove's own line, left rim to right rim. */
  readonly outline: string;
  /** Where the rope bears, one path a side. */
  readonly contact: string;
  readonly undercut: { readonly path: string; readonly words: string; readonly at: Point } | null;
  readonly flanks: { readonly path: string; readonly words: string; readonly at: Point };
  readonly rope: string | null;
}

/** Angles from the bottom of the groove, rad: where the rope begins and ends to bear on each side. */
export function contactAngles({ form, gamma, beta }: GrooveDrawing): {
  readonly from: number;
  readonly to: number;
} {
  const to = (Math.PI - gamma) / 2;
  // A V groove that is not worn touches the rope on one line of each flank.
  return form === "round" ? { from: Math.min(beta / 2, to), to } : { from: to, to };
}

const least = 360;

const written = ({ x, y }: Point): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** A place on the rope, by its angle from the bottom; `side` -1 left, 1 right. */
const onRope = (middle: Point, radius: number, angle: number, side: number): Point => ({
  x: middle.x + side * radius * Math.sin(angle),
  y: middle.y + radius * Math.cos(angle),
});

interface Line {
  readonly left: readonly Point[];
  readonly right: readonly Point[];
}

const arcSteps = 24;

/** Both sides of the groove from the rim down to its bottom. */
function sidesOf(drawing: GrooveDrawing, middle: Point, radius: number, top: number): Line {
  const { from, to } = contactAngles(drawing);
  const half = drawing.gamma / 2;
  const side = (sign: number): Point[] => {
    const touch = onRope(middle, radius, to, sign);
    const rim = { x: touch.x + sign * Math.tan(half) * (touch.y - top), y: top };
    if (drawing.form === "round") {
      const arc = Array.from({ length: arcSteps + 1 }, (_, index) =>
        onRope(middle, radius, to + ((from - to) * index) / arcSteps, sign),
      );
      const end = arc.at(-1) ?? touch;
      return drawing.beta > 0 ? [rim, ...arc, { x: end.x, y: middle.y + radius * 1.45 }] : [rim, ...arc];
    }
    // The flank goes on under the rope, down to the slot or to the bottom of the V.
    const deepest = middle.y + radius / Math.sin(half);
    const slot = radius * Math.sin(drawing.beta / 2);
    const bottom = Math.min(deepest, middle.y + radius * 1.7);
    const wide = Math.max(slot, Math.tan(half) * (deepest - bottom));
    const turn = Math.min(bottom, deepest - wide / Math.tan(half));
    return [rim, touch, { x: middle.x + sign * wide, y: turn }, { x: middle.x + sign * wide, y: bottom }];
  };
  return { left: side(-1), right: side(1) };
}

const joined = (points: readonly Point[]): string => points.map(written).join("L");

function contactPath(drawing: GrooveDrawing, middle: Point, radius: number): string {
  const { from, to } = contactAngles(drawing);
  // A line contact is shown over a few degrees, so that it can be seen.
  const seen = drawing.form === "round" ? from : to - 0.12;
  const until = drawing.form === "round" ? to : to + 0.12;
  return [-1, 1]
    .map((sign) => {
      const points = Array.from({ length: arcSteps + 1 }, (_, index) =>
        onRope(middle, radius, seen + ((until - seen) * index) / arcSteps, sign),
      );
      return `M${joined(points)}`;
    })
    .join("");
}

function undercutOf(drawing: GrooveDrawing, middle: Point, radius: number): GroovePicture["undercut"] {
  if (!(drawing.beta > 0)) return null;
  const edge = (sign: number): Point => onRope(middle, radius, drawing.beta / 2, sign);
  const small = radius * 0.42;
  const start = onRope(middle, small, drawing.beta / 2, -1);
  const end = onRope(middle, small, drawing.beta / 2, 1);
  const arc = `M${written(start)}A${small.toFixed(1)} ${small.toFixed(1)} 0 0 0 ${written(end)}`;
  return {
    path: `M${written(edge(-1))}L${written(middle)}L${written(edge(1))}${arc}`,
    words: `β ${writeQuantity(drawing.beta, "°", { digits: 1 })}`,
    at: { x: middle.x, y: middle.y - radius * 0.12 },
  };
}

/** The two flanks carried on upwards as thin lines, and the angle between them over the sheave. */
function flanksOf(
  drawing: GrooveDrawing,
  middle: Point,
  radius: number,
  sides: Line,
): GroovePicture["flanks"] {
  const half = drawing.gamma / 2;
  const apex = middle.y + radius / Math.sin(half);
  const rim = sides.right[0] ?? middle;
  const reach = (apex - rim.y) / Math.cos(half) + radius * 0.55;
  const at = (sign: number, far: number): Point => ({
    x: middle.x + sign * far * Math.sin(half),
    y: apex - far * Math.cos(half),
  });
  const near = reach - radius * 0.2;
  const round = near.toFixed(1);
  const [left, right] = [sides.left[0] ?? middle, rim];
  const carried = `M${written(left)}L${written(at(-1, reach))}M${written(right)}L${written(at(1, reach))}`;
  return {
    path: `${carried}M${written(at(-1, near))}A${round} ${round} 0 0 1 ${written(at(1, near))}`,
    words: `γ ${writeQuantity(drawing.gamma, "°", { digits: 1 })}`,
    at: { x: middle.x, y: apex - near - 6 },
  };
}

/** Section of one groove with its rope, angles to scale. */
export function groovePicture(
  drawing: GrooveDrawing,
  given: number,
  textSize: number,
  system: UnitSystem,
): GroovePicture {
  const width = Math.max(least, given);
  const radius = Math.max(56, Math.min(96, width / 7));
  const middle = { x: width / 2, y: textSize * 3 + radius * 1.75 };
  const top = middle.y - radius * 0.55;
  const sides = sidesOf(drawing, middle, radius, top);
  const outline = [...sides.left, ...[...sides.right].reverse()];
  const bottom = middle.y + radius * 2.3;
  const reach = Math.min(width / 2 - 12, radius * 2.6);
  const [left, right] = [middle.x - reach, middle.x + reach];
  const around = `M${left.toFixed(1)} ${top.toFixed(1)}L${joined(outline)}L${right.toFixed(1)} ${top.toFixed(1)}`;
  return {
    width,
    height: Math.ceil(bottom + 8),
    textSize,
    middle,
    radius,
    body: `${around}V${bottom.toFixed(1)}H${left.toFixed(1)}Z`,
    outline: around,
    contact: contactPath(drawing, middle, radius),
    undercut: undercutOf(drawing, middle, radius),
    flanks: flanksOf(drawing, middle, radius, sides),
    rope:
      drawing.ropeDiameter === null
        ? null
        : `rope ${writeQuantity(drawing.ropeDiameter, "mm", { digits: 1, system })}`,
  };
}

const formWords = { round: "a round groove", wedge: "a V groove", "hardened wedge": "a hardened V groove" };

/** What a reader hears instead of the picture. */
export function grooveSentence(drawing: GrooveDrawing): string {
  const undercut =
    drawing.beta > 0
      ? `undercut over ${writeQuantity(drawing.beta, "°", { digits: 1 })}`
      : "without undercut";
  return `A rope in ${formWords[drawing.form]}, ${undercut}, its flanks at ${writeQuantity(drawing.gamma, "°", { digits: 1 })}.`;
}

export function grooveTable(drawing: GrooveDrawing): FigureTable {
  const write = (angle: number): string => writeQuantity(angle, "°", { digits: 1 });
  const { from, to } = contactAngles(drawing);
  return {
    heads: ["Angle", "Value"],
    rows: [
      ["γ, between the flanks", write(drawing.gamma)],
      ["β, undercut", write(drawing.beta)],
      ["contact begins, from the bottom", write(from)],
      ["contact ends, from the bottom", write(to)],
    ],
  };
}
