import { expect, test } from "vitest";
import {
  type EndingDraft,
  endingAdvice,
  endingProblems,
  toEndInput,
} from "../../../renderer/features/callout/ending-draft.ts";

const now = new Date(2026, 10, 24, 10, 30);
const draft: EndingDraft = {
  ending: "repaired",
  group: "doors",
  reason: "",
  awaits: null,
  returnVisit: "",
  at: "10:20",
  atTouched: false,
  asked: false,
};

test("an untouched time is left to the program, a typed one is sent", () => {
  expect(toEndInput(draft, "repaired", now)).not.toHaveProperty("at");
  expect(toEndInput({ ...draft, atTouched: true }, "repaired", now).at).toBe(
    new Date(2026, 10, 24, 10, 20).toISOString(),
  );
});

test("left out of service asks why and what is awaited", () => {
  expect(Object.keys(endingProblems({ ...draft, ending: "left out of service" }, now))).toEqual([
    "reason",
    "awaits",
  ]);
  const complete = { ...draft, ending: "left out of service", reason: "No part", awaits: "part" } as const;
  expect(endingProblems({ ...complete, returnVisit: "27 Nov" }, now)).toEqual({});
  expect(toEndInput({ ...complete, returnVisit: "27 Nov" }, "left out of service", now)).toMatchObject({
    awaits: "part",
    returnVisitOn: "2026-11-27",
  });
});

test("what does not belong to the ending stays typed and is not sent", () => {
  const typed = { ...draft, awaits: "part", returnVisit: "27 Nov" } as const;
  expect(toEndInput(typed, "cancelled", now)).toMatchObject({ awaits: null, returnVisitOn: null });
  expect(toEndInput(typed, "nothing found", now)).toMatchObject({
    awaits: null,
    returnVisitOn: "2026-11-27",
  });
});

test("a day and a time that cannot be read are said at their fields", () => {
  const problems = endingProblems({ ...draft, returnVisit: "soon", at: "noonish", atTouched: true }, now);
  expect(problems.returnVisit).toContain("no day");
  expect(problems.at).toBeDefined();
});

test("an out-of-service lift is named before repaired is tried", () => {
  expect(endingAdvice("repaired", "out of service")).toContain("Record back in service first");
  expect(endingAdvice("repaired", "in service")).not.toContain("Record back in service first");
});
