import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  afterOutcome,
  meaningFor,
  type NoteCheck,
  outcomeProbability,
} from "#shared-lib/diagnosis/check-outcomes.ts";
import { expectedOutcomes, leastGain, orderChecks, weighCheck } from "#shared-lib/diagnosis/next-check.ts";
import { causeKeys, someCheck, someProbabilities } from "./arbitrary-note.ts";

const factor = { excludes: 0, unlikely: 0.25, neutral: 1, likely: 4, proves: 16 } as const;

/** P(outcome | cause), written down a second time from the words of the contract. */
function table(check: NoteCheck): Map<string, number[]> {
  return new Map(
    causeKeys.map((key) => {
      const row = check.outcomes.map((outcome): number => {
        const proves = Object.values(outcome.means).some((meaning) => meaning === "proves");
        return factor[outcome.means[key] ?? (proves ? "excludes" : "neutral")];
      });
      const sum = row.reduce((total, value) => total + value, 0);
      return [key, sum === 0 ? row : row.map((value) => value / sum)];
    }),
  );
}

const bits = (values: readonly number[]): number =>
  -values.reduce((sum, p) => sum + (p > 0 ? (p * Math.log(p)) / Math.LN2 : 0), 0);

describe("answers by Bayes' rule", () => {
  test("equal the enumeration of every cause with every outcome", () => {
    fc.assert(
      fc.property(someProbabilities, someCheck("one"), (before, check) => {
        const likelihood = table(check);
        for (const [index, outcome] of check.outcomes.entries()) {
          const joint = causeKeys.map((key) => (before.get(key) ?? 0) * (likelihood.get(key)?.[index] ?? 0));
          const sum = joint.reduce((total, value) => total + value, 0);
          const after = afterOutcome(before, check, outcome);
          if (sum === 0) expect(after).toBeNull();
          else
            for (const [at, key] of causeKeys.entries())
              expect(after?.get(key)).toBeCloseTo((joint[at] as number) / sum, 12);
        }
      }),
    );
  });

  test("do not depend on the order in which they are given", () => {
    fc.assert(
      fc.property(someProbabilities, someCheck("one"), someCheck("two"), (before, one, two) => {
        const [first, second] = [one.outcomes[0], two.outcomes[0]];
        if (!first || !second) return;
        const there = afterOutcome(before, one, first);
        const back = afterOutcome(before, two, second);
        const forward = there && afterOutcome(there, two, second);
        const backward = back && afterOutcome(back, one, first);
        expect(forward === null).toBe(backward === null);
        for (const key of causeKeys) expect(forward?.get(key) ?? 0).toBeCloseTo(backward?.get(key) ?? 0, 12);
      }),
    );
  });

  test("a proof rules out what it does not speak of, and keeps what it does", () => {
    const outcome = { key: "seen", words: "Seen", means: { a: "proves", b: "unlikely" } } as const;
    expect(causeKeys.map((key) => meaningFor(outcome, key))).toEqual([
      "proves",
      "unlikely",
      "excludes",
      "excludes",
    ]);
  });

  test("outcomes of a check are told for each cause with probabilities that sum to 1", () => {
    fc.assert(
      fc.property(someCheck("one"), (check) => {
        for (const key of causeKeys) {
          const sum = check.outcomes.reduce(
            (total, outcome) => total + outcomeProbability(check, outcome, key),
            0,
          );
          const impossible = check.outcomes.every((outcome) => meaningFor(outcome, key) === "excludes");
          expect(sum).toBeCloseTo(impossible ? 0 : 1, 12);
        }
      }),
    );
  });
});

describe("the next check", () => {
  test("its expected gain equals the enumeration over outcomes and is never negative", () => {
    fc.assert(
      fc.property(someProbabilities, someCheck("one"), (before, check) => {
        const likelihood = table(check);
        const possible = causeKeys.filter((key) => likelihood.get(key)?.some((value) => value > 0));
        const reachable = possible.reduce((sum, key) => sum + (before.get(key) ?? 0), 0);
        let left = 0;
        for (const index of check.outcomes.keys()) {
          const joint = causeKeys.map((key) => (before.get(key) ?? 0) * (likelihood.get(key)?.[index] ?? 0));
          const sum = joint.reduce((total, value) => total + value, 0);
          if (sum > 0) left += (sum / reachable) * bits(joint.map((value) => value / sum));
        }
        const { gain, outcomes } = weighCheck(before, check);
        const now = bits([...before.values()]);
        expect(gain).toBeCloseTo(outcomes.length === 0 ? 0 : Math.max(0, now - left), 9);
        if (outcomes.length > 0)
          expect(outcomes.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
      }),
    );
  });

  test("no arithmetic puts a dangerous check before a harmless one that still tells something", () => {
    fc.assert(
      fc.property(
        someProbabilities,
        someCheck("one"),
        someCheck("two"),
        someCheck("three"),
        (before, ...checks) => {
          const ordered = orderChecks(before, checks);
          expect(ordered.map(({ check }) => check.key).sort()).toEqual(["one", "three", "two"]);
          const telling = ordered.filter(({ gain }) => gain >= leastGain);
          expect(ordered.slice(0, telling.length)).toEqual(telling);
          const careful = telling.map((one) => one.careful);
          expect(careful).toEqual([...careful].sort((one, other) => Number(one) - Number(other)));
          for (const rates of [telling.filter((one) => one.careful), telling.filter((one) => !one.careful)])
            for (const [index, one] of rates.entries())
              expect(one.gainPerMinute).toBeLessThanOrEqual(rates[index - 1]?.gainPerMinute ?? Infinity);
        },
      ),
    );
  });

  test("a caution alone makes a check careful, and a check of no minutes has a finite rate", () => {
    const check: NoteCheck = {
      key: "meter",
      title: "Meter",
      how: "",
      minutes: 0,
      hazard: "none",
      caution: "Live.",
      outcomes: [
        { key: "yes", words: "Yes", means: { a: "proves" } },
        { key: "no", words: "No", means: { a: "excludes" } },
      ],
    };
    const before = new Map([
      ["a", 0.5],
      ["b", 0.5],
    ]);
    expect(weighCheck(before, check)).toMatchObject({ careful: true, gain: 1, gainPerMinute: 1 });
    expect(expectedOutcomes(before, check).map(({ probability }) => probability)).toEqual([0.5, 0.5]);
  });
});
