import { expect, test } from "vitest";
import { shownChanges } from "../../../renderer/features/callout/change-words.ts";

const id = "0199aaaa-0000-7000-8000-000000000001";
const nameOf = (one: string) => (one === id ? "Bram Oakes" : undefined);

test("ids are shown as names, and never as themselves", () => {
  expect(shownChanges([{ field: "engineerId", before: null, after: id }], nameOf)).toEqual([
    { name: "With", before: "empty", after: "Bram Oakes" },
  ]);
  const other = id.replace("1", "2");
  expect(shownChanges([{ field: "liftId", before: id, after: other }], nameOf)[0]?.after).toBe(
    "another record",
  );
});

test("moments and days are written as people write them; bookkeeping is left out", () => {
  const at = new Date(2026, 10, 17, 8, 52).toISOString();
  expect(
    shownChanges(
      [
        { field: "endedAt", before: null, after: at },
        { field: "returnVisitOn", before: null, after: "2026-11-27" },
        { field: "groupSettled", before: false, after: true },
      ],
      nameOf,
    ).map(({ after }) => after.replaceAll("\u00a0", " ")),
  ).toEqual(["17 Nov 2026, 08:52", "27 Nov 2026"]);
});
