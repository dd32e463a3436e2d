import type { Box } from "./drawing-paths.ts";
import type { Obstacle } from "./place-beside.ts";
import type { ShaftColumns } from "./shaft-columns.ts";
import { shaftColumns } from "./shaft-columns.ts";
import type { ShaftHeights } from "./shaft-heights.ts";
import { paperHeights, shaftHeights } from "./shaft-heights.ts";
import type { ShaftLabel } from "./shaft-labels.ts";
import { labelWords, shaftLabels } from "./shaft-labels.ts";
import type { PlacedMark } from "./shaft-marks.ts";
import { placeMarks } from "./shaft-marks.ts";
import type { PartTarget } from "./shaft-parts.ts";
import { partTargets } from "./shaft-parts.ts";
import type { ShaftLanding, ShaftMark, ShaftSectionLift, ShaftSwitch } from "./shaft-section.ts";
import { landingsByLevel, switchLevels } from "./shaft-section.ts";
import {
  carAsDrawnMetres,
  cylinderBelow,
  machineAbove,
  machineIsAbove,
  shaftSuspension,
} from "./shaft-suspension.ts";
import type { ShaftWalls } from "./shaft-walls.ts";
import { shaftWalls } from "./shaft-walls.ts";
import { spreadLabels } from "./spread-labels.ts";

export interface ShaftLayoutOptions {
  /** Pixels the picture gets; it becomes wider, never its lettering smaller, where that is too little. */
  readonly width: number;
  /** Pixels of the label text size (14 at the usual setting). */
  readonly textSize: number;
  /** Pixels of one screen for the whole picture. */
  readonly availableHeight: number;
  readonly marks: readonly ShaftMark[];
  /** Where the car stood when the drawing was opened: triangles keep clear of it. They stay when it moves. */
  readonly parkedLevelMetres?: number;
  /** For paper: true scale, rows may stand closer because nobody presses them. */
  readonly print?: boolean;
}

export interface LandingRow {
  readonly landing: ShaftLanding;
  readonly sillY: number;
  /** The line that the row's words stand on; the sill's own height where rows need not step aside. */
  readonly baseY: number;
  readonly height: number;
}

export interface ShaftLayout {
  readonly width: number;
  readonly height: number;
  readonly heights: ShaftHeights;
  readonly columns: ShaftColumns;
  readonly walls: ShaftWalls;
  readonly labels: readonly ShaftLabel[];
  readonly rows: readonly LandingRow[];
  readonly headBaseline: number;
  readonly switches: readonly { readonly switch: ShaftSwitch; readonly y: number }[];
  readonly marks: readonly PlacedMark[];
  readonly parts: readonly PartTarget[];
  readonly scaleBar: {
    readonly metres: number;
    readonly from: number;
    readonly to: number;
    readonly y: number;
  };
  /** 1 : ratio, on paper only. */
  readonly paperRatio: number | null;
  /** Above this many landings the section scrolls, with the whole well beside it. */
  readonly scrolls: boolean;
}

/** More landings than this are shown in a frame that scrolls, with the whole well beside it. */
export const scrollAbove = 24;
const slab = 10;
const topMargin = 6;

export function shaftLayout(lift: ShaftSectionLift, options: ShaftLayoutOptions): ShaftLayout {
  const { textSize } = options;
  const rowHeight = options.print ? textSize * 1.7 : Math.max(44, Math.ceil(textSize * 2.6));
  const headBaseline = topMargin + textSize + 2;
  const heights = roomyHeights(lift, options, rowHeight, headBaseline);
  const columns = shaftColumns(heights.landings, labelWords(lift, heights), options.width, textSize);
  const walls = shaftWalls(heights, columns);
  const labels = shaftLabels(lift, heights, columns);
  const rows = landingRows(heights, rowHeight, headBaseline + 6);
  const bottom = heights.pitFloorY + slab + (needsGround(lift) ? cylinderBelow : 0);
  const lastLabel = Math.max(0, ...labels.map((label) => label.box.y + label.box.height));
  const lastRow = Math.max(0, ...rows.map((row) => row.baseY));
  const firstRowTop = Math.min(...rows.map((row) => row.baseY - row.height));
  const scaleBar = scaleBarAt(heights, columns, Math.max(heights.pitFloorY + 2, lastRow + textSize * 1.6));
  const height = Math.ceil(Math.max(bottom, lastLabel, scaleBar.y + textSize) + 4);
  const parked = options.parkedLevelMetres ?? heights.landings[0]?.levelMetres ?? 0;
  const suspension = shaftSuspension(lift, heights, columns, parked);
  const marks = placeMarks(options.marks, {
    lift,
    heights,
    columns,
    entrances: walls.entrances,
    machineBox: suspension.machineBox,
    obstacles: [
      ...markObstacles(columns, labels, rows, heights),
      ...bodies(suspension.counterweight, heights, columns, parked),
    ],
    within: { x: 2, y: 2, width: columns.width - 4, height: height - 4 },
  });
  const switches = switchLevels(lift).map((entry) => ({
    switch: entry.switch,
    y: heights.yOf(entry.levelMetres),
  }));
  return {
    width: columns.width,
    height,
    heights,
    columns,
    walls,
    labels,
    rows,
    headBaseline: rows.length > 0 ? Math.max(headBaseline, firstRowTop - textSize) : headBaseline,
    switches,
    marks,
    parts: partTargets(lift, labels, suspension.machineBox),
    scaleBar,
    paperRatio: options.print ? Math.round(96 / 0.0254 / heights.pixelsPerMetre) : null,
    scrolls: !options.print && heights.landings.length > scrollAbove,
  };
}

