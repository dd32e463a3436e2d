import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spreadLabels } from "#shared-lib/drawings/spread-labels.ts";

const item = fc.record({
  anchor: fc.double({ min: 0, max: 500, noNaN: true }),
  extent: fc.double({ min: 1, max: 40, noNaN: true }),
  weight: fc.double({ min: 0.5, max: 200, noNaN: true }),
});

describe("labels spread on a line", () => {
  it("leaves labels with room where they want to be", () => {
    expect(
      spreadLabels(
        [
          { anchor: 10, extent: 10 },
          { anchor: 50, extent: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([10, 50]);
  });

  it("parts two at one place evenly, and lets the heavier one stay", () => {
    expect(
      spreadLabels(
        [
          { anchor: 50, extent: 10 },
          { anchor: 50, extent: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([45, 55]);
    const [held] = spreadLabels(
      [
        { anchor: 50, extent: 10, weight: 99 },
        { anchor: 50, extent: 10, weight: 1 },
      ],
      0,
      100,
    );
    expect(held).toBeCloseTo(49.9, 6);
  });

  it("never overlaps and keeps the order of the anchors", () => {
    fc.assert(
      fc.property(fc.array(item, { maxLength: 30 }), (items) => {
        const places = spreadLabels(items, 0, Number.POSITIVE_INFINITY);
        const order = items
          .map((_, index) => index)
          .sort((a, b) => (items[a]?.anchor ?? 0) - (items[b]?.anchor ?? 0) || a - b);
        for (const [rank, index] of order.entries()) {
          const before = order[rank - 1];
          if (before === undefined) continue;
          const room = ((items[index]?.extent ?? 0) + (items[before]?.extent ?? 0)) / 2;
          expect((places[index] ?? 0) - (places[before] ?? 0)).toBeGreaterThanOrEqual(room - 1e-6);
        }
      }),
    );
  });

  it("keeps within its bounds where the labels fit", () => {
    const small = fc.array(
      fc.record({ anchor: fc.double({ min: -50, max: 150, noNaN: true }), extent: fc.constant(9) }),
      { maxLength: 10 },
    );
    fc.assert(
      fc.property(small, (items) => {
        for (const place of spreadLabels(items, 0, 100)) {
          expect(place).toBeGreaterThanOrEqual(4.5 - 1e-6);
          expect(place).toBeLessThanOrEqual(95.5 + 1e-6);
        }
      }),
    );
  });
});
