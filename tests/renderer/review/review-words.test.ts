import { describe, expect, test } from "vitest";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { attentionItems } from "../../../renderer/features/review/attention.ts";
import {
  type Chain,
  chainWords,
  differenceWords,
  fixTriedAgain,
  fixWords,
  missingWords,
  mostWords,
  orderedChains,
  type Repeats,
  repeatsTitle,
  yearBeforeOf,
} from "../../../renderer/features/review/review-words.ts";

const noBreak = (words: string) => words.replaceAll("\u00a0", " ");

function chainOf(fixes: readonly string[], group: Chain["group"] = "doors"): Chain {
  return {
    liftId: "lift",
    liftTitle: "Saltpan Court, Lift 1",
    group,
    running: true,
    callouts: fixes.map((fix, index) => ({
      id: `${group} ${index}`,
      number: `A-${index}`,
      receivedAt: `2026-11-${String(index + 10)}T10:00:00.000Z`,
      said: "doors keep reopening",
      cause: "",
      fix,
    })),
  };
}

const repeats = (callouts: number, repeated: number): Repeats => ({
  callouts,
  repeats: repeated,
  calloutsYearBefore: 0,
  repeatsYearBefore: 0,
  chains: [],
  sameLift: { repeats: 0, calloutIds: [] },
  repeatIds: [],
  repeatIdsYearBefore: [],
  firstReceivedAt: null,
});

test("titles say the finding with its numbers", () => {
  expect(repeatsTitle(repeats(318, 41), 30)).toBe("41 of 318 callouts came back within 30 days");
  expect(repeatsTitle(repeats(1, 0), 30)).toBe("1 callout, no repeat within 30 days");
  expect(repeatsTitle(repeats(0, 0), 30)).toBe("No callout in this time");
  const rows = (...counts: number[]) => counts.map((count, index) => ({ count, title: `lift ${index}` }));
  const most = (...counts: number[]) => mostWords(rows(...counts), ({ title }) => title, "lifts");
  expect(most(18, 17, 2)).toBe("Most callouts: lift 0, 18 of 37");
  expect(most(4, 4, 2)).toBe("Most callouts: 2 lifts with 4 each");
  expect(most(0, 0)).toBe("No callout of lifts in this time");
  expect(most()).toBe("No callout of lifts in this time");
});

test("differences are words", () => {
  expect([differenceWords(18, 13), differenceWords(2, 9), differenceWords(4, 4)]).toEqual([
    "5 more",
    "7 fewer",
    "as many",
  ]);
});

test("a chain of four callouts is the third repeat", () => {
  expect(chainWords(chainOf(["", "", "", ""]))).toBe("third repeat of a door fault");
  expect(chainWords(chainOf(["", ""], "brake"))).toBe("first repeat of a brake fault");
});

describe("a fix that was tried again", () => {
  test("counts only where the fault came back after it", () => {
    expect(fixTriedAgain(chainOf(["Edge cleaned.", "edge cleaned", "belt renewed", ""]))).toEqual({
      fix: "Edge cleaned",
      times: 2,
    });
    // The newest one may still hold.
    expect(fixTriedAgain(chainOf(["edge cleaned", "belt renewed", "edge cleaned"]))).toBeNull();
    expect(fixTriedAgain(chainOf(["", "", ""]))).toBeNull();
  });

  test("is said with its number", () => {
    expect(fixWords({ fix: "Edge cleaned", times: 2 })).toBe(
      "“Edge cleaned” was tried twice and did not hold.",
    );
    expect(fixWords({ fix: "Gap adjusted", times: 6 })).toMatch(/tried 6 times/);
  });
});

describe("the year before", () => {
  const period = { from: "2026-10-31T23:00:00.000Z", until: "2026-11-30T23:00:00.000Z" };
  test("is compared only as far as it is on record", () => {
    expect(yearBeforeOf(period, null).kind).toBe("none");
    expect(yearBeforeOf(period, "2024-05-01T10:00:00.000Z")).toEqual({ kind: "whole" });
    expect(yearBeforeOf(period, "2025-11-10T10:00:00.000Z").kind).toBe("part");
    expect(yearBeforeOf(period, "2026-01-10T10:00:00.000Z").kind).toBe("none");
  });

  test("what is missing is said", () => {
    expect(missingWords({ kind: "whole" })).toBe("");
    expect(noBreak(missingWords(yearBeforeOf(period, "2026-01-10T10:00:00.000Z")))).toMatch(
      /^Nothing to compare with: the records begin on 10 Jan 2026/,
    );
    expect(noBreak(missingWords(yearBeforeOf(period, "2025-11-10T10:00:00.000Z")))).toMatch(
      /only partly on record: the records begin on 10 Nov 2025/,
    );
  });
});