function needsGround(lift: ShaftSectionLift): boolean {
  return lift.driveKind === "hydraulic" && lift.roping === "1:1";
}

/** The well moves down until the first row's words stand clear of the table's head. */
function roomyHeights(
  lift: ShaftSectionLift,
  options: ShaftLayoutOptions,
  rowHeight: number,
  headBaseline: number,
): ShaftHeights {
  const roofY = topMargin + slab + (machineIsAbove(lift) ? machineAbove : 0);
  const available = Math.max(200, options.availableHeight - roofY - slab - options.textSize);
  const drawAt = (top: number) => {
    const given = { roofY: top, availableHeight: available, rowHeight };
    return options.print ? paperHeights(lift, given) : shaftHeights(lift, given);
  };
  const first = drawAt(roofY);
  const highest = landingsByLevel(lift).at(-1)?.levelMetres ?? 0;
  const missing = headBaseline + 8 + rowHeight - first.yOf(highest);
  return missing > 0 ? drawAt(roofY + missing) : first;
}

/** Rows stand on their sills; where sills are nearer than a row is high, rows step aside and a leader joins them. */
function landingRows(heights: ShaftHeights, rowHeight: number, from: number): LandingRow[] {
  const sills = heights.landings.map((landing) => heights.yOf(landing.levelMetres));
  const places = spreadLabels(
    sills.map((y) => ({ anchor: y - rowHeight / 2, extent: rowHeight })),
    from,
    Number.POSITIVE_INFINITY,
  );
  return heights.landings.map((landing, index) => ({
    landing,
    sillY: sills[index] ?? 0,
    baseY: (places[index] ?? 0) + rowHeight / 2,
    height: rowHeight,
  }));
}

function scaleBarAt(heights: ShaftHeights, columns: ShaftColumns, y: number): ShaftLayout["scaleBar"] {
  const room = Math.min(110, columns.right - columns.marking - columns.textSize * 9);
  const metres = [50, 20, 10, 5, 2, 1].find((length) => length * heights.pixelsPerMetre <= room) ?? 1;
  return { metres, from: columns.marking, to: columns.marking + metres * heights.pixelsPerMetre, y };
}

function bodies(
  counterweight: Box | null,
  heights: ShaftHeights,
  columns: ShaftColumns,
  level: number,
): Obstacle[] {
  const { left, right } = columns.car;
  const height = carAsDrawnMetres * heights.pixelsPerMetre + 8;
  const car = { x: left - 2, y: heights.yOf(level) - height, width: right - left + 4, height: height + 4 };
  // The words in the middle of the car say where it is: a triangle goes elsewhere before it covers them.
  const words = { ...car, y: car.y + car.height / 2 - columns.textSize, height: columns.textSize * 2 };
  return [
    ...[car, ...(counterweight ? [counterweight] : [])].map((box) => ({ box, weight: 2 })),
    { box: words, weight: 8 },
  ];
}

function markObstacles(
  columns: ShaftColumns,
  labels: readonly ShaftLabel[],
  rows: readonly LandingRow[],
  heights: ShaftHeights,
): Obstacle[] {
  const strips: Box[] = [
    {
      x: columns.rail - 4,
      y: heights.roofY,
      width: columns.magnet - columns.rail + 12,
      height: heights.pitFloorY - heights.roofY,
    },
    {
      x: columns.wellRight,
      y: heights.roofY,
      width: columns.sillEnd - columns.wellRight,
      height: heights.pitFloorY - heights.roofY,
    },
    {
      x: columns.wellLeft - columns.wallThickness,
      y: heights.roofY,
      width: columns.wallThickness + 2,
      height: heights.pitFloorY - heights.roofY,
    },
  ];
  return [
    ...strips.map((box) => ({ box, weight: 1 })),
    ...labels.map((label) => ({ box: label.box, weight: 6 })),
    ...rows.map((row) => ({
      box: {
        x: columns.marking - 4,
        y: row.baseY - row.height,
        width: columns.right - columns.marking,
        height: row.height,
      },
      weight: 6,
    })),
  ];
}

/** What a screen reader hears first: the picture in a sentence, its marks after it. */
export function shaftSentence(lift: ShaftSectionLift, marks: readonly ShaftMark[]): string {
  const count = landingsByLevel(lift).length;
  const drive = lift.driveKind === "hydraulic" ? hydraulicWords(lift) : tractionWords(lift);
  const said = [...marks]
    .sort((a, b) => a.number - b.number)
    .map((mark) => ` Marked ${mark.number}: ${mark.words}`);
  const sentence = `Shaft section with ${count === 1 ? "one landing" : `${count} landings`}. ${drive}`;
  return [sentence, ...said.map((words) => (/[.!?]$/.test(words) ? words : `${words}.`))].join("");
}

function tractionWords(lift: ShaftSectionLift): string {
  const kind =
    lift.driveKind === "machine-room-less"
      ? "Machine in the well"
      : `Machine above the well, ${lift.driveKind}`;
  if (lift.roping === "2:1")
    return `${kind}. Roped 2:1, rope ends fixed at the top, one pulley on the car and one on the counterweight.`;
  if (lift.roping === "1:1") return `${kind}. Roped 1:1.`;
  if (lift.roping === "4:1") return `${kind}. Roped 4:1, ropes not drawn.`;
  return `${kind}. Roping not recorded.`;
}

function hydraulicWords(lift: ShaftSectionLift): string {
  if (lift.roping === "1:1") return "Hydraulic, ram directly under the car.";
  if (lift.roping === "2:1") return "Hydraulic, ram beside the car with a pulley, roped 2:1.";
  return "Hydraulic. How the ram carries the car is not recorded.";
}
