import { expect, test } from "vitest";
import { readDay } from "../../../renderer/features/callout/read-day.ts";

const now = new Date(2026, 10, 24, 10, 30);

test.each([
  ["today", "2026-11-24"],
  ["Tomorrow", "2026-11-25"],
  ["in 3 days", "2026-11-27"],
  ["in 2 weeks", "2026-12-08"],
  ["27 Nov", "2026-11-27"],
  ["2026-12-01", "2026-12-01"],
  ["3 Jan", "2027-01-03"],
])("%s is read as %s", (text, day) => {
  expect(readDay(text, now)).toBe(day);
});

test.each(["", "soon", "35 Nov", "in a while"])("%j is no day", (text) => {
  expect(readDay(text, now)).toBeNull();
});
