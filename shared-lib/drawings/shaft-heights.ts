import type { ShaftLanding, ShaftSectionLift } from "./shaft-section.ts";
import { landingsByLevel } from "./shaft-section.ts";

/** Where a blind run is cut: the levels between the break lines are drawn squeezed into `band` pixels. */
export interface ShaftBreak {
  readonly fromLevel: number;
  readonly toLevel: number;
  readonly fromY: number;
  readonly toY: number;
  /** The whole run from sill to sill, in metres: what is written at the break. */
  readonly runMetres: number;
}

export interface ShaftHeights {
  /** Landings from the lowest up, as drawn. */
  readonly landings: readonly ShaftLanding[];
  readonly pixelsPerMetre: number;
  readonly pitFloorLevel: number;
  readonly roofLevel: number;
  readonly pitFloorY: number;
  readonly roofY: number;
  readonly breaks: readonly ShaftBreak[];
  readonly yOf: (levelMetres: number) => number;
  readonly levelOf: (y: number) => number;
}

export interface HeightOptions {
  /** Pixels from the top of the picture to the underside of the well's roof. */
  readonly roofY: number;
  /** Pixels that one screen gives to the well, roof to pit floor. */
  readonly availableHeight: number;
  /** Least pixels between the rows of the table: 44, more with large text. */
  readonly rowHeight: number;
  /** A fixed scale, as on paper; left out, the scale is chosen. */
  readonly fixedPixelsPerMetre?: number;
}

/** What is drawn, without a dimension, where pit depth or headroom is not recorded. */
const pitAsDrawnMetres = 1.2;
const headroomAsDrawnMetres = 3.4;
/** A taller scale makes the car absurd on a lift of two landings. */
const largestPixelsPerMetre = 46;
/** Gaps below an ordinary storey (half landings, front and rear sills apart) do not set the scale; their rows step aside. */
const leastStoreyMetres = 2;
const highestStoreyMetres = 5;
const storeyAsDrawnMetres = 3;
/** Look: a run of more than six landings' height is cut, and any long one when the section exceeds 1.5 screens. */
const longRunStoreys = 6;
const blindRunStoreys = 2;
const screensAllowed = 1.5;
const breakBand = 16;
const keptRows = 1.5;

interface Gap {
  readonly from: number;
  readonly to: number;
}

export function shaftHeights(lift: ShaftSectionLift, options: HeightOptions): ShaftHeights {
  const landings = landingsByLevel(lift);
  const lowest = landings[0]?.levelMetres ?? 0;
  const highest = landings.at(-1)?.levelMetres ?? lowest;
  const pitFloorLevel = lowest - usableLength(lift.pitDepthMetres, pitAsDrawnMetres);
  const roofLevel = highest + usableLength(lift.headroomMetres, headroomAsDrawnMetres);
  const gaps = landings
    .slice(1)
    .map((landing, index) => ({ from: landings[index]?.levelMetres ?? lowest, to: landing.levelMetres }));
  const storey = typicalStorey(gaps);
  const scale = options.fixedPixelsPerMetre ?? chosenScale(gaps, roofLevel - pitFloorLevel, options);
  // Paper does not scroll: there one sheet is the limit.
  const allowed = options.availableHeight * (options.fixedPixelsPerMetre === undefined ? screensAllowed : 1);
  // A cut that saves less than it takes is none.
  const cut = gapsToCut(gaps, storey, scale * (roofLevel - pitFloorLevel) > allowed).filter(
    (gap) => (gap.to - gap.from) * scale > 2 * keptRows * options.rowHeight + 2 * breakBand,
  );
  const knots = heightKnots({
    cut,
    roofLevel,
    pitFloorLevel,
    scale,
    roofY: options.roofY,
    rowHeight: options.rowHeight,
  });
  const yOf = (level: number) => interpolate(knots.points, "level", "y", level, -scale);
  const levelOf = (y: number) => interpolate(knots.points, "y", "level", y, -1 / scale);
  return {
    landings,
    pixelsPerMetre: scale,
    pitFloorLevel,
    roofLevel,
    pitFloorY: yOf(pitFloorLevel),
    roofY: options.roofY,
    breaks: knots.breaks,
    yOf,
    levelOf,
  };
}

