import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readTime } from "#shared-lib/time-words.ts";

/** Tuesday, 17 November 2026, 10:42 local time. */
const now = new Date(2026, 10, 17, 10, 42);

function read(text: string, direction: "past" | "future" = "past"): Date | string {
  const reading = readTime(text, now, direction);
  if (reading.kind === "moment") return new Date(reading.at);
  return reading.kind === "empty" ? "empty" : reading.problem;
}

describe("past", () => {
  test.each([
    ["09:05", new Date(2026, 10, 17, 9, 5)],
    ["9.05", new Date(2026, 10, 17, 9, 5)],
    ["0905", new Date(2026, 10, 17, 9, 5)],
    ["at 9:05", new Date(2026, 10, 17, 9, 5)],
    ["10:45", new Date(2026, 10, 17, 10, 45)],
    ["23:50", new Date(2026, 10, 16, 23, 50)],
    ["now", now],
    ["10 min ago", new Date(2026, 10, 17, 10, 32)],
    ["2 h ago", new Date(2026, 10, 17, 8, 42)],
    ["1 h 30 min ago", new Date(2026, 10, 17, 9, 12)],
    ["yesterday 14:10", new Date(2026, 10, 16, 14, 10)],
    ["Yesterday, 1410", new Date(2026, 10, 16, 14, 10)],
    ["today 23:50", new Date(2026, 10, 17, 23, 50)],
    ["Tue 09:05", new Date(2026, 10, 17, 9, 5)],
    ["Tue 23:00", new Date(2026, 10, 10, 23, 0)],
    ["Friday 08:00", new Date(2026, 10, 13, 8, 0)],
    ["17 Nov 09:05", new Date(2026, 10, 17, 9, 5)],
    ["Nov 17 09:05", new Date(2026, 10, 17, 9, 5)],
    ["30 Dec 09:05", new Date(2025, 11, 30, 9, 5)],
    ["17 November 2025, 09:05", new Date(2025, 10, 17, 9, 5)],
    ["17.11. 09:05", new Date(2026, 10, 17, 9, 5)],
    ["17.11.2025 09:05", new Date(2025, 10, 17, 9, 5)],
    ["2026-11-16 09:05", new Date(2026, 10, 16, 9, 5)],
    ["29 Feb 09:05", new Date(2024, 1, 29, 9, 5)],
  ])("%s", (text, expected) => {
    expect(read(text)).toEqual(expected);
  });
});

describe("future", () => {
  test.each([
    ["09:05", new Date(2026, 10, 18, 9, 5)],
    ["14:00", new Date(2026, 10, 17, 14, 0)],
    ["tomorrow 08:00", new Date(2026, 10, 18, 8, 0)],
    ["Mon 08:00", new Date(2026, 10, 23, 8, 0)],
    ["3 Jan 08:00", new Date(2027, 0, 3, 8, 0)],
  ])("%s", (text, expected) => {
    expect(read(text, "future")).toEqual(expected);
  });
});

describe("what is no moment is said in a sentence", () => {
  test("a day alone is asked for its time, also when it ends with a year", () => {
    expect(read("17 Nov")).toMatch(/^At what time on 17\u00a0Nov\?/);
    expect(read("17 Nov 2025")).toMatch(/^At what time on 17\u00a0Nov\?/);
  });
  test.each(["25:00", "9:60", "31 Feb 09:05", "soon", "17 Foo 09:05", "Satellite 09:05", "ago"])(
    "%s",
    (text) => {
      expect(read(text)).toContain(`“${text}” is not understood as a time.`);
    },
  );
  test("empty is no mistake", () => {
    expect(read(" ")).toBe("empty");
  });
});

test("a time of day alone never lies more than five minutes ahead nor a day back", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }), (hours, minutes) => {
      const moment = read(`${hours}:${String(minutes).padStart(2, "0")}`);
      if (!(moment instanceof Date)) throw new Error(`Not read: ${moment}`);
      const behind = now.getTime() - moment.getTime();
      expect(behind).toBeGreaterThanOrEqual(-5 * 60_000);
      expect(behind).toBeLessThan(24 * 3_600_000);
      expect(moment.getMinutes()).toBe(minutes);
    }),
  );
});

describe("a zone whose clocks change", () => {
  const before = process.env.TZ;
  beforeAll(() => {
    process.env.TZ = "Europe/Berlin";
  });
  afterAll(() => {
    if (before === undefined) delete process.env.TZ;
    else process.env.TZ = before;
  });
  test("an hour that does not exist is refused, the hours around it are read", () => {
    const later = new Date("2026-03-29T18:00:00Z");
    const at = (text: string) => {
      const reading = readTime(text, later);
      return reading.kind === "moment" ? reading.at : reading.kind;
    };
    expect(at("29 Mar 01:30")).toBe("2026-03-29T00:30:00.000Z");
    expect(at("29 Mar 02:30")).toBe("unclear");
    expect(at("29 Mar 03:30")).toBe("2026-03-29T01:30:00.000Z");
  });
});
