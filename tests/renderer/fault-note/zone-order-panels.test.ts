import { expect, test } from "vitest";
import { zoneOrderPanels } from "../../../renderer/features/fault-note/zone-order-panels.ts";

const link = (preset: Record<string, string | string[]>) => [{ id: "zone-sensors", preset, why: "" }];
const on = (panel: {
  signals: readonly { name: string; levels: readonly { from: number; state: string }[] }[];
}) =>
  Object.fromEntries(
    panel.signals.map(({ name, levels }) => [name, levels.find(({ state }) => state === "on")?.from]),
  );

test("nothing is drawn for a note that does not lead there by the order seen", () => {
  expect(zoneOrderPanels([])).toBeNull();
  expect(zoneOrderPanels(link({ measured: "positions" }))).toBeNull();
});

test("moving down the lower sensor comes first, moving up the upper one; in the well they swap", () => {
  const onCar = zoneOrderPanels(link({ measured: "order" }));
  expect(onCar && [on(onCar.expected), on(onCar.seen)]).toEqual([
    { upper: 2, lower: 1 },
    { upper: 1, lower: 2 },
  ]);
  const inWell = zoneOrderPanels(link({ measured: "order", sensorsOn: "well" }));
  expect(inWell && on(inWell.expected)).toEqual({ upper: 1, lower: 2 });
});

test("an order that the note names stands beside what it should be", () => {
  const panels = zoneOrderPanels(
    link({ measured: "order", orderDown: ["upperOn", "lowerOn", "upperOff", "lowerOff"] }),
  );
  expect(panels && [on(panels.expected), on(panels.seen)]).toEqual([
    { upper: 2, lower: 1 },
    { upper: 1, lower: 2 },
  ]);
});
