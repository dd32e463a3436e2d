import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { panelBus } from "#shared-lib/calculators/panel-bus.ts";
import { terminalSlowdown } from "#shared-lib/calculators/terminal-slowdown.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";
import { barsPicture } from "../../../renderer/features/bench/bars-picture.ts";
import {
  type BusLineDrawing,
  busLinePicture,
  busLineSentence,
} from "../../../renderer/features/bench/bus-line-picture.ts";
import { curveCaption, curveInput } from "../../../renderer/features/bench/curve-input.ts";
import { figureTable } from "../../../renderer/features/bench/drawing-table.ts";
import { edgePanels } from "../../../renderer/features/bench/edge-signals.ts";
import {
  type SlowdownDrawing,
  slowdownPicture,
  slowdownPlaces,
  slowdownSentence,
} from "../../../renderer/features/bench/slowdown-picture.ts";
import { landingDetail, zoneTogether } from "../../../renderer/features/bench/zone-pictures.ts";

type OfKind<Kind extends Drawing["kind"]> = Extract<Drawing, { kind: Kind }>;

function drawn<Kind extends Drawing["kind"]>(
  calculator: typeof zoneSensors,
  kind: Kind,
  input: CalculatorInput,
): OfKind<Kind> {
  const found = calculator.compute(input).drawings.find((drawing) => drawing.kind === kind);
  if (found === undefined) throw new Error(`${calculator.id} draws no ${kind} for this`);
  return found as OfKind<Kind>;
}

const stop = { speed: 1, retardation: 0.8, jerkStart: 0.8, jerkEnd: 0.8, reactionTime: 0.2, margin: 0.1 };
const zone = {
  magnetLength: 0.3,
  sensorSpacing: 0.06,
  centreUp: -0.011,
  centreDown: -0.023,
  zoneTolerance: 0.005,
  unlockingZone: "200",
  unlockNeeds: "both",
};

describe("places before a terminal landing", () => {
  const drawing = drawn(terminalSlowdown, "slowdown-range", { ...stop, switchUp: 2.1, normalStart: 2.5 });

  test("stand in order from the level outwards, to scale", () => {
    expect(slowdownPlaces(drawing).map((place) => place.key)).toEqual([
      "level",
      "required",
      "switch",
      "normal",
    ]);
    const { places } = slowdownPicture(drawing, 700, 14, "metric");
    const y = (key: string): number => places.find((place) => place.key === key)?.y ?? Number.NaN;
    const perMetre = (y("normal") - y("level")) / 2.5;
    expect(perMetre).toBeGreaterThan(0);
    expect(y("switch") - y("level")).toBeCloseTo(2.1 * perMetre, 6);
    expect(y("required") - y("level")).toBeCloseTo(drawing.required * perMetre, 6);
  });

  test("the bottom landing is drawn below, the top landing above", () => {
    const down = slowdownPicture({ ...drawing, side: "down" }, 700, 14, "metric");
    expect(down.levelY).toBe(down.bottom);
    const up = slowdownPicture(drawing, 700, 14, "metric");
    expect(up.levelY).toBe(up.top);
  });

  test("margin, stop and reaction together reach the latest place of the switch", () => {
    const { parts, places } = slowdownPicture(drawing, 700, 14, "metric");
    expect(parts.map((part) => part.words.split(" ")[0])).toEqual(["margin", "stop", "reaction"]);
    expect(parts.at(-1)?.to).toBeCloseTo(places.find((place) => place.key === "required")?.y ?? 0, 6);
  });

  test("no place is hatched where the normal start lies after the latest place", () => {
    expect(slowdownPicture({ ...drawing, normalStart: 1 }, 700, 14, "metric").allowed).toBeNull();
    expect(slowdownPicture({ ...drawing, normalStart: null }, 700, 14, "metric").allowed?.open).toBe(true);
  });

  test("words never leave the picture nor stand on one another, at any width, text size and distance", () => {
    const distance = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({
          reaction: distance,
          stop: distance,
          margin: distance,
          required: distance,
          normalStart: fc.option(distance),
          switchAt: fc.option(distance),
          side: fc.constantFrom("up" as const, "down" as const),
        }),
        fc.integer({ min: 200, max: 1200 }),
        fc.integer({ min: 12, max: 28 }),
        (parts, width, textSize) => {
          const one: SlowdownDrawing = { ...drawing, ...parts };
          const picture = slowdownPicture(one, width, textSize, "metric");
          const heights = picture.places
            .map((place) => ({ y: place.wordY, half: (place.lines.length * textSize * 1.2) / 2 }))
            .sort((a, b) => a.y - b.y);
          for (const [index, next] of heights.entries()) {
            const before = heights[index - 1];
            if (before) expect(next.y - before.y).toBeGreaterThanOrEqual(before.half + next.half - 0.5);
          }
          for (const place of picture.places) {
            expect(place.y).toBeGreaterThanOrEqual(picture.top - 1e-6);
            expect(place.y).toBeLessThanOrEqual(picture.bottom + 1e-6);
          }
          expect(JSON.stringify(picture)).not.toMatch(/null,"lines"|NaN/);
        },
      ),
    );
  });

  test("are said to a reader with their distances", () => {
    expect(slowdownSentence(drawing, "metric")).toContain("switch 2.100\u00a0m before the level");
    expect(figureTable(drawing, "foot-pound")?.rows).toContainEqual(["switch", "6.890"]);
  });
});

