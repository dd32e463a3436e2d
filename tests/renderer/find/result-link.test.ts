import { expect, test } from "vitest";
import {
  placeOfCalculator,
  placeOfCheckPlan,
  placeOfResult,
} from "../../../renderer/features/find/result-link.ts";
import { sinceDays } from "../../../renderer/features/find/since-days.ts";

const none = { liftId: null, calloutId: null };

test("a note and a calculator keep the lift they are read for", () => {
  expect(placeOfResult({ kind: "note", id: "n", ...none }, "l")).toEqual({
    to: "/note/n",
    search: { lift: "l" },
  });
  expect(placeOfResult({ kind: "note", id: "n", ...none }, null)).toEqual({ to: "/note/n" });
  expect(placeOfCalculator("zone-sensors", "l", "n")).toEqual({
    to: "/bench/zone-sensors",
    search: { lift: "l", note: "n" },
  });
  expect(placeOfCheckPlan("zone-sensors", null)).toEqual({ to: "/checks", search: { plan: "zone-sensors" } });
});

test("a recorded fix opens with its callout, else with its lift", () => {
  expect(placeOfResult({ kind: "fix", id: "f", liftId: "l", calloutId: "c" }, null)).toEqual({
    to: "/callout/c",
  });
  expect(placeOfResult({ kind: "fix", id: "f", liftId: "l", calloutId: null }, null)).toEqual({
    to: "/lift/l",
  });
  expect(placeOfResult({ kind: "fix", id: "f", ...none }, null)).toBeNull();
});

test("first days are counted back in the local calendar", () => {
  expect(sinceDays(new Date(2026, 0, 15, 23, 59)).map(({ id }) => id)).toEqual([
    "2025-12-16",
    "2025-07-15",
    "2025-01-15",
    "2024-01-15",
    "2021-01-15",
  ]);
});
