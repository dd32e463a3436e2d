import type { Box } from "./drawing-paths.ts";
import type { ShaftColumns } from "./shaft-columns.ts";
import type { ShaftHeights } from "./shaft-heights.ts";
import type { ShaftLanding } from "./shaft-section.ts";

/** Clear height of a landing door as drawn (not recorded on a lift; 2.1 m is only how the picture is made). */
const doorAsDrawnMetres = 2.1;
/** A lintel at least this high stays between a door and the sill above, so that the wall can be seen. */
const leastLintelMetres = 0.25;

export interface Entrance {
  readonly landingId: string;
  readonly side: "front" | "rear";
  readonly sillY: number;
  readonly lintelY: number;
}

/** Push buttons stand about 1.05 m above the landing; the panel is drawn there, to scale. */
const panelAsDrawnMetres = { middle: 1.05, height: 0.42 };

export function landingPanelBox(
  columns: ShaftColumns,
  entrance: Pick<Entrance, "side" | "sillY">,
  pixelsPerMetre: number,
): Box {
  const height = Math.min(12, panelAsDrawnMetres.height * pixelsPerMetre);
  const middle = entrance.sillY - panelAsDrawnMetres.middle * pixelsPerMetre;
  return {
    x: entrance.side === "front" ? columns.panel : columns.rearPanel,
    y: middle - height / 2,
    width: 5,
    height,
  };
}

export interface ShaftWalls {
  /** Everything that is cut and so hatched. */
  readonly hatched: readonly Box[];
  /** Faces of walls that have doors in them: seen lines. */
  readonly faces: readonly { readonly x: number; readonly top: number; readonly bottom: number }[];
  readonly entrances: readonly Entrance[];
  readonly rearIsWall: boolean;
}

export function shaftWalls(heights: ShaftHeights, columns: ShaftColumns): ShaftWalls {
  const entrances = [...entrancesOf(heights, "front"), ...entrancesOf(heights, "rear")];
  const { wellLeft, wellRight, wallThickness: wall } = columns;
  const across = { x: wellLeft - wall, width: wellRight - wellLeft + 2 * wall, height: wall };
  const front = wallPieces(heights, entrances, "front");
  const rear = wallPieces(heights, entrances, "rear");
  const asBox = (x: number, piece: Piece): Box => ({
    x,
    y: piece.top,
    width: wall,
    height: piece.bottom - piece.top,
  });
  const facesAt = (x: number, pieces: readonly Piece[]) => pieces.map((piece) => ({ x, ...piece }));
  const rearIsWall = !entrances.some((entrance) => entrance.side === "rear");
  return {
    hatched: [
      { ...across, y: heights.roofY - wall },
      { ...across, y: heights.pitFloorY },
      ...front.map((piece) => asBox(wellRight, piece)),
      ...rear.map((piece) => asBox(wellLeft - wall, piece)),
    ],
    faces: [
      ...facesAt(wellRight, front),
      ...facesAt(wellRight + wall, front),
      ...(rearIsWall ? [] : [...facesAt(wellLeft, rear), ...facesAt(wellLeft - wall, rear)]),
    ],
    entrances,
    rearIsWall,
  };
}

function hasEntrance(landing: ShaftLanding, side: "front" | "rear"): boolean {
  return landing.entrances === side || landing.entrances === "both";
}

function entrancesOf(heights: ShaftHeights, side: "front" | "rear"): Entrance[] {
  const landings = heights.landings.filter((landing) => hasEntrance(landing, side));
  return landings.map((landing, index) => {
    const next = landings.slice(index + 1).find((above) => above.levelMetres > landing.levelMetres);
    const roof = next ? next.levelMetres - leastLintelMetres : heights.roofLevel;
    const top = Math.max(landing.levelMetres, Math.min(landing.levelMetres + doorAsDrawnMetres, roof));
    return {
      landingId: landing.id,
      side,
      sillY: heights.yOf(landing.levelMetres),
      lintelY: heights.yOf(top),
    };
  });
}

interface Piece {
  readonly top: number;
  readonly bottom: number;
}

/** What is left of a wall between roof and pit floor when its door openings are taken out. */
function wallPieces(heights: ShaftHeights, entrances: readonly Entrance[], side: "front" | "rear"): Piece[] {
  const openings = entrances
    .filter((entrance) => entrance.side === side)
    .sort((a, b) => a.lintelY - b.lintelY);
  const pieces: Piece[] = [];
  let top = heights.roofY;
  for (const opening of openings) {
    if (opening.lintelY > top) pieces.push({ top, bottom: opening.lintelY });
    top = Math.max(top, opening.sillY);
  }
  if (heights.pitFloorY > top) pieces.push({ top, bottom: heights.pitFloorY });
  return pieces;
}
