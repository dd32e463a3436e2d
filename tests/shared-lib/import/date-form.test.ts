import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type DateForm,
  momentOf,
  possibleDateForms,
  readDate,
  readTime,
} from "#shared-lib/import/date-form.ts";

const day = fc.date({
  min: new Date("1954-06-01T00:00:00Z"),
  max: new Date("2089-12-31T00:00:00Z"),
  noInvalidDate: true,
});
const two = (number: number): string => String(number).padStart(2, "0");
const minutesOfDay = 24 * 60;

/** The day written in a form, as people and spreadsheets do. */
function written(date: Date, form: DateForm, sign: string): string {
  const [year, month, dayOfMonth] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
  switch (form) {
    case "year first":
      return [year, two(month), two(dayOfMonth)].join(sign);
    case "day first":
      return [two(dayOfMonth), two(month), year].join(sign);
    case "month first":
      return [month, dayOfMonth, year].join(sign);
    default: {
      const epoch = form === "serial from 1900" ? Date.UTC(1899, 11, 30) : Date.UTC(1904, 0, 1);
      return String(Math.floor((date.getTime() - epoch) / 86_400_000));
    }
  }
}

describe("dates of old tables", () => {
  test("what is written in a form is read in it", () => {
    const form = fc.constantFrom<DateForm>(
      "year first",
      "day first",
      "month first",
      "serial from 1900",
      "serial from 1904",
    );
    fc.assert(
      fc.property(day, form, fc.constantFrom("/", "-", "."), (date, wanted, sign) => {
        expect(readDate(written(date, wanted, sign), wanted)).toEqual({
          year: date.getUTCFullYear(),
          month: date.getUTCMonth() + 1,
          day: date.getUTCDate(),
          hour: null,
          minute: 0,
        });
      }),
    );
  });

  test("a serial number carries its time to the minute", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20_000, max: 70_000 }),
        fc.integer({ min: 1, max: minutesOfDay - 1 }),
        (days, minutes) => {
          const read = readDate(String(days + minutes / minutesOfDay), "serial from 1900");
          expect((read?.hour ?? 0) * 60 + (read?.minute ?? 0)).toBe(minutes);
        },
      ),
    );
  });

  test.each([
    ["31/02/2025", "day first"],
    ["29.02.2023", "day first"],
    ["13/13/2025", "day first"],
    ["0/4/2025", "day first"],
    ["2025", "serial from 1900"],
    ["yesterday", "day first"],
    ["03/04/2025 25:10", "day first"],
    ["", "year first"],
  ] as const)("%s is no date (%s)", (cell, form) => {
    expect(readDate(cell, form)).toBeNull();
  });

  test.each([
    ["3 Apr 2025 8:05", "day first", [2025, 4, 3, 8, 5]],
    ["03-April-25", "month first", [2025, 4, 3, null, 0]],
    ["2025-04-03T08:05:30Z", "year first", [2025, 4, 3, 8, 5]],
    ["3/4/25 8.05 pm", "day first", [2025, 4, 3, 20, 5]],
    ["3/4/87", "month first", [1987, 3, 4, null, 0]],
  ] as const)("%s (%s)", (cell, form, [year, month, dayOfMonth, hour, minute]) => {
    expect(readDate(cell, form)).toEqual({ year, month, day: dayOfMonth, hour, minute });
  });

  test("03/04/2025 alone has to be asked about; one day after the 12th settles it, a slip of the pen does not", () => {
    expect(possibleDateForms(["03/04/2025", "05/06/2025"])).toEqual(["day first", "month first"]);
    expect(possibleDateForms(["03/04/2025", "13/04/2025"])).toEqual(["day first"]);
    expect(possibleDateForms(["03/04/2025", "04/13/2025", "31/02/2025"])).toEqual(["month first"]);
    expect(possibleDateForms(["2025-04-03", ""])).toEqual(["year first"]);
    expect(possibleDateForms(["45750", "45751.5"])).toEqual(["serial from 1900", "serial from 1904"]);
    expect(possibleDateForms(["low", "high", "3/4/2025"])).toEqual([]);
  });

  test("times of day", () => {
    expect(["8:05", "08.05", "8:05 pm", "12:00 am", "8h05"].map(readTime)).toEqual([485, 485, 1205, 0, 485]);
    expect(["24:00", "8:60", "13:00 pm", "noon", ""].map(readTime)).toEqual([null, null, null, null, null]);
  });

  test("a day without a time is noon on this machine, so that it stays that day", () => {
    const read = readDate("2025-04-03", "year first");
    const at = new Date(read ? momentOf(read, null) : "");
    expect([at.getFullYear(), at.getMonth(), at.getDate(), at.getHours()]).toEqual([2025, 3, 3, 12]);
    const timed = new Date(read ? momentOf(read, 485) : "");
    expect([timed.getHours(), timed.getMinutes()]).toEqual([8, 5]);
  });
});