function usableLength(value: number | null, asDrawn: number): number {
  return value !== null && Number.isFinite(value) && value > 0 ? value : asDrawn;
}

/** The median height of the ordinary storeys: what "one landing's height" means for this lift. */
function typicalStorey(gaps: readonly Gap[]): number {
  const ordinary = gaps
    .map((gap) => gap.to - gap.from)
    .filter((height) => height >= leastStoreyMetres && height <= highestStoreyMetres)
    .sort((a, b) => a - b);
  return ordinary[Math.floor(ordinary.length / 2)] ?? storeyAsDrawnMetres;
}

function chosenScale(gaps: readonly Gap[], wellMetres: number, options: HeightOptions): number {
  const heights = gaps.map((gap) => gap.to - gap.from).filter((height) => height >= leastStoreyMetres);
  const rowsApart = heights.length > 0 ? options.rowHeight / Math.min(...heights) : 0;
  const filling = options.availableHeight / wellMetres;
  return Math.max(rowsApart, Math.min(filling, largestPixelsPerMetre));
}

function gapsToCut(gaps: readonly Gap[], storey: number, tooTall: boolean): Gap[] {
  const limit = storey * (tooTall ? blindRunStoreys : longRunStoreys);
  return gaps.filter((gap) => gap.to - gap.from > limit);
}

interface Knot {
  readonly level: number;
  readonly y: number;
}

interface KnotInput {
  readonly cut: readonly Gap[];
  readonly roofLevel: number;
  readonly pitFloorLevel: number;
  readonly scale: number;
  readonly roofY: number;
  readonly rowHeight: number;
}

/** Fixed points of the height axis from the roof down: straight runs to scale, cut runs squeezed in their middle. */
function heightKnots(input: KnotInput): { points: Knot[]; breaks: ShaftBreak[] } {
  const points: Knot[] = [{ level: input.roofLevel, y: input.roofY }];
  const breaks: ShaftBreak[] = [];
  const goTo = (level: number): Knot => {
    const last = points.at(-1) ?? { level: input.roofLevel, y: input.roofY };
    const next = { level, y: last.y + (last.level - level) * input.scale };
    points.push(next);
    return next;
  };
  for (const gap of [...input.cut].reverse()) {
    // A row and a half stays drawn at either side, so that the words of the rows never meet the break.
    const kept = (input.rowHeight * keptRows) / input.scale;
    const start = goTo(gap.to - kept);
    const end = { level: gap.from + kept, y: start.y + breakBand };
    points.push(end);
    breaks.push({
      fromLevel: end.level,
      toLevel: start.level,
      fromY: end.y,
      toY: start.y,
      runMetres: gap.to - gap.from,
    });
  }
  goTo(input.pitFloorLevel);
  return { points, breaks };
}

function interpolate(
  points: readonly Knot[],
  from: keyof Knot,
  to: keyof Knot,
  value: number,
  slope: number,
): number {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return 0;
  const rising = last[from] > first[from];
  const before = (a: number, b: number) => (rising ? a < b : a > b);
  if (before(value, first[from])) return first[to] + (value - first[from]) * slope;
  for (const [index, knot] of points.entries()) {
    const next = points[index + 1];
    if (!next || before(next[from], value)) continue;
    const span = next[from] - knot[from];
    return span === 0 ? knot[to] : knot[to] + ((value - knot[from]) / span) * (next[to] - knot[to]);
  }
  return last[to] + (value - last[from]) * slope;
}

const paperRatios = [50, 100, 200, 500] as const;
const pixelsPerMetreAtFullSize = 96 / 0.0254;

/** The well at the largest of the usual drawing scales that the paper holds, blind runs cut where that helps. */
export function paperHeights(
  lift: ShaftSectionLift,
  options: Omit<HeightOptions, "fixedPixelsPerMetre">,
): ShaftHeights {
  const drawn = paperRatios.map((ratio) =>
    shaftHeights(lift, { ...options, fixedPixelsPerMetre: pixelsPerMetreAtFullSize / ratio }),
  );
  const fitting = drawn.find((heights) => heights.pitFloorY - heights.roofY <= options.availableHeight);
  return fitting ?? shaftHeights(lift, { ...options, fixedPixelsPerMetre: pixelsPerMetreAtFullSize / 500 });
}
