import type { Box } from "./drawing-paths.ts";
import { boxCentre, boxesOverlap, grownBox, triangleSize, unionBox } from "./drawing-paths.ts";
import type { Obstacle } from "./place-beside.ts";
import { placeBeside } from "./place-beside.ts";
import type { ShaftColumns } from "./shaft-columns.ts";
import type { ShaftHeights } from "./shaft-heights.ts";
import type { ShaftMark, ShaftSectionLift } from "./shaft-section.ts";
import { switchLevels } from "./shaft-section.ts";
import { carAsDrawnMetres } from "./shaft-suspension.ts";
import type { Entrance } from "./shaft-walls.ts";
import { landingPanelBox } from "./shaft-walls.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}

/** One cloud; more than one mark at the same place share it and stand in a row of triangles. */
export interface PlacedMark {
  readonly cloud: Box;
  readonly triangles: readonly { readonly mark: ShaftMark; readonly x: number; readonly y: number }[];
  readonly triangle: Size;
  readonly leader: string;
  /** Drawn in the car's own coordinates (its sill at 0) and moving with it. */
  readonly onCar: boolean;
  /** The invisible square that takes a press; null where two would overlap and the table's row is the target. */
  readonly target: Box | null;
}

export interface MarkSurroundings {
  readonly lift: ShaftSectionLift;
  readonly heights: ShaftHeights;
  readonly columns: ShaftColumns;
  readonly entrances: readonly Entrance[];
  readonly machineBox: Box;
  readonly obstacles: readonly Obstacle[];
  readonly within: Box;
}

const targetSize = 44;

export function placeMarks(marks: readonly ShaftMark[], around: MarkSurroundings): PlacedMark[] {
  const groups = new Map<string, ShaftMark[]>();
  for (const mark of [...marks].sort((a, b) => a.number - b.number)) {
    const key = `${mark.place.part} ${mark.place.landingId ?? ""} ${mark.place.switch ?? ""}`;
    const group = groups.get(key);
    if (group) group.push(mark);
    else groups.set(key, [mark]);
  }
  const triangle = triangleSize(around.columns.textSize);
  const clouds = [...groups.values()].map((group) => ({ group, cloud: cloudBox(group[0], around) }));
  const taken: Obstacle[] = [
    ...around.obstacles,
    ...clouds.map(({ cloud }) => ({ box: grownBox(cloud, 6), weight: 6 })),
  ];
  const placed = clouds.map(({ group, cloud }) => {
    const onCar = group[0]?.place.part === "car";
    const size = { width: group.length * (triangle.width + 2) - 2, height: triangle.height };
    const row = onCar
      ? { x: cloud.x - size.width - 12, y: cloud.y + 2, ...size }
      : placeBeside(cloud, size, taken, around.within);
    taken.push({ box: grownBox(row, 2), weight: 8 });
    return placedMark(group, cloud, row, triangle);
  });
  return withTargets(placed);
}

function placedMark(
  group: readonly ShaftMark[],
  cloud: Box,
  row: Box,
  triangle: Size,
): Omit<PlacedMark, "target"> {
  const triangles = group.map((mark, index) => ({
    mark,
    x: row.x + index * (triangle.width + 2),
    y: row.y,
  }));
  return {
    cloud,
    triangles,
    leader: leaderBetween(cloud, row),
    onCar: group[0]?.place.part === "car",
    triangle,
  };
}

/** A straight line from the cloud's rim to the triangle's, between their middles. */
function leaderBetween(cloud: Box, row: Box): string {
  const from = boxCentre(cloud);
  const to = { x: row.x + row.width / 2, y: row.y + row.height * 0.62 };
  const start = rimPoint(grownBox(cloud, 3), from, to);
  const end = rimPoint(
    { x: row.x + 3, y: row.y + 5, width: row.width - 6, height: row.height - 5 },
    to,
    from,
  );
  return `M${Math.round(start.x)} ${Math.round(start.y)}L${Math.round(end.x)} ${Math.round(end.y)}`;
}

