import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { carRange, draggedLevel, landingTyped, levelAfterKey } from "#shared-lib/drawings/car-moves.ts";
import { arbitraryLift, eightLandings } from "./arbitrary-lift.ts";

describe("moving the drawn car", () => {
  const levelAfter = (level: number, key: string, shift = false) =>
    levelAfterKey(eightLandings, level, { key, shift });

  it("goes 10 mm by arrow, 1 mm with Shift, by landing with the Page keys", () => {
    expect(levelAfter(8.8, "ArrowUp")).toBe(8.81);
    expect(levelAfter(8.8, "ArrowDown", true)).toBe(8.799);
    expect(levelAfter(8.81, "PageDown")).toBe(8.8);
    expect(levelAfter(8.8, "PageDown")).toBe(6);
    expect(levelAfter(8.8, "PageUp")).toBe(11.6);
    expect(levelAfter(20, "PageUp")).toBe(20);
    expect(levelAfter(8.8, "Home")).toBe(0);
    expect(levelAfter(8.8, "End")).toBe(20);
    expect(levelAfter(8.8, "x")).toBeNull();
  });

  it("never leaves its range, whatever the keys", () => {
    const keys = fc.array(fc.constantFrom("ArrowUp", "ArrowDown", "PageUp", "PageDown", "Home", "End"), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(arbitraryLift, keys, (lift, pressed) => {
        const { lowest, highest } = carRange(lift);
        let level = lowest;
        for (const key of pressed) level = levelAfterKey(lift, level, { key, shift: false }) ?? level;
        expect(level).toBeGreaterThanOrEqual(lowest - 0.001);
        expect(level).toBeLessThanOrEqual(highest + 0.001);
      }),
    );
  });

  it("rests on a sill when it is dragged near one, and goes in 10 mm elsewhere", () => {
    expect(draggedLevel(eightLandings, 8.86, 0.1)).toBe(8.8);
    expect(draggedLevel(eightLandings, 9.4567, 0.1)).toBe(9.46);
    expect(draggedLevel(eightLandings, 99, 0.1)).toBeCloseTo(20.22, 6);
    expect(draggedLevel(eightLandings, Number.NaN, 0.1)).toBeCloseTo(-0.22, 6);
  });

  it("finds the landing that typed characters mean", () => {
    const markings = ["B1", "0", "1", "2", "12"];
    const lift = {
      ...eightLandings,
      landings: markings.map((marking, index) => ({
        id: marking,
        marking,
        name: "",
        levelMetres: index * 3,
        entrances: "front" as const,
      })),
    };
    expect(landingTyped(lift, "1")?.marking).toBe("1");
    expect(landingTyped(lift, "12")?.marking).toBe("12");
    expect(landingTyped(lift, "b")?.marking).toBe("B1");
    expect(landingTyped(lift, "9")).toBeNull();
    expect(landingTyped(lift, "")).toBeNull();
  });
});
