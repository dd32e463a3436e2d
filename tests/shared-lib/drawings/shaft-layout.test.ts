import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { carRange } from "#shared-lib/drawings/car-moves.ts";
import { boxesOverlap, triangleSize } from "#shared-lib/drawings/drawing-paths.ts";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import { shaftLayout, shaftSentence } from "#shared-lib/drawings/shaft-layout.ts";
import type { ShaftMark } from "#shared-lib/drawings/shaft-section.ts";
import { shaftSuspension } from "#shared-lib/drawings/shaft-suspension.ts";
import { arbitraryLift, arbitraryMarks, eightLandings } from "./arbitrary-lift.ts";

const usual = { width: 598, textSize: 14, availableHeight: 560, marks: [] as ShaftMark[] };

const options = fc.record({
  width: fc.integer({ min: 200, max: 1400 }),
  textSize: fc.integer({ min: 11, max: 30 }),
  availableHeight: fc.integer({ min: 200, max: 1200 }),
  print: fc.boolean(),
});

const anyLayout = arbitraryLift.chain((lift) =>
  fc.tuple(fc.constant(lift), options, arbitraryMarks(lift)).map(([drawn, size, marks]) => ({
    lift: drawn,
    marks,
    layout: shaftLayout(drawn, { ...size, marks }),
    size,
  })),
);

/** Every number in a value, however deep; functions are left out. */
function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (Array.isArray(value)) return value.flatMap(numbersIn);
  if (value && typeof value === "object") return Object.values(value).flatMap(numbersIn);
  return [];
}

function textsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (Array.isArray(value)) return value.flatMap(textsIn);
  if (value && typeof value === "object") return Object.values(value).flatMap(textsIn);
  return [];
}