function rimPoint(box: Box, inside: { x: number; y: number }, towards: { x: number; y: number }) {
  const dx = towards.x - inside.x;
  const dy = towards.y - inside.y;
  const reach = Math.min(
    dx === 0 ? Number.POSITIVE_INFINITY : box.width / 2 / Math.abs(dx),
    dy === 0 ? Number.POSITIVE_INFINITY : box.height / 2 / Math.abs(dy),
    1,
  );
  return { x: inside.x + dx * reach, y: inside.y + dy * reach };
}

function withTargets(placed: readonly Omit<PlacedMark, "target">[]): PlacedMark[] {
  const boxes = placed.map((mark) => targetBox(mark));
  return placed.map((mark, index) => {
    const own = boxes[index];
    const free =
      own && !mark.onCar && boxes.every((other, k) => k === index || !other || !boxesOverlap(own, other));
    return { ...mark, target: own && (free || mark.onCar) ? own : null };
  });
}

function targetBox(mark: Omit<PlacedMark, "target">): Box {
  const triangles = mark.triangles.map(({ x, y }) => ({ x, y, ...mark.triangle }));
  const whole = triangles.reduce(unionBox, mark.cloud);
  const growX = Math.max(0, (targetSize - whole.width) / 2);
  const growY = Math.max(0, (targetSize - whole.height) / 2);
  return {
    x: whole.x - growX,
    y: whole.y - growY,
    width: whole.width + 2 * growX,
    height: whole.height + 2 * growY,
  };
}

function cloudBox(mark: ShaftMark | undefined, around: MarkSurroundings): Box {
  const { columns, heights } = around;
  const landing =
    heights.landings.find((candidate) => candidate.id === mark?.place.landingId) ?? heights.landings[0];
  const sillY = heights.yOf(landing?.levelMetres ?? 0);
  switch (mark?.place.part) {
    case "zone-magnet":
      return { x: columns.rail - 4, y: sillY - 12, width: 32, height: 24 };
    case "landing-door":
      return doorBox(around, landing?.id, sillY);
    case "landing-panel": {
      const side = landing?.entrances === "rear" ? "rear" : "front";
      const panel = boxCentre(landingPanelBox(columns, { side, sillY }, heights.pixelsPerMetre));
      return { x: panel.x - 9.5, y: panel.y - 11, width: 19, height: 22 };
    }
    case "switch":
      return { x: columns.rail - 9, y: switchY(mark, around) - 13, width: 24, height: 24 };
    case "pit":
      return pitBox(columns, heights);
    case "machine":
      return grownBox(around.machineBox, 6);
    default:
      return {
        x: columns.car.right - 22,
        y: -carAsDrawnMetres * heights.pixelsPerMetre - 10,
        width: 24,
        height: 24,
      };
  }
}

function doorBox(around: MarkSurroundings, landingId: string | undefined, sillY: number): Box {
  const own = around.entrances.filter((entrance) => entrance.landingId === landingId);
  const entrance = own.find((candidate) => candidate.side === "front") ?? own[0];
  const x = entrance?.side === "rear" ? around.columns.wellLeft - 12 : around.columns.wellRight - 9;
  const height = Math.min(30, Math.max(20, sillY - (entrance?.lintelY ?? sillY - 30) - 14));
  return { x, y: (entrance?.lintelY ?? sillY - 40) + 2, width: 24, height };
}

function pitBox(columns: ShaftColumns, heights: ShaftHeights): Box {
  const middle = (columns.car.left + columns.car.right) / 2;
  return { x: middle - 30, y: heights.pitFloorY - 24, width: 60, height: 24 };
}

function switchY(mark: ShaftMark, around: MarkSurroundings): number {
  const levels = switchLevels(around.lift);
  const found = levels.find((entry) => entry.switch === mark.place.switch);
  if (found) return around.heights.yOf(found.levelMetres);
  const lowest = around.heights.landings[0]?.levelMetres ?? 0;
  const highest = around.heights.landings.at(-1)?.levelMetres ?? lowest;
  return around.heights.yOf(mark.place.switch?.startsWith("down") ? lowest : highest);
}
