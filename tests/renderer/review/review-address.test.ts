import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { faultGroups } from "#shared-lib/words.ts";
import {
  daysOf,
  lastTimes,
  localMidnight,
  momentsOf,
  readReviewAddress,
  storedDay,
  writeReviewAddress,
} from "../../../renderer/features/review/review-address.ts";

const today = "2026-11-17";
const site = "0199aaaa-0000-7000-8000-000000000001";

const day = fc
  .date({ min: new Date("2001-01-01T12:00:00"), max: new Date("2090-12-31T12:00:00"), noInvalidDate: true })
  .map(storedDay);

describe("the address", () => {
  test("is read as it was written", () => {
    const own = fc.tuple(day, day).map(([a, b]) => (a <= b ? { from: a, until: b } : { from: b, until: a }));
    const time = fc.oneof(
      own.map((days) => ({ last: "year" as const, ...days })),
      fc.constantFrom(...lastTimes).map((last) => ({ last, from: null, until: null })),
    );
    const address = fc.tuple(time, fc.constantFrom(null, site), fc.constantFrom(null, ...faultGroups));
    fc.assert(
      fc.property(address, ([when, where, group]) => {
        const given = { ...when, site: where, group };
        expect(readReviewAddress(writeReviewAddress(given), today)).toEqual(given);
      }),
    );
  });

  test("holds anything, and what fits nothing is left out", () => {
    const usual = { last: "year", from: null, until: null, site: null, group: null };
    expect(readReviewAddress({}, today)).toEqual(usual);
    for (const from of ["yesterday", "2026-02-30", "2026-13-01", 20261117, null, ["2026-11-01"]])
      expect(readReviewAddress({ from, site: "7", group: "paint", last: "decade" }, today)).toEqual(usual);
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom("from", "until", "last", "site", "group"), fc.anything()),
        (search) => {
          const read = readReviewAddress(search, today);
          const { from, until } = momentsOf(daysOf(read, today));
          expect(from < until).toBe(true);
        },
      ),
    );
  });

  test("a day alone counts with today or the year before it, and two days stand in order", () => {
    const read = (search: object) => daysOf(readReviewAddress({ ...search }, today), today);
    expect(read({ from: "2026-11-01" })).toEqual({ from: "2026-11-01", until: today });
    expect(read({ from: "2027-01-05" })).toEqual({ from: "2027-01-05", until: "2027-01-05" });
    expect(read({ until: "2026-03-31" })).toEqual({ from: "2025-04-01", until: "2026-03-31" });
    expect(read({ from: "2026-03-31", until: "2026-03-01" })).toEqual({
      from: "2026-03-01",
      until: "2026-03-31",
    });
  });
});

describe("the times that go with the calendar", () => {
  test("end with today", () => {
    const of = (last: string, now = today) => daysOf(readReviewAddress({ last }, now), now);
    expect(of("year")).toEqual({ from: "2025-11-18", until: today });
    expect(of("quarter")).toEqual({ from: "2026-08-18", until: today });
    expect(of("30 days")).toEqual({ from: "2026-10-19", until: today });
    // February is shorter than the last day of May, and one year before 29 February there is none.
    expect(of("quarter", "2026-05-31").from).toBe("2026-03-01");
    expect(of("year", "2028-02-29").from).toBe("2027-03-01");
  });

  test("both days belong to the period, whole, also where the clocks change", () => {
    fc.assert(
      fc.property(day, (one) => {
        const { from, until } = momentsOf({ from: one, until: one });
        expect(from).toBe(localMidnight(one).toISOString());
        const hours = (Date.parse(until) - Date.parse(from)) / 3_600_000;
        expect(hours).toBeGreaterThanOrEqual(23);
        expect(hours).toBeLessThanOrEqual(25);
        expect(storedDay(new Date(Date.parse(until) - 1))).toBe(one);
      }),
    );
  });
});
