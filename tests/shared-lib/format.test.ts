import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  formatDate,
  formatDayAndTime,
  formatFraction,
  formatLevel,
  formatNumber,
  formatQuantity,
  formatSigned,
  formatSince,
  formatStoredDay,
  formatTime,
  formatTolerance,
  formatWait,
} from "#shared-lib/format.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const minutes = (count: number) => count * 60_000;

describe("moments in the time of the machine", () => {
  const moment = new Date(2026, 10, 17, 8, 5);
  test("time, date, both", () => {
    expect(formatTime(moment)).toBe("08:05");
    expect(plain(formatDate(moment.toISOString()))).toBe("17 Nov 2026");
    expect(plain(formatDayAndTime(moment))).toBe("17 Nov 2026, 08:05");
  });
  test("since: as short as is clear", () => {
    const now = new Date(2026, 10, 17, 20, 0);
    expect(formatSince(moment, now)).toBe("08:05");
    expect(plain(formatSince(new Date(2026, 10, 16, 9, 0), now))).toBe("16 Nov, 09:00");
    expect(plain(formatSince(new Date(2025, 10, 17, 9, 0), now))).toBe("17 Nov 2025, 09:00");
  });
  test("a stored day has no time zone", () => {
    expect(plain(formatStoredDay("2026-01-01"))).toBe("1 Jan 2026");
    expect(() => formatStoredDay("2026-13-01")).toThrow(RangeError);
    expect(() => formatTime("yesterday")).toThrow(RangeError);
  });
});

describe("waiting", () => {
  test.each([
    [0, "0 min"],
    [minutes(6) + 59_999, "6 min"],
    [minutes(60), "1 h 00"],
    [minutes(110), "1 h 50"],
    [minutes(24 * 60 - 1), "23 h 59"],
    [minutes(52 * 60), "2 d 4 h"],
    [-minutes(3), "0 min"],
  ])("%d ms", (milliseconds, words) => {
    expect(plain(formatWait(milliseconds))).toBe(words);
  });
  test("the words never say more than the wait", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 10 }), (milliseconds) => {
        const numbers = (plain(formatWait(milliseconds)).match(/\d+/g) ?? []).map(Number);
        const [first = 0, second = 0] = numbers;
        const text = plain(formatWait(milliseconds));
        const said = text.includes("d")
          ? first * 1440 + second * 60
          : text.includes("h")
            ? first * 60 + second
            : first;
        expect(minutes(said)).toBeLessThanOrEqual(milliseconds);
        expect(milliseconds - minutes(said)).toBeLessThan(minutes(text.includes("d") ? 60 : 1));
      }),
    );
  });
});

describe("numbers", () => {
  test("signs are drawn, zero has none or both", () => {
    expect(formatNumber(-17)).toBe("−17");
    expect(formatNumber(-0.004, 2)).toBe("0.00");
    expect(formatSigned(-1.3, 2)).toBe("−1.30");
    expect(formatLevel(8.8)).toBe("+8.80");
    expect(formatLevel(-0.001)).toBe("±0.00");
    expect(() => formatNumber(Number.NaN)).toThrow(RangeError);
  });
  test("a unit stands after a no-break space", () => {
    expect(formatQuantity(0.3, "m/s", 2)).toBe("0.30\u00a0m/s");
    expect(formatTolerance(-5, "mm")).toBe("±5\u00a0mm");
    expect(plain(formatFraction(3, 9))).toBe("3 of 9");
  });
  test("what is written reads back as the rounded number", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const back = Number(formatNumber(value, 3).replace("−", "-"));
        expect(Math.abs(back - value)).toBeLessThanOrEqual(0.000501);
      }),
    );
  });
});
