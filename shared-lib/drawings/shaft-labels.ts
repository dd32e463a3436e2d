import type { Box } from "./drawing-paths.ts";
import type { ShaftColumns } from "./shaft-columns.ts";
import type { ShaftHeights } from "./shaft-heights.ts";
import type { ShaftSectionLift, ShaftSwitch } from "./shaft-section.ts";
import { switchLevels, writtenLevel } from "./shaft-section.ts";
import { spreadLabels } from "./spread-labels.ts";
import { letteringWidth } from "./text-width.ts";

/** A word at the left of the section, right-aligned at the label column's end. */
export interface ShaftLabel {
  readonly kind: "level" | "switch" | "pit";
  readonly text: string;
  /** The height it speaks of. */
  readonly anchorY: number;
  /** Middle of the lettering. */
  readonly y: number;
  readonly box: Box;
  readonly landingId?: string;
  readonly switch?: ShaftSwitch;
}

/** All words that may stand in the label column; they set its width. */
export function labelWords(
  lift: ShaftSectionLift,
  heights: { readonly landings: ShaftHeights["landings"] },
): string[] {
  const lowest = heights.landings[0]?.levelMetres ?? 0;
  return [
    ...heights.landings.map((landing) => writtenLevel(landing.levelMetres)),
    ...switchLevels(lift).map((entry) => entry.switch),
    pitWords(lift, lowest),
  ];
}

function pitWords(lift: ShaftSectionLift, lowest: number): string {
  return lift.pitDepthMetres === null ? "pit" : `${writtenLevel(lowest - lift.pitDepthMetres)} pit`;
}

/** Levels hold their ticks; the names of switches step aside on leaders. No two overlap. */
export function shaftLabels(
  lift: ShaftSectionLift,
  heights: ShaftHeights,
  columns: ShaftColumns,
): ShaftLabel[] {
  const lowest = heights.landings[0]?.levelMetres ?? 0;
  type Draft = Omit<ShaftLabel, "y" | "box">;
  const drafts: Draft[] = [
    ...heights.landings.map(
      (landing): Draft => ({
        kind: "level",
        text: writtenLevel(landing.levelMetres),
        anchorY: heights.yOf(landing.levelMetres),
        landingId: landing.id,
      }),
    ),
    ...switchLevels(lift).map(
      (entry): Draft => ({
        kind: "switch",
        text: entry.switch,
        anchorY: heights.yOf(entry.levelMetres),
        switch: entry.switch,
      }),
    ),
    { kind: "pit", text: pitWords(lift, lowest), anchorY: heights.pitFloorY },
  ];
  const extent = columns.textSize * 1.2;
  const places = spreadLabels(
    drafts.map((draft) => ({ anchor: draft.anchorY, extent, weight: draft.kind === "switch" ? 1 : 200 })),
    0,
    Number.POSITIVE_INFINITY,
  );
  return drafts.map((draft, index) => {
    const y = places[index] ?? draft.anchorY;
    const width = letteringWidth(draft.text, columns.textSize);
    return { ...draft, y, box: { x: columns.labelEnd - width, y: y - extent / 2, width, height: extent } };
  });
}
