import fc from "fast-check";
import { outcomeMeanings } from "#shared-lib/contract/fault-note.ts";
import type { NoteCheck } from "#shared-lib/diagnosis/check-outcomes.ts";

export const causeKeys = ["a", "b", "c", "d"] as const;

/** A check with two or three outcomes that say something of some of four causes. */
export const someCheck = (key: string): fc.Arbitrary<NoteCheck> =>
  fc.record({
    key: fc.constant(key),
    title: fc.constant(`Check ${key}`),
    how: fc.constant(""),
    minutes: fc.integer({ min: 0, max: 60 }),
    hazard: fc.constantFrom("none" as const, "none" as const, "live" as const, "shaft" as const),
    outcomes: fc
      .array(fc.dictionary(fc.constantFrom(...causeKeys), fc.constantFrom(...outcomeMeanings)), {
        minLength: 2,
        maxLength: 3,
      })
      .map((means) =>
        means.map((one, index) => ({ key: `o${index}`, words: `Outcome ${index}`, means: { ...one } })),
      ),
  });

export const someProbabilities: fc.Arbitrary<ReadonlyMap<string, number>> = fc
  .tuple(...causeKeys.map(() => fc.integer({ min: 0, max: 100 })))
  .filter((weights) => weights.some((weight) => weight > 0))
  .map((weights) => {
    const sum = weights.reduce((total, weight) => total + weight, 0);
    return new Map(causeKeys.map((key, index) => [key, (weights[index] as number) / sum]));
  });
