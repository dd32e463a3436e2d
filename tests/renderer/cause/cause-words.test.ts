import { describe, expect, test } from "vitest";
import type { CauseRanking, RankedCause } from "#shared-lib/contract/cause.ts";
import { countWords, repairWords, standingWords } from "../../../renderer/features/cause/cause-words.ts";
import { rankingSentence } from "../../../renderer/features/cause/ranking-parts.ts";

const cause = (more: Partial<RankedCause> = {}): RankedCause => ({
  key: "edge",
  title: "Door edge out of line",
  tell: "",
  fix: "",
  caution: "",
  place: 3,
  probability: 0.64,
  callouts: 7,
  onLift: 2,
  ruledOutBy: [],
  provedBy: [],
  ...more,
});

const ranking = (callouts: number, more: Partial<CauseRanking> = {}): CauseRanking => ({
  noteId: "n",
  noteNumber: "N-1",
  noteTitle: "Doors",
  causes: [cause(), cause({ key: "dirt", title: "Dirt", place: 1, probability: 0.36, callouts: 4 })],
  evidence: {
    callouts,
    alike: 2,
    onLift: 2,
    untold: 0,
    thin: callouts < 5,
    sentence: callouts < 5 ? "Too thin to rank." : "Ranked by 11.",
  },
  answers: [],
  contradiction: null,
  next: null,
  others: [],
  repairs: [],
  expectedMinutes: 0,
  ...more,
});

describe("how a cause stands", () => {
  test.each([
    [0.64, "about 6 in 10"],
    [0.97, "more than 9 in 10"],
    [0.04, "under 1 in 20"],
    [0, "ruled out"],
    [1, "the only one left"],
  ])("probability %d: %s", (probability, words) => {
    expect(standingWords(cause({ probability }), ranking(11))).toBe(words);
  });

  test("no number where the evidence is too thin, and none where the answers contradict each other", () => {
    expect(standingWords(cause(), ranking(3))).toBe("");
    const contradicting = ranking(11, { contradiction: "All ruled out." });
    expect(standingWords(cause({ ruledOutBy: ["Look: Clean"] }), contradicting)).toBe("ruled out");
    expect(standingWords(cause(), contradicting)).toBe("");
  });

  test("counts are fractions of the similar callouts", () => {
    expect(countWords(cause(), ranking(11))).toBe("7\u00a0of\u00a011");
    expect(countWords(cause({ callouts: 0 }), ranking(0))).toBe("");
  });
});

test("the note's page names the likeliest by its place in the note, unless the evidence is thin", () => {
  expect(rankingSentence(ranking(11))).toBe(
    "Ranked by 11. Most likely: 3 Door edge out of line, 7\u00a0of\u00a011; then 1.",
  );
  expect(rankingSentence(ranking(2))).toBe("Too thin to rank.");
});

test("a repair says where its minutes are from", () => {
  const repair = { causeKey: "edge", title: "Edge", minutes: 40 };
  expect(repairWords({ ...repair, fromVisits: 5 })).toBe("about 40\u00a0min, as at 5 visits");
  expect(repairWords({ ...repair, fromVisits: 0 })).toBe("about 40\u00a0min assumed, no visits to go by");
});
