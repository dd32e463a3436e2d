import { describe, expect, test } from "vitest";
import { readDate } from "#shared-lib/import/date-form.ts";

// Serial numbers of days: ECMA-376-1:2016 18.17.4.1 (date systems of 1900 and 1904). Values from memory; the two systems lie
// 1,462 days apart.
describe("serial numbers of spreadsheet days", () => {
  test.each([
    ["36526", "serial from 1900", "2000-01-01"],
    ["39448", "serial from 1900", "2008-01-01"],
    ["43831", "serial from 1900", "2020-01-01"],
    ["37986", "serial from 1904", "2008-01-01"],
    ["42369", "serial from 1904", "2020-01-01"],
  ] as const)("%s (%s) is %s", (cell, form, expected) => {
    const read = readDate(cell, form);
    expect(read && [read.year, read.month, read.day].join("-")).toBe(
      expected.split("-").map(Number).join("-"),
    );
  });

  test("half a day is noon", () => {
    expect(readDate("36526.5", "serial from 1900")).toMatchObject({ hour: 12, minute: 0 });
  });
});
