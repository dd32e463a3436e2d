import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { NoteCheck, Outcome } from "#shared-lib/diagnosis/check-outcomes.ts";
import { contradictionSentence, evidenceSentence, whyCheck } from "#shared-lib/diagnosis/diagnosis-words.ts";
import { weighCheck } from "#shared-lib/diagnosis/next-check.ts";
import { poolCounts, poolingStrength, priorCounts } from "#shared-lib/diagnosis/pool-counts.ts";
import { type CauseEvidence, fromHistory, rankCauses } from "#shared-lib/diagnosis/rank-causes.ts";
import { expectedRepairMinutes, repairOrder } from "#shared-lib/diagnosis/repair-order.ts";
import { likenessTo } from "#shared-lib/diagnosis/text-likeness.ts";
import { causeKeys, someCheck } from "./arbitrary-note.ts";

const note = {
  causes: causeKeys.map((key) => ({ key, title: `Cause ${key}`, tell: "", fix: "" })),
};

const past = (causeKey: string, circle: CauseEvidence["circle"], count: number): CauseEvidence[] =>
  Array.from({ length: count }, (_, index) => ({
    calloutId: `${causeKey} ${circle} ${index}`,
    causeKey,
    circle,
    likeness: 1,
  }));

const someEvidence = fc.array(
  fc.record({
    calloutId: fc.integer({ min: 1, max: 30 }).map(String),
    causeKey: fc.constantFrom(...causeKeys, "gone"),
    circle: fc.constantFrom("lift" as const, "alike" as const, "elsewhere" as const),
    likeness: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  { maxLength: 30 },
);

describe("history", () => {
  test("below five callouts the order is the note's own, from five on the counts lead", () => {
    const four = rankCauses(note, past("d", "lift", 4), []);
    expect(four.thin).toBe(true);
    expect(four.causes.map(({ key }) => key)).toEqual(["a", "b", "c", "d"]);
    expect(four.causes.at(-1)).toMatchObject({ callouts: 4, onLift: 4 });
    const five = rankCauses(note, past("d", "elsewhere", 5), []);
    expect(five.thin).toBe(false);
    expect(five.causes[0]).toMatchObject({ key: "d", callouts: 5, onLift: 0 });
  });

  test("partial pooling by hand: any lift, then family and drive, then this lift", () => {
    const prior = new Map([
      ["a", 0.5],
      ["b", 0.5],
    ]);
    const counts = (a: number, b: number) =>
      new Map([
        ["a", a],
        ["b", b],
      ]);
    // all: (6 + 0.5) / 11 = 13/22; family: (1 + 4 × 13/22) / (4 + 4) = 37/88; lift: (0 + 4 × 37/88) / (2 + 4) = 37/132
    const pooled = poolCounts(prior, [counts(6, 4), counts(1, 3), counts(0, 2)], 4);
    expect(pooled.get("a")).toBeCloseTo(37 / 132, 12);
    expect(pooled.get("b")).toBeCloseTo(95 / 132, 12);
  });

  test("a lift with much history follows its own, one with none its family", () => {
    const family = [...past("a", "alike", 20), ...past("b", "elsewhere", 200)];
    expect(rankCauses(note, family, []).causes[0]?.key).toBe("a");
    const own = [...family, ...past("c", "lift", 30)];
    const first = rankCauses(note, own, []).causes[0];
    expect(first).toMatchObject({ key: "c", callouts: 30, onLift: 30 });
    expect(first?.probability).toBeGreaterThan(30 / (30 + poolingStrength) - 0.01);
  });

  test("the prior has Jeffreys' mass of half a callout a cause, in the note's order", () => {
    const prior = priorCounts(causeKeys);
    expect([...prior.values()].reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(2, 12);
    expect([...prior.values()]).toEqual([...prior.values()].sort((one, other) => other - one));
    expect([...priorCounts(causeKeys, false).values()]).toEqual([0.5, 0.5, 0.5, 0.5]);
  });

  test("whatever lies before it, probabilities sum to 1 and no cause is left out", () => {
    fc.assert(
      fc.property(
        someEvidence,
        fc.array(someCheck("one"), { maxLength: 4 }),
        fc.nat(2),
        (evidence, checks, which) => {
          const answers = checks.flatMap((check) => {
            const outcome = check.outcomes[which];
            return outcome ? [{ check, outcome }] : [];
          });
          const ranking = rankCauses(note, evidence, answers);
          expect(ranking.causes.map(({ key }) => key).sort()).toEqual([...causeKeys]);
          const sum = ranking.causes.reduce((total, { probability }) => total + probability, 0);
          expect(sum).toBeCloseTo(1, 9);
          for (const cause of ranking.causes) {
            expect(cause.callouts).toBeLessThanOrEqual(ranking.callouts);
            if (!ranking.contradiction && cause.ruledOutBy.length > 0) expect(cause.probability).toBe(0);
          }
        },
      ),
    );
  });

  test("more callouts of a cause never make it less likely", () => {
    fc.assert(
      fc.property(someEvidence, fc.constantFrom(...causeKeys), (evidence, key) => {
        const known = [...evidence.filter(({ causeKey }) => causeKey !== "gone"), ...past("a", "lift", 5)];
        const before = fromHistory(causeKeys, known).get(key) ?? 0;
        const more = [...known, ...past(key, "lift", 1).map((one) => ({ ...one, calloutId: "new" }))];
        expect(fromHistory(causeKeys, more).get(key)).toBeGreaterThanOrEqual(before - 1e-12);
      }),
    );
  });
});

describe("answers that contradict each other", () => {
  const look: NoteCheck = {
    key: "look",
    title: "Look",
    how: "",
    minutes: 5,
    hazard: "none",
    outcomes: [
      { key: "a", words: "It is a", means: { a: "proves" } },
      { key: "none", words: "None of them", means: { a: "excludes", b: "excludes" } },
      { key: "rest", words: "Not c, not d", means: { c: "excludes", d: "excludes" } },
    ],
  };
  const answer = (index: number, key = "look") => ({
    check: { ...look, key },
    outcome: look.outcomes[index] as Outcome,
  });

  test("are said, and the ranking is the one without answers, never NaN", () => {
    const answers = [answer(1), answer(2, "again")];
    const ranking = rankCauses(note, past("b", "lift", 6), answers);
    expect(ranking.contradiction).toBe(true);
    expect(ranking.causes[0]?.key).toBe("b");
    expect(ranking.causes.every(({ probability }) => Number.isFinite(probability))).toBe(true);
    expect(ranking.causes.map(({ ruledOutBy }) => ruledOutBy.length)).toEqual([1, 1, 1, 1]);
    expect(contradictionSentence(answers)).toBe(
      "The answers rule out every cause of this note (“Look”: None of them; “Look”: Not c, not d). Look again at what is least sure and take that answer back; if all are right, it is a cause the note does not have, or more than one.",
    );
  });

  test("a note without causes has nothing to contradict", () => {
    expect(rankCauses({ causes: [] }, [], [answer(1)])).toMatchObject({ causes: [], contradiction: false });
  });

  test("why a check is offered names what each outcome points to", () => {
    const { probabilities } = rankCauses(note, [], []);
    expect(whyCheck(weighCheck(probabilities, look), note.causes)).toBe(
      "“It is a” leaves only “Cause a”; “None of them” points to “Cause c”; “Not c, not d” points to “Cause b”.",
    );
  });
});

describe("words on the evidence", () => {
  test.each([
    [[], 0, "No similar callout has a recorded cause yet: the order is the note’s own."],
    [
      past("a", "lift", 1),
      2,
      "1 similar callout with a recorded cause: too thin to rank, 5 are needed. The order is the note’s own. Of 2 more no cause of the note was told.",
    ],
    [
      [...past("a", "lift", 3), ...past("b", "alike", 4), ...past("c", "elsewhere", 4)],
      0,
      "Ranked by 11 similar callouts with a recorded cause, 3 on this lift, 4 on others of its family and drive.",
    ],
  ])("say how many and how near", (evidence, untold, sentence) => {
    expect(evidenceSentence(rankCauses(note, evidence, []), untold)).toBe(sentence);
  });
});

describe("repairs by probability over time", () => {
  test("take the least expected time of every order", () => {
    const some = fc.record({
      probability: fc.double({ min: 0.01, max: 1, noNaN: true }),
      minutes: fc.integer({ min: 1, max: 200 }),
    });
    fc.assert(
      fc.property(fc.array(some, { minLength: 1, maxLength: 5 }), (repairs) => {
        const sum = repairs.reduce((total, { probability }) => total + probability, 0);
        const all = repairs.map((one, index) => ({
          causeKey: String(index),
          minutes: one.minutes,
          probability: one.probability / sum,
        }));
        const best = Math.min(...orders(all).map(expectedRepairMinutes));
        expect(expectedRepairMinutes(repairOrder(all))).toBeCloseTo(best, 6);
      }),
    );
  });
});

function orders<One>(list: readonly One[]): One[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((one, index) =>
    orders([...list.slice(0, index), ...list.slice(index + 1)]).map((rest) => [one, ...rest]),
  );
}

describe("likeness of words", () => {
  test("is 1 for the same words, more for the nearer text, 0 for none in common", () => {
    const [same, near, far, none] = likenessTo("doors keep reopening at the lobby", [
      "Doors keep reopening at the lobby!",
      "door reopens at floor 3",
      "lobby lamp is out",
      "smell of hot brake",
    ]);
    expect(same).toBeCloseTo(1, 12);
    expect(near).toBeGreaterThan(far as number);
    expect(none).toBe(0);
  });

  test("never leaves 0 to 1, whatever the words", () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.string(), { maxLength: 5 }), (asked, texts) => {
        for (const one of likenessTo(asked, texts)) {
          expect(one).toBeGreaterThanOrEqual(0);
          expect(one).toBeLessThanOrEqual(1);
        }
      }),
    );
  });
});
