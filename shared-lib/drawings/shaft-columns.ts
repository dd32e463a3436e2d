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
/** A name with less room than this says nothing any more and is left out. */
const shortestName = 3;
const wall = 10;
const plainStub = 34;
const rearStub = 28;
/** A state's mark is 20 wide at a label size of 14 and grows with the text. */
export function stateMarkSize(textSize: number): number {
  return (20 * textSize) / 14;
}

export function stateWordOffset(textSize: number): number {
  return stateMarkSize(textSize) + 6;
}

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

interface TableWidths {
  readonly marking: number;
  readonly name: number;
  readonly landing: number;
  readonly zone: number;
  readonly panel: number;
}

/** Widths of the table's columns; names are shortened first where the picture gets too little width. */
function tableWidths(landings: readonly ShaftLanding[], textSize: number, room: number): TableWidths {
  const markings = landings.map((landing) => landing.marking);
  const names = landings.map((landing) => landing.name);
  const marking = Math.max(textSize, widest(markings, markingSize(textSize), true));
  const wanted = Math.min(longestName * textSize, widest(names, textSize));
  const state = stateWordOffset(textSize) + widest(["unchecked", "passed", "failed"], textSize);
  const zone = Math.max(letteringWidth(headWords.zoneSignals, textSize), state);
  const panel = Math.max(letteringWidth(headWords.landingPanel, textSize), state);
  const left = Math.min(wanted, room - zone - panel - marking - 6);
  const name = left < Math.min(wanted, shortestName * textSize) ? 0 : left;
  const landing = Math.max(letteringWidth(headWords.landing, textSize), marking + (name > 0 ? 6 + name : 0));
  return { marking, name, landing, zone, panel };
}

export function shaftColumns(
  landings: readonly ShaftLanding[],
  labels: readonly string[],
  given: number,
  textSize: number,
): ShaftColumns {
  const hasRear = landings.some((landing) => landing.entrances !== "front");
  const labelEnd = Math.ceil(widest(labels, textSize)) + 2;
  const wellLeft = labelEnd + 10 + 12 + (hasRear ? rearStub : 0) + wall;
  const narrowest = hasRear ? 132 : 126;
  const tightGap = textSize * 0.6;
  const tableRoom = given - wellLeft - narrowest - wall - plainStub + 6 - 2 * tightGap;
  const table = tableWidths(landings, textSize, tableRoom);
  const spare = Math.max(0, tableRoom - table.landing - table.zone - table.panel);
  const well = narrowest + Math.min(30, spare * 0.6);
  const tableGap = tightGap + Math.min(20, (spare - (well - narrowest)) / 3);
  const wellRight = wellLeft + well;
  const marking = wellRight + wall + plainStub - 6;
  const zoneSignals = marking + table.landing + tableGap;
  const landingPanel = zoneSignals + table.zone + tableGap;
  const width = Math.ceil(Math.max(given, landingPanel + table.panel));
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
    rearSillEnd: wellLeft - wall - rearStub + 8,
    marking,
    name: marking + table.marking + 6,
    nameRoom: table.name,
    zoneSignals,
    landingPanel,
    right: Math.min(width, landingPanel + table.panel + tableGap),
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
