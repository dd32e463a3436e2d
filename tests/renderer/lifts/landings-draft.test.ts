import { expect, test } from "vitest";
import type { Landing } from "#shared-lib/contract/lift.ts";
import {
  addLanding,
  changeLanding,
  draftOfLandings,
  moveLanding,
  readLandings,
  removeLanding,
} from "../../../renderer/features/lifts/landings-draft.ts";

const landing = (id: string, marking: string, level: number): Landing => ({
  id,
  version: 3,
  createdAt: "2026-01-01T00:00:00.000Z",
  liftId: "lift",
  marking,
  name: `Floor ${marking}`,
  level,
  entrances: "front",
});
const two = [landing("a", "0", 0), landing("b", "1", 2.805)];

test("rows stand from the highest down and read back as what was saved", () => {
  const draft = draftOfLandings(two, true);
  expect(draft.rows.map((row) => [row.marking, row.level])).toEqual([
    ["1", "2.805"],
    ["0", "0.00"],
  ]);
  expect(draft.seen).toEqual([
    { id: "a", version: 3 },
    { id: "b", version: 3 },
  ]);
  expect(readLandings(draft.rows).landings).toEqual([
    { id: "b", marking: "1", name: "Floor 1", level: 2.805, entrances: "front" },
    { id: "a", marking: "0", name: "Floor 0", level: 0, entrances: "front" },
  ]);
});

test("a new row needs a marking and a level, each said at its field", () => {
  const draft = addLanding(draftOfLandings(two, true), "new");
  const reading = readLandings(draft.rows);
  expect(reading.landings).toBeNull();
  expect(reading.problems).toEqual({
    new: { marking: "Write what stands at the landing.", level: "Give the level in metres." },
  });
});

test("two landings with one marking or one level are refused at both", () => {
  const same = changeLanding(draftOfLandings(two, true), "a", { marking: "1", level: "2,805" });
  expect(Object.keys(readLandings(same.rows).problems).sort()).toEqual(["a", "b"]);
});

test("moving changes places and leaves the levels where they are; the ends do not move", () => {
  const draft = draftOfLandings(two, true);
  const moved = moveLanding(draft, "a", -1);
  expect(moved.rows.map((row) => [row.id, row.level])).toEqual([
    ["a", "2.805"],
    ["b", "0.00"],
  ]);
  expect(moveLanding(draft, "b", -1)).toBe(draft);
  expect(removeLanding(draft, "b").rows.map((row) => row.id)).toEqual(["a"]);
});