describe("the bus as one line", () => {
  const drawing = drawn(panelBus, "bus-line", { panels: 6, busLength: 60, reading: "open", power: "off" });

  test("draws every panel while there is room", () => {
    const picture = busLinePicture(drawing, 700, 14, "metric");
    expect(picture.panels.map((panel) => panel.number)).toEqual([1, 2, 3, 4, 5, 6]);
    expect([picture.leftOut, picture.breakX]).toEqual([0, null]);
    expect(picture.lengthWords).toBe("60\u00a0m");
  });

  test.each([0, 1, 2, 3, 40, 254])("%i panels: none is lost, and none stands on another", (panels) => {
    for (const width of [200, 360, 700, 1200]) {
      const picture = busLinePicture({ ...drawing, panels }, width, 14, "metric");
      expect(picture.panels.length + picture.leftOut).toBe(panels);
      const xs = picture.panels.map((panel) => panel.x);
      for (const [index, x] of xs.entries()) {
        expect(Number.isFinite(x)).toBe(true);
        if (index > 0) expect(x - (xs[index - 1] ?? 0)).toBeGreaterThanOrEqual(16);
        expect(x + 16).toBeLessThanOrEqual(picture.right);
      }
    }
  });

  test("says of the terminators only what the reading says", () => {
    const state = (found: BusLineDrawing["found"]) =>
      busLinePicture({ ...drawing, found }, 700, 14, "metric").terminators.map((one) => one.state);
    expect(state("two")).toEqual(["there", "there"]);
    expect(state("none")).toEqual(["missing", "missing"]);
    expect(state("one")).toEqual(["unknown", "unknown"]);
    expect(state("not measured")).toEqual(["unknown", "unknown"]);
    expect(busLinePicture({ ...drawing, found: "short" }, 700, 14, "metric").short).toBe(true);
    expect(busLineSentence({ ...drawing, panels: 1 }, "metric")).toContain("through one panel");
  });
});

describe("zone pictures", () => {
  const bars = drawn(zoneSensors, "zone-bars", zone);
  const magnet = drawn(zoneSensors, "magnet-detail", zone);

  test("the sketch's magnet: 17 low, bars −197 to +163, centre outside its tolerance", () => {
    const together = zoneTogether(bars, magnet, "level 3");
    expect(together).toMatchObject({
      magnetLength: 300,
      sensorSpacing: 60,
      magnetError: -17,
      limit: 200,
      unlocksWith: "both",
    });
    expect(together?.measured?.find((bar) => bar.name === "both")?.stretches).toEqual([
      { from: -137, to: 103 },
    ]);
    expect(together?.measured?.find((bar) => bar.name === "either")?.stretches).toEqual([
      { from: -197, to: 163 },
    ]);
    expect(Math.abs(together?.magnetError ?? 0)).toBeGreaterThan(together?.centreTolerance ?? 99);
  });

  test("are drawn apart where a part of the common picture is not known", () => {
    const { unlockingZone: _zone, ...noLimit } = zone;
    expect(zoneTogether(drawn(zoneSensors, "zone-bars", noLimit), magnet, "level")).toBeNull();
    const { unlockNeeds: _needs, ...noNeeds } = zone;
    expect(zoneTogether(drawn(zoneSensors, "zone-bars", noNeeds), magnet, "level")).toBeNull();
    const inWell = drawn(zoneSensors, "magnet-detail", { ...zone, sensorsOn: "well" });
    expect(zoneTogether(bars, inWell, "level")).toBeNull();
    expect(landingDetail(inWell, "level")).toBeNull();
  });

  test("the place found earlier goes into the detail", () => {
    const past = { drawing: { ...magnet, offset: 0.001 }, words: "place on 4 Feb 2026" };
    expect(landingDetail(magnet, "level 3", past)).toMatchObject({
      magnetError: -17,
      outside: true,
      earlier: { magnetError: 1, words: "place on 4 Feb 2026" },
    });
  });

  test("bars alone: up is up, in the person's unit, and every line has its words", () => {
    const picture = barsPicture(bars, 600, 14, "foot-pound");
    const both = picture.bars.find((bar) => bar.name === "both");
    expect([both?.topWords, both?.bottomWords, both?.unlocks]).toEqual(["+4.06", "−5.39", true]);
    expect(both?.top).toBeLessThan(picture.zeroY);
    expect(both?.bottom).toBeGreaterThan(picture.zeroY);
    const either = picture.bars.find((bar) => bar.name === "either");
    expect([both?.bottomBeside, either?.topBeside, either?.bottomBeside]).toEqual([false, false, true]);
    expect(picture.lines.filter((line) => line.outside).map((line) => line.kind)).toEqual(["centre"]);
    const words = picture.lines.map((line) => line.wordY).sort((a, b) => a - b);
    for (const [index, y] of words.entries()) {
      if (index > 0) expect(y - (words[index - 1] ?? 0)).toBeGreaterThanOrEqual(14);
    }
  });

  test("as a table, the bar that unlocks is named", () => {
    expect(figureTable(bars, "metric")?.rows).toContainEqual(["both, unlocks", "−137", "+103", "240"]);
  });
});

