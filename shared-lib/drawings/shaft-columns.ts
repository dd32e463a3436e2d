import type { ShaftLanding } from "./shaft-section.ts";
import { letteringWidth } from "./text-width.ts";

/** Where things stand across the picture, in pixels from its left edge. */
export interface ShaftColumns {
  readonly width: number;
  readonly textSize: number;
  /** Levels and names of switches end here. */
  readonly labelEnd: number;
  readonly dimensionLine: number;
  readonly wallThickness: number;
  /** Inner faces of the two walls. */
  readonly wellLeft: number;
  readonly wellRight: number;
  readonly hasRear: boolean;
  readonly rail: number;
  readonly magnet: number;
  readonly counterweight: { readonly left: number; readonly right: number };
  readonly car: { readonly left: number; readonly right: number };
  /** Where ropes or ram carry the car. */
  readonly carRope: number;
  readonly panel: number;
  readonly rearPanel: number;
  /** End of the heavy sill line outside the well. */
  readonly sillEnd: number;
  readonly rearSillEnd: number;
  readonly marking: number;
  readonly name: number;
  readonly nameRoom: number;
  readonly zoneSignals: number;
  readonly landingPanel: number;
  readonly right: number;
}

/** Names longer than this many text sizes are shortened in the row; the row's accessible name has all of it. */
const longestName = 11;
const wall = 10;
const plainStub = 34;
const stateMark = 26;

export const headWords = {
  landing: "Landing",
  zoneSignals: "Zone signals",
  landingPanel: "Landing panel",
} as const;

function widest(words: readonly string[], textSize: number, bold = false): number {
  return Math.max(0, ...words.map((word) => letteringWidth(word, textSize, bold)));
}

/** Size of a landing's marking: 22 where the label size is 14. */
export function markingSize(textSize: number): number {
  return (textSize * 22) / 14;
}

export function shaftColumns(
  landings: readonly ShaftLanding[],
  labels: readonly string[],
  given: number,
  textSize: number,
): ShaftColumns {
  const hasRear = landings.some((landing) => landing.entrances !== "front");
  const rearStub = hasRear ? plainStub : 0;
  const labelEnd = Math.ceil(widest(labels, textSize)) + 2;
  const gap = textSize * 0.85;
  const markingWidth = Math.max(
    textSize,
    widest(
      landings.map((l) => l.marking),
      markingSize(textSize),
      true,
    ),
  );
  const nameWidth = Math.min(
    longestName * textSize,
    widest(
      landings.map((l) => l.name),
      textSize,
    ),
  );
  const stateWidth = stateMark + widest(["unchecked", "passed"], textSize, true);
  const landingWidth = Math.max(
    letteringWidth(headWords.landing, textSize),
    markingWidth + (nameWidth > 0 ? 6 + nameWidth : 0),
  );
  const zoneWidth = Math.max(letteringWidth(headWords.zoneSignals, textSize), stateWidth);
  const panelWidth = Math.max(letteringWidth(headWords.landingPanel, textSize), stateWidth);
  const beside = labelEnd + 10 + 12 + rearStub + 2 * wall + plainStub;
  const table = landingWidth + zoneWidth + panelWidth + 2 * gap;
  const spare = given - beside - table;
  const well = Math.min(hasRear ? 168 : 150, Math.max(hasRear ? 144 : 132, spare));
  const extra = Math.max(0, spare - well);
  const tableGap = gap + Math.min(24, extra / 4);
  const wellLeft = labelEnd + 10 + 12 + rearStub + wall;
  const wellRight = wellLeft + well;
  const marking = wellRight + wall + plainStub - 6;
  const zoneSignals = marking + landingWidth + tableGap;
  const landingPanel = zoneSignals + zoneWidth + tableGap;
  const width = Math.ceil(Math.max(given, landingPanel + panelWidth));
  return {
    width,
    textSize,
    labelEnd,
    dimensionLine: labelEnd + 10,
    wallThickness: wall,
    wellLeft,
    wellRight,
    hasRear,
    ...insideWell(wellLeft, wellRight, hasRear),
    panel: wellRight + wall + 8,
    rearPanel: wellLeft - wall - 13,
    sillEnd: wellRight + plainStub - 4,
    rearSillEnd: wellLeft - plainStub + 4,
    marking,
    name: marking + markingWidth + 6,
    nameRoom: landingWidth - markingWidth - 6,
    zoneSignals,
    landingPanel,
    right: Math.min(width, landingPanel + panelWidth + tableGap),
  };
}

/** One entrance side: rail, counterweight, car from the back wall to the front. Two sides: the car fills the well. */
function insideWell(wellLeft: number, wellRight: number, hasRear: boolean) {
  if (!hasRear) {
    return {
      rail: wellLeft + 7,
      magnet: wellLeft + 12,
      counterweight: { left: wellLeft + 29, right: wellLeft + 46 },
      car: { left: wellLeft + 53, right: wellRight - 12 },
      carRope: (wellLeft + 53 + wellRight - 12) / 2,
    };
  }
  const carLeft = wellLeft + 12;
  return {
    rail: carLeft + 14,
    magnet: carLeft + 19,
    counterweight: { left: carLeft + 34, right: carLeft + 52 },
    car: { left: carLeft, right: wellRight - 12 },
    carRope: carLeft + (wellRight - 12 - carLeft) * 0.72,
  };
}
