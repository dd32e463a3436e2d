import type { Box, Point } from "./drawing-paths.ts";
import { boxCentre, sharedArea } from "./drawing-paths.ts";

/** Something that a placed box should keep clear of; heavier things cost more per square pixel. */
export interface Obstacle {
  readonly box: Box;
  readonly weight: number;
}

const directions: readonly Point[] = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0.75, y: 1 },
  { x: 0.75, y: -1 },
  { x: -0.75, y: 1 },
  { x: -0.75, y: -1 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];
const distances = [9, 22, 38, 58];

/** Puts a box of the given size beside another one where it covers least; nearer places win a tie. */
export function placeBeside(
  around: Box,
  size: { width: number; height: number },
  obstacles: readonly Obstacle[],
  within: Box,
): Box {
  const centre = boxCentre(around);
  let best: Box | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const [ring, distance] of distances.entries()) {
    for (const direction of directions) {
      const x = centre.x + direction.x * (around.width / 2 + size.width / 2 + distance) - size.width / 2;
      const y = centre.y + direction.y * (around.height / 2 + size.height / 2 + distance) - size.height / 2;
      const box = { x, y, ...size };
      const outside = size.width * size.height - sharedArea(box, within);
      const covered = obstacles.reduce(
        (sum, obstacle) => sum + obstacle.weight * sharedArea(box, obstacle.box),
        0,
      );
      const cost = outside * 50 + covered + ring * 12;
      if (cost < bestCost - 1e-9) {
        bestCost = cost;
        best = box;
      }
    }
  }
  return best ?? { x: around.x + around.width, y: around.y, ...size };
}
