import type { Box } from "./drawing-paths.ts";
import type { ShaftLabel } from "./shaft-labels.ts";
import type { ShaftPart, ShaftSectionLift, ShaftSwitch } from "./shaft-section.ts";

/** A part of the lift that can be chosen on the drawing itself. What stands at a landing is chosen by its row. */
export interface PartTarget {
  readonly part: ShaftPart;
  readonly switch?: ShaftSwitch;
  readonly words: string;
  readonly box: Box;
}

const targetSize = 44;

/** The machine, the pit, and each terminal switch by its word; targets as large as their neighbours leave room for. */
export function partTargets(
  lift: ShaftSectionLift,
  labels: readonly ShaftLabel[],
  machineBox: Box,
): PartTarget[] {
  const named = labels.filter(
    (label) => label.kind !== "level" && (label.kind !== "pit" || lift.pitDepthMetres !== null),
  );
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  const targets = named.map((label): PartTarget => {
    const index = sorted.indexOf(label);
    const above = sorted[index - 1];
    const below = sorted[index + 1];
    const up = above ? (label.y - above.y) / 2 : targetSize / 2;
    const down = below ? (below.y - label.y) / 2 : targetSize / 2;
    const top = label.y - Math.min(up, targetSize / 2);
    const bottom = label.y + Math.min(down, targetSize / 2);
    const width = Math.max(targetSize, label.box.width);
    const right = label.box.x + label.box.width;
    const box = { x: right - width, y: top, width, height: bottom - top };
    if (label.kind === "pit") return { part: "pit", words: `Pit, ${label.text.replace(" pit", "")} m`, box };
    return label.switch
      ? { part: "switch", switch: label.switch, words: `${label.text} switch`, box }
      : { part: "switch", words: label.text, box };
  });
  return [...targets, { part: "machine", words: "Machine", box: atLeast(machineBox) }];
}

function atLeast(box: Box): Box {
  const growX = Math.max(0, (targetSize - box.width) / 2);
  const growY = Math.max(0, (targetSize - box.height) / 2);
  return { x: box.x - growX, y: box.y - growY, width: box.width + 2 * growX, height: box.height + 2 * growY };
}