test("chains that need a person stand first", () => {
  const [long, urgent] = [chainOf(["", "", ""]), chainOf(["", ""], "brake")];
  expect(orderedChains([long, urgent], new Set(["brake 1"]))).toEqual([urgent, long]);
});

describe("what needs a person", () => {
  const who = { id: "person", name: "Ines Calder" };
  const record = { id: "one", version: 1, createdAt: "2026-11-17T08:00:00.000Z" };
  const bridge = {
    ...record,
    id: "bridge",
    number: "A-B01",
    liftId: "lift 2",
    liftTitle: "Kittiwake House, Lift 2",
    calloutId: null,
    contact: "landing door contact",
    points: "34–35",
    landingId: "landing",
    landingMarking: "6",
    reason: "contact does not make",
    control: "inspection",
    leadNumber: "2",
    setAt: "2026-11-17T08:00:00.000Z",
    setBy: who,
    removedAt: null,
    removedBy: null,
    removalNote: "",
    checkedAt: null,
    checkedBy: null,
    proof: "",
    open: true,
  } as const;
  const danger = {
    ...record,
    id: "danger",
    liftId: "lift 3",
    liftTitle: "Gannet Row, Lift 2",
    foundAt: "2026-11-16T08:00:00.000Z",
    foundBy: who,
    words: "",
    clearedAt: null,
    clearedBy: null,
    clearedHow: "",
  };
  const now = new Date("2026-11-17T12:00:00.000Z");
  const lineOf = (facts: Pick<CalloutLine, "id" | "stillInside">): CalloutLine => ({
    ...facts,
    version: 1,
    number: "A-0007",
    liftId: "lift 4",
    liftTitle: "Heron Wharf, Lift 1",
    said: "stuck",
    group: "not yet known",
    inside: facts.stillInside ? "people inside" : "nobody",
    insideCount: facts.stillInside ? 2 : null,
    insideSince: null,
    callBack: "",
    receivedAt: "2026-11-17T11:00:00.000Z",
    endedAt: null,
    ending: null,
    awaits: null,
    returnVisitOn: null,
    state: "received",
    next: "passed on",
    made: ["received"],
    engineer: null,
    callerCount: 1,
    openBridges: [],
    danger: false,
    repeat: 0,
    cause: "",
    fix: "",
  });

  test("people inside come first, dangers before bridges, bridges before repeats, each leads to its place", () => {
    const chains = [chainOf(["Edge cleaned", "Edge cleaned", "", ""])];
    const open = [
      lineOf({ id: "without people", stillInside: false }),
      lineOf({ id: "callout", stillInside: true }),
    ];
    const [inside, ...items] = attentionItems({ chains, bridges: [bridge], dangers: [danger] }, open, now);
    expect(inside?.to).toEqual({ kind: "callout", id: "callout" });
    expect(inside?.lead).toBe("Heron Wharf, Lift 1: 2 people inside.");
    expect(inside?.rest).toMatch(/^Since .*, A-0007, with nobody yet\. Not recorded as released\.$/);
    expect(items.map(({ to }) => to.id)).toEqual(["lift 3", "lift 2", "lift"]);
    expect(items.map(({ lead }) => lead)).toEqual([
      "Gannet Row, Lift 2: car door and landing door found bridged together.",
      "Kittiwake House, Lift 2: bridge open.",
      "Saltpan Court, Lift 1: third repeat of a door fault.",
    ]);
    expect(items[1]?.rest).toMatch(
      /^Across the landing 6 door contact, set .*, Ines Calder\. The lift cannot/,
    );
    expect(items[2]?.rest).toBe("“Edge cleaned” was tried twice and did not hold.");
    expect(items[2]?.calloutIds).toHaveLength(4);
  });

  test("a removal without its second check is still open, and says so", () => {
    const removed = { ...bridge, removedAt: "2026-11-17T10:00:00.000Z", removedBy: who };
    const [item] = attentionItems({ chains: [], bridges: [removed], dangers: [] }, [], now);
    expect(item?.rest).toMatch(/Removal recorded .*; the second check is missing\.$/);
  });
});
