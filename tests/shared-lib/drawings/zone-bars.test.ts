import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { zoneBars, zoneBarsOf } from "#shared-lib/drawings/zone-bars.ts";
import { zoneBarsLayout, zoneBarsSentence } from "#shared-lib/drawings/zone-bars-layout.ts";
import { zoneWellWords } from "#shared-lib/drawings/zone-well-words.ts";

const sketched = {
  magnetLength: 300,
  sensorSpacing: 60,
  magnetError: -17,
  limit: 200,
  unlocksWith: "both" as const,
  centreTolerance: 5,
  levelWords: "level 3, +8.80 m",
};

describe("zone bars", () => {
  // Lift engineering facts, examples 1a and 1b.
  it.each([
    [
      { magnetLength: 250, sensorSpacing: 30, magnetError: 4 },
      [-136, 114],
      [-106, 144],
      [-106, 114],
      [-136, 144],
    ],
    [
      { magnetLength: 180, sensorSpacing: 60, magnetError: -6 },
      [-126, 54],
      [-66, 114],
      [-66, 54],
      [-126, 114],
    ],
  ])("agree with the worked examples", (geometry, upper, lower, both, either) => {
    const found = zoneBars(geometry).map((bar) => bar.stretches.map((stretch) => [stretch.from, stretch.to]));
    expect(found).toEqual([[upper], [lower], [both], [either]]);
  });

  it("have a gap and no overlap when the sensors are further apart than the magnet is long", () => {
    const [, , both, either] = zoneBars({ magnetLength: 100, sensorSpacing: 160, magnetError: 0 });
    expect(both?.stretches).toEqual([]);
    expect(either?.stretches).toEqual([
      { from: -130, to: -30 },
      { from: 30, to: 130 },
    ]);
  });

  it("say never on for a signal that was not seen", () => {
    const bars = zoneBarsOf({ from: -100, to: 80 }, null);
    expect(bars.map((bar) => bar.stretches.length)).toEqual([1, 0, 0, 1]);
  });

  it("are long as the geometry demands: each L, both L − S, either L + S", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 600 }),
        fc.integer({ min: 1, max: 49 }),
        fc.integer({ min: -80, max: 80 }),
        (length, spacing, error) => {
          const lengths = zoneBars({ magnetLength: length, sensorSpacing: spacing, magnetError: error }).map(
            (bar) => bar.stretches.reduce((sum, stretch) => sum + stretch.to - stretch.from, 0),
          );
          expect(lengths.map((value) => Math.round(value * 1e6) / 1e6)).toEqual([
            length,
            length,
            length - spacing,
            length + spacing,
          ]);
        },
      ),
    );
  });
});

describe("the drawing of sensors and magnet", () => {
  it("fills the bar that unlocks, and marks the centre outside only against the site's own tolerance", () => {
    const layout = zoneBarsLayout(sketched, 676, 14);
    expect(layout.sideBySide).toBe(true);
    expect(layout.bars.filter((bar) => bar.unlocks).map((bar) => bar.name)).toEqual(["both"]);
    expect(layout.centre).toEqual({ value: -17, outside: true });
    expect(zoneBarsLayout({ ...sketched, centreTolerance: null }, 676, 14).centre?.outside).toBe(false);
    expect(zoneBarsLayout({ ...sketched, centreTolerance: 17 }, 676, 14).centre?.outside).toBe(false);
  });

  it("stands one part under the other where the width is too little", () => {
    const layout = zoneBarsLayout(sketched, 430, 14);
    expect(layout.sideBySide).toBe(false);
    expect(layout.barsZeroY).toBeGreaterThan(layout.wellBottom);
  });

  it("keeps the words in the well apart for any geometry and text size", () => {
    const input = fc.record({
      magnetLength: fc.integer({ min: 40, max: 700 }),
      sensorSpacing: fc.integer({ min: 10, max: 400 }),
      magnetError: fc.integer({ min: -80, max: 80 }),
    });
    fc.assert(
      fc.property(
        input,
        fc.integer({ min: 12, max: 28 }),
        fc.constantFrom(430, 676, 1000),
        (geometry, textSize, width) => {
          const drawn = { ...sketched, ...geometry };
          const layout = zoneBarsLayout(drawn, width, textSize);
          const words = zoneWellWords(drawn, layout);
          const column = [
            words.upperSensor,
            words.lowerSensor,
            words.magnet,
            ...(words.nominal ? [words.nominal.y] : []),
          ].sort((a, b) => a - b);
          for (const [index, y] of column.entries()) {
            const before = column[index - 1];
            if (before !== undefined) expect(y - before).toBeGreaterThanOrEqual(textSize);
          }
          const finite = [layout.width, layout.height, layout.pixelsPerMillimetre, ...column];
          expect(finite.every(Number.isFinite)).toBe(true);
        },
      ),
    );
  });

  it("is read with its numbers", () => {
    expect(zoneBarsSentence(sketched)).toBe(
      "Magnet 300 mm long, 17 mm low; both sensors on from minus 137 to plus 103 mm, either on from minus 197 to plus 163 mm; limit 200 mm.",
    );
  });
});
