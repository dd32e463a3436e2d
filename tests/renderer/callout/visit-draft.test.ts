import fc from "fast-check";
import { expect, test } from "vitest";
import {
  fixOf,
  readPart,
  toVisitFields,
  type VisitDraft,
  visitProblems,
  writePart,
} from "../../../renderer/features/callout/visit-draft.ts";

const now = new Date(2026, 10, 24, 10, 30);
const draft: VisitDraft = {
  version: null,
  kind: "callout",
  engineerId: "person",
  arrived: "09:05",
  left: "",
  found: " door rollers worn ",
  done: "",
  cause: "",
  fix: "",
  group: "doors",
  parts: "",
  readings: "",
  displayReading: "",
  chargeable: "not decided",
  asked: false,
};

test.each([
  ["door roller", { name: "door roller", quantity: 1, marking: "" }],
  ["2 door rollers, DR-40", { name: "door rollers", quantity: 2, marking: "DR-40" }],
  ["4 x M8 bolt", { name: "M8 bolt", quantity: 4, marking: "" }],
  ["24V relay", { name: "24V relay", quantity: 1, marking: "" }],
  ["1.5 cable, grey", { name: "cable", quantity: 1.5, marking: "grey" }],
])("the part %j", (line, part) => {
  expect(readPart(line)).toEqual(part);
});

test("a part that is written is read as the same part", () => {
  const word = fc.stringMatching(/^[a-z][a-z -]{0,20}[a-z]$/).filter((text) => !text.startsWith("x "));
  const marking = fc.oneof(fc.constant(""), fc.stringMatching(/^[A-Z0-9-]{1,10}$/));
  fc.assert(
    fc.property(word, fc.integer({ min: 0, max: 999 }), marking, (name, quantity, mark) => {
      const part = { name, quantity, marking: mark };
      expect(readPart(writePart(part))).toEqual(part);
    }),
  );
});

test.each([
  { name: "24 V relay", quantity: 1, marking: "" },
  { name: "roller, left", quantity: 1, marking: "" },
  { name: "roller, left", quantity: 2, marking: "R-1" },
])("a part whose name could be misread stays itself: $name", (part) => {
  expect(readPart(writePart(part))).toEqual(part);
});

test("a cause without its fix, and a fix without its cause, are asked for", () => {
  expect(visitProblems(draft, now)).toEqual({});
  expect(visitProblems({ ...draft, cause: "worn" }, now).fix).toContain("what ended it");
  expect(visitProblems({ ...draft, fix: "renewed" }, now).cause).toContain("what the cause was");
  expect(fixOf({ ...draft, cause: "worn" })).toBeNull();
  expect(fixOf({ ...draft, cause: " worn ", fix: "renewed" })).toEqual({
    cause: "worn",
    fix: "renewed",
    group: "doors",
  });
});

test("times are read in words, and what cannot be read is said", () => {
  expect(visitProblems({ ...draft, arrived: "" }, now).arrived).toBeDefined();
  expect(visitProblems({ ...draft, left: "laterish" }, now).left).toBeDefined();
  const fields = toVisitFields({ ...draft, left: "10:10", readings: "24.1 V at 7\n\n" }, "person", now);
  expect(fields).toMatchObject({
    arrivedAt: new Date(2026, 10, 24, 9, 5).toISOString(),
    leftAt: new Date(2026, 10, 24, 10, 10).toISOString(),
    found: "door rollers worn",
    chargeable: null,
    readings: ["24.1 V at 7"],
  });
});