describe("curves", () => {
  const curve = drawn(terminalSlowdown, "curve", { ...stop, switchUp: 1 });

  test("are shown in the person's units, with as many points", () => {
    const metric = curveInput(curve, "metric");
    const feet = curveInput(curve, "foot-pound");
    expect(metric.y.unit).toBe("m/s");
    expect(feet.y.unit).toBe("ft/min");
    expect(feet.series[0]?.points).toHaveLength(metric.series[0]?.points.length ?? 0);
    expect(feet.series[0]?.points[0]?.y).toBeCloseTo(1 / 0.00508, 6);
  });

  test("an earlier one is laid under under its own words", () => {
    const earlier = curveInput(curve, "metric", { drawing: curve, words: "4 Feb 2026" }).earlier;
    expect(earlier?.name).toBe("4 Feb 2026");
    expect(earlier?.points).toEqual(curveInput(curve, "metric").series[0]?.points);
  });

  test("the point outside is marked before any other, and the rest is said", () => {
    const marks = [
      { x: 0, y: 1, words: "start", outside: false },
      { x: 1, y: 0.5, words: "too fast", outside: true },
      { x: 2, y: 0, words: "end", outside: false },
    ];
    const limits = [{ axis: "x" as const, at: 1, words: "latest at 1 s", wrongSide: null }];
    expect(curveInput({ ...curve, marks }, "metric").mark).toMatchObject({ words: "too fast", failed: true });
    expect(curveCaption({ ...curve, marks, limits })).toBe("latest at 1 s; start; end.");
    expect(curveCaption({ ...curve, marks: [], limits: [] })).toBe("");
  });

  test("have a table of at most 21 rows that begins and ends with the curve", () => {
    const table = figureTable(curve, "metric");
    const rows = table?.rows ?? [];
    expect(rows).toHaveLength(21);
    expect(new Set(rows.map((row) => row[0])).size).toBe(21);
    expect(rows[0]).toEqual(["0.00", "1.00"]);
    expect(rows.at(-1)?.[1]).toBe("0.00");
    expect(table?.heads).toEqual(["Time after the switch, s", "Speed, m/s"]);
  });
});

describe("the order of edges", () => {
  const order = (seen: readonly string[] | undefined) =>
    drawn(zoneSensors, "edge-order", {
      measured: "order",
      orderUp: ["upperOn", "lowerOn", "upperOff", "lowerOff"],
      ...(seen === undefined ? {} : { orderDown: seen }),
    }).runs.find((run) => run.direction === "down");

  function panels(seen: readonly string[] | undefined) {
    const run = order(seen);
    if (run === undefined) throw new Error("no run down");
    return edgePanels(run);
  }

  test("takes one step for each edge, upper above lower", () => {
    const { expected, seen } = panels(["upperOn", "lowerOn", "upperOff", "lowerOff"]);
    expect(expected.signals.map((signal) => signal.name)).toEqual(["upper", "lower"]);
    expect(expected.signals[1]?.levels).toEqual([
      { from: 0, to: 1, state: "off" },
      { from: 1, to: 3, state: "on" },
      { from: 3, to: 5, state: "off" },
    ]);
    expect(seen?.signals[0]?.levels).toEqual([
      { from: 0, to: 1, state: "off" },
      { from: 1, to: 3, state: "on" },
      { from: 3, to: 5, state: "off" },
    ]);
  });

  test("a dead signal stays off; a run that was not made has no picture", () => {
    expect(panels([]).seen?.signals.map((signal) => signal.levels)).toEqual([
      [{ from: 0, to: 5, state: "off" }],
      [{ from: 0, to: 5, state: "off" }],
    ]);
    expect(panels(undefined).seen).toBeNull();
  });
});
