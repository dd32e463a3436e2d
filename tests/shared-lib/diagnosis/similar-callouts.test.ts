import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Circle } from "#shared-lib/diagnosis/rank-causes.ts";
import { type SimilarCandidate, similarCallouts } from "#shared-lib/diagnosis/similar-callouts.ts";

const one = (calloutId: string, causeId: string, score: number, circle: Circle = "elsewhere") => ({
  calloutId,
  causeId,
  score,
  circle,
});

const someCandidates: fc.Arbitrary<SimilarCandidate[]> = fc.array(
  fc.record({
    calloutId: fc.integer({ min: 1, max: 20 }).map(String),
    causeId: fc.constantFrom("dirt", "shoe", "edge", "lock"),
    circle: fc.constantFrom("lift" as const, "alike" as const, "elsewhere" as const),
    score: fc.double({ min: 0.01, max: 50, noNaN: true }),
  }),
  { maxLength: 30 },
);

describe("similar callouts", () => {
  test("one line for each cause, with how many about as near it ended", () => {
    const found = similarCallouts(
      [
        one("1", "dirt", 10),
        one("2", "dirt", 9),
        one("3", "shoe", 8),
        one("4", "dirt", 2),
        one("5", "edge", 1),
      ],
      2,
    );
    expect(found.map(({ candidate, sameCause, near }) => [candidate.calloutId, sameCause, near])).toEqual([
      ["1", 2, 3],
      ["3", 1, 3],
    ]);
  });

  test("the same lift stands first, then the same family and drive, among those that are near enough to be shown", () => {
    const found = similarCallouts(
      [
        one("1", "dirt", 10),
        one("2", "shoe", 9, "alike"),
        one("3", "edge", 8, "lift"),
        one("4", "lock", 1, "lift"),
      ],
      3,
    );
    expect(found.map(({ candidate }) => candidate.calloutId)).toEqual(["3", "2", "1"]);
  });

  test("a cause is shown by its callout on this lift where that is as near", () => {
    const found = similarCallouts([one("1", "dirt", 10), one("2", "dirt", 9.5, "lift")], 3);
    expect(found.map(({ candidate }) => candidate.calloutId)).toEqual(["2"]);
  });

  test("never more lines than asked, never a cause twice, counts within the near ones", () => {
    fc.assert(
      fc.property(someCandidates, fc.integer({ min: 1, max: 5 }), (candidates, limit) => {
        const found = similarCallouts(candidates, limit);
        const causes = new Set(candidates.map(({ causeId }) => causeId));
        expect(found).toHaveLength(Math.min(limit, causes.size));
        expect(new Set(found.map(({ candidate }) => candidate.causeId)).size).toBe(found.length);
        for (const { candidate, sameCause, near } of found) {
          expect(candidates).toContain(candidate);
          expect(sameCause).toBeLessThanOrEqual(near);
        }
      }),
    );
  });

  test("nothing found is an empty list", () => {
    expect(similarCallouts([], 3)).toEqual([]);
  });
});
