import { expect, test } from "vitest";
import type { SearchHit } from "#shared-lib/contract/search.ts";
import {
  foldGroups,
  groupsOfAnswer,
  groupsOfNotes,
  type ResultGroup,
  stepThrough,
} from "../../../renderer/features/find/result-groups.ts";

function hit(kind: SearchHit["kind"], id: string, more: Partial<SearchHit> = {}): SearchHit {
  return {
    kind,
    id,
    title: id,
    titleMarks: [[0, 1]],
    second: "",
    secondMarks: [],
    why: "",
    number: null,
    status: null,
    liftId: null,
    calloutId: null,
    at: null,
    score: 1,
    ...more,
  };
}

const answer = {
  alsoReadAs: [],
  corrections: [],
  advice: null,
  warming: false,
  groups: [
    {
      kind: "note" as const,
      total: 9,
      hits: ["a", "b", "c"].map((id) => hit("note", id, { status: "withdrawn" })),
    },
    { kind: "callout" as const, total: 1, hits: [hit("callout", "d", { status: "open" })] },
  ],
};

test("groups keep their order, count all and mark their lines by kind and status", () => {
  const groups = groupsOfAnswer(answer);
  expect(groups.map(({ title, total }) => [title, total])).toEqual([
    ["Fault notes", 9],
    ["Callouts", 1],
  ]);
  expect(groups[0]?.items[0]).toMatchObject({ mark: "note withdrawn", titleMarks: [{ start: 0, end: 1 }] });
  expect(groups[1]?.items[0]).toMatchObject({ mark: "received", markWord: "open callout" });
});

test("a group that was not opened is cut, its count is not", () => {
  const [folded] = foldGroups(groupsOfAnswer(answer), new Set(), 2);
  expect([folded?.items.length, folded?.total]).toEqual([2, 9]);
  const [opened] = foldGroups(groupsOfAnswer(answer), new Set(["note"]), 2);
  expect(opened?.items.length).toBe(3);
});

test("the arrows walk over the borders of groups and stop at both ends", () => {
  const groups = groupsOfAnswer(answer);
  const walk = (keys: readonly (1 | -1)[]) =>
    keys.reduce<string | null>((at, step) => stepThrough(groups, at, step), null);
  expect(walk([1])).toBe("note a");
  expect(walk([1, 1, 1, 1])).toBe("callout d");
  expect(walk([1, 1, 1, 1, 1, 1])).toBe("callout d");
  expect(walk([1, 1, -1, -1])).toBe("note a");
  expect(stepThrough(groups, "note gone", 1)).toBe("note a");
  expect(stepThrough([] as ResultGroup[], "note a", 1)).toBeNull();
});

test("all notes stand under their fault groups, in the order of the trade's list", () => {
  const note = { number: "A-N001", status: "draft", starter: true, callouts: 0, lifts: 0 } as const;
  const groups = groupsOfNotes([
    { ...note, id: "1", title: "Bus", group: "panel bus and cabling" },
    { ...note, id: "2", title: "Door", group: "doors", callouts: 1, lifts: 1, status: "confirmed" },
  ]);
  expect(groups.map(({ title }) => title)).toEqual(["Doors", "Panel bus and cabling"]);
  expect(groups[0]?.items[0]?.why).toBe("confirmed; 1 callout on 1 lift");
  expect(groups[1]?.items[0]?.why).toBe("starter note");
});