describe("layout of the shaft section, whatever the lift", () => {
  it("has no number that is not finite, for one landing, levels in any order, twice, or 64 of them", () => {
    fc.assert(
      fc.property(anyLayout, ({ layout, lift }) => {
        expect(numbersIn(layout).filter((value) => !Number.isFinite(value))).toEqual([]);
        const { lowest, highest } = carRange(lift);
        for (const level of [lowest, (lowest + highest) / 2, highest]) {
          const suspension = shaftSuspension(lift, layout.heights, layout.columns, level);
          expect(numbersIn(suspension).filter((value) => !Number.isFinite(value))).toEqual([]);
          expect(textsIn(suspension).filter((text) => /NaN|Infinity/.test(text))).toEqual([]);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("never lets two labels of the level column overlap, nor one leave the picture", () => {
    fc.assert(
      fc.property(anyLayout, ({ layout }) => {
        for (const [index, label] of layout.labels.entries()) {
          for (const other of layout.labels.slice(index + 1)) {
            const apart = Math.abs(label.y - other.y);
            expect(apart).toBeGreaterThan(layout.columns.textSize * 1.2 - 1e-6);
          }
          expect(label.box.x).toBeGreaterThanOrEqual(0);
          expect(label.box.y + label.box.height).toBeLessThanOrEqual(layout.height + 1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("keeps rows at least 44 px apart on the screen, below the head, and wide enough for their words", () => {
    fc.assert(
      fc.property(anyLayout, ({ layout, size }) => {
        const least = size.print ? size.textSize * 1.6 : 44;
        const bases = layout.rows.map((row) => row.baseY).sort((a, b) => a - b);
        for (const [index, base] of bases.entries()) {
          const before = bases[index - 1];
          if (before !== undefined) expect(base - before).toBeGreaterThanOrEqual(least - 1e-6);
          expect(base - least).toBeGreaterThanOrEqual(layout.headBaseline - 1e-6);
        }
        const { columns } = layout;
        expect(columns.zoneSignals).toBeGreaterThan(columns.marking);
        expect(columns.landingPanel).toBeGreaterThan(columns.zoneSignals);
        expect(columns.width).toBeGreaterThanOrEqual(columns.landingPanel);
        expect(columns.car.right).toBeGreaterThan(columns.car.left + 40);
      }),
      { numRuns: 300 },
    );
  });

  it("draws heights to one scale, save across a break, and finds the level of a height again", () => {
    fc.assert(
      fc.property(anyLayout, ({ layout }) => {
        const { heights } = layout;
        const { landings, breaks, pixelsPerMetre } = heights;
        for (const [index, landing] of landings.entries()) {
          const above = landings[index + 1];
          expect(heights.levelOf(heights.yOf(landing.levelMetres))).toBeCloseTo(landing.levelMetres, 6);
          if (!above) continue;
          const cut = breaks.some(
            (gap) => gap.fromLevel >= landing.levelMetres && gap.toLevel <= above.levelMetres,
          );
          const drawn = heights.yOf(landing.levelMetres) - heights.yOf(above.levelMetres);
          if (cut) expect(drawn).toBeLessThan((above.levelMetres - landing.levelMetres) * pixelsPerMetre);
          else expect(drawn).toBeCloseTo((above.levelMetres - landing.levelMetres) * pixelsPerMetre, 6);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("gives marks targets of 44 px at least that never overlap one another", () => {
    fc.assert(
      fc.property(anyLayout, ({ layout, marks }) => {
        expect(layout.marks.flatMap((placed) => placed.triangles)).toHaveLength(marks.length);
        const targets = layout.marks.flatMap((placed) =>
          placed.target && !placed.onCar ? [placed.target] : [],
        );
        for (const [index, target] of targets.entries()) {
          expect(Math.min(target.width, target.height)).toBeGreaterThanOrEqual(44 - 1e-6);
          for (const other of targets.slice(index + 1)) expect(boxesOverlap(target, other)).toBe(false);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("parts that can be chosen", () => {
  it("never overlap one another in the label column, and name the switch they mean", () => {
    fc.assert(
      fc.property(anyLayout, ({ layout }) => {
        const beside = layout.parts.filter((part) => part.part !== "machine");
        for (const [index, part] of beside.entries()) {
          for (const other of beside.slice(index + 1)) {
            const shrunk = { ...part.box, y: part.box.y + 1e-6, height: part.box.height - 2e-6 };
            expect(boxesOverlap(shrunk, other.box)).toBe(false);
          }
        }
        expect(layout.parts.filter((part) => part.switch).map((part) => part.words)).toEqual(
          layout.labels.flatMap((label) => (label.switch ? [`${label.switch} switch`] : [])),
        );
      }),
    );
  });
});

describe("the sketched lift", () => {
  const marks: ShaftMark[] = [
    {
      id: "a",
      kind: "failed",
      place: { part: "zone-magnet", landingId: "landing 3" },
      number: 1,
      words: "Zone signal failed",
    },
    {
      id: "b",
      kind: "bridge",
      place: { part: "landing-door", landingId: "landing 6" },
      number: 2,
      words: "Bridge at landing 6",
    },
  ];
  const layout: ShaftLayout = shaftLayout(eightLandings, { ...usual, marks, parkedLevelMetres: 8.8 });

  it("fits 598 by 560 px and does not scroll", () => {
    expect(layout.width).toBe(598);
    expect(layout.height).toBeLessThanOrEqual(572);
    expect(layout.scrolls).toBe(false);
    expect(layout.heights.breaks).toEqual([]);
  });

  it("puts its rows on the sills and its numbers clear of rows and level words", () => {
    for (const row of layout.rows) expect(row.baseY).toBeCloseTo(row.sillY, 6);
    for (const placed of layout.marks) {
      for (const triangle of placed.triangles) {
        const box = { x: triangle.x, y: triangle.y, ...triangleSize(14) };
        expect(layout.labels.some((label) => boxesOverlap(box, label.box))).toBe(false);
        expect(box.x + box.width).toBeLessThan(layout.columns.marking);
      }
    }
  });

  it("is read as a sentence with its marks", () => {
    expect(shaftSentence(eightLandings, marks)).toBe(
      "Shaft section with 8 landings. Machine in the well. Roped 2:1, rope ends fixed at the top, one pulley on the car and one on the counterweight. Marked 1: Zone signal failed. Marked 2: Bridge at landing 6.",
    );
  });

  it("is printed at 1:200, the largest usual scale that an upright sheet holds", () => {
    expect(shaftLayout(eightLandings, { ...usual, availableHeight: 800, print: true }).paperRatio).toBe(200);
  });
});

describe("tall and uneven lifts", () => {
  const withLevels = (levels: readonly number[]) => ({
    ...eightLandings,
    landings: levels.map((levelMetres, index) => ({
      id: `l${index}`,
      marking: String(index),
      name: "",
      levelMetres,
      entrances: "front" as const,
    })),
  });

  it("cuts a blind run when the section would be higher than one and a half screens, and writes its length", () => {
    const levels = [0, 2.7, 5.4, 8.1, 10.8, 13.5, 27.7, 30.6, 33.5, 36.4, 39.7, 43, 46.3, 49.6];
    const { heights } = shaftLayout(withLevels(levels), usual);
    expect(heights.breaks.map((cut) => cut.runMetres.toFixed(2))).toEqual(["14.20"]);
  });

  it("cuts one run of more than six landings' height even where there is room", () => {
    expect(
      shaftLayout(withLevels([0, 3, 6, 25]), { ...usual, availableHeight: 5000 }).heights.breaks,
    ).toHaveLength(1);
    expect(
      shaftLayout(withLevels([0, 3, 6, 20]), { ...usual, availableHeight: 5000 }).heights.breaks,
    ).toHaveLength(0);
  });

  it("scrolls above 24 landings and not before", () => {
    const storeys = (count: number) => withLevels(Array.from({ length: count }, (_, index) => index * 3));
    expect(shaftLayout(storeys(24), usual).scrolls).toBe(false);
    expect(shaftLayout(storeys(25), usual).scrolls).toBe(true);
    expect(shaftLayout(storeys(25), { ...usual, print: true }).scrolls).toBe(false);
  });
});
