import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { letteringWidth } from "#shared-lib/drawings/text-width.ts";
import { barSentence, groupBarsLayout } from "../../../renderer/features/review/group-bars-layout.ts";
import { timeTicks } from "../../../renderer/features/review/time-ticks.ts";

const local = (day: string) => new Date(`${day}T00:00:00`).getTime();

describe("the time axis", () => {
  test("shows days in a month, months in a year, years in many", () => {
    const words = (from: string, to: string) => timeTicks(local(from), local(to)).map((tick) => tick.words);
    expect(words("2026-10-19", "2026-11-18")).toEqual([
      "19 Oct",
      "24 Oct",
      "29 Oct",
      "3 Nov",
      "8 Nov",
      "13 Nov",
    ]);
    expect(words("2025-11-18", "2026-11-18")).toEqual(["Jan 2026", "Mar", "May", "Jul", "Sep", "Nov"]);
    expect(words("2021-06-01", "2026-06-01")).toEqual(["2022", "2023", "2024", "2025", "2026"]);
    expect(timeTicks(local("2026-01-02"), local("2026-01-02"))).toEqual([]);
  });

  test("never has more than six lines, all within the time and in order", () => {
    const moment = fc.integer({ min: local("1990-01-01"), max: local("2090-01-01") });
    fc.assert(
      fc.property(moment, moment, (a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const at = timeTicks(from, to).map((tick) => tick.at);
        expect(at.length).toBeLessThanOrEqual(6);
        expect(at.every((one) => one >= from && one <= to)).toBe(true);
        expect([...at].sort((one, other) => one - other)).toEqual(at);
      }),
    );
  });
});

describe("the bars of the fault groups", () => {
  const bar = fc.record({
    id: fc.uuid(),
    title: fc.constantFrom("Doors", "Controller and power supply", "Car, lighting, ventilation"),
    count: fc.nat(20_000),
    yearBefore: fc.option(fc.nat(20_000)),
  });

  test("are as long as their counts from one zero, and stay within the width", () => {
    fc.assert(
      fc.property(
        fc.array(bar, { minLength: 1, maxLength: 17 }),
        fc.integer({ min: 420, max: 1200 }),
        fc.constantFrom(14, 28),
        (bars, width, textSize) => {
          const layout = groupBarsLayout(bars, width, textSize);
          const [zero] = layout.ticks;
          expect(zero).toEqual({ x: layout.left, words: "0" });
          const last = layout.ticks.at(-1);
          const perCallout = ((last?.x ?? 0) - layout.left) / Number(last?.words);
          for (const row of layout.rows) {
            expect(row.now).toBeCloseTo(row.bar.count * perCallout, 0);
            expect(row.before).toEqual(row.bar.yearBefore === null ? null : expect.any(Number));
            expect(row.height).toBeGreaterThanOrEqual(44);
            const end = row.nowWords.x + letteringWidth(String(row.bar.count), textSize, true);
            expect(end).toBeLessThanOrEqual(layout.width);
          }
          expect(layout.ticks.length).toBeLessThanOrEqual(6);
        },
      ),
    );
  });

  test("are read out in words", () => {
    expect(barSentence({ id: "doors", title: "Doors", count: 69, yearBefore: 70 })).toBe(
      "Doors: 69 callouts, a year before 70",
    );
    expect(barSentence({ id: "brake", title: "Brake", count: 1, yearBefore: null })).toBe("Brake: 1 callout");
  });
});
