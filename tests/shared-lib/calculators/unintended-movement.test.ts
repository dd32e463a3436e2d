import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { unintendedMovement } from "#shared-lib/calculators/unintended-movement.ts";
import { runawayAt, stopRunaway } from "#shared-lib/calculators/unintended-physics.ts";

const base = {
  acceleration: 1,
  detection: 0.15,
  reaction: 0.2,
  braking: 2,
  doorHeight: 2,
  apronHeight: 0.75,
};
const compute = (input: CalculatorInput) => unintendedMovement.compute({ ...base, ...input });
const masses = { from: "masses", carMass: 1000, ratedLoad: 630, counterweight: 1315 } as const;
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("distance", () => {
  test("of the motion, without jumps, and its end is the whole travel", () => {
    const runaway = fc.record({
      acceleration: positive(0.1, 3),
      detection: positive(0, 0.35),
      reaction: positive(0, 1),
      braking: positive(0.2, 10),
    });
    fc.assert(
      fc.property(runaway, (request) => {
        const { time, total, speedBraked } = stopRunaway(request);
        expect(runawayAt(request, 0)).toBe(0);
        expect(runawayAt(request, time)).toBeCloseTo(total, 9);
        let before = 0;
        for (let index = 1; index <= 100; index += 1) {
          const now = runawayAt(request, (time * index) / 100);
          expect(now - before).toBeGreaterThanOrEqual(-1e-9);
          expect(now - before).toBeLessThanOrEqual((speedBraked * time) / 100 + 1e-9);
          before = now;
        }
      }),
    );
  });

  test("more acceleration, later detection or longer reaction: further; more braking: less far", () => {
    const whole = (change: object): number => stopRunaway({ ...base, ...change }).total;
    expect(whole({ acceleration: 1.1 })).toBeGreaterThan(whole({}));
    expect(whole({ detection: 0.16 })).toBeGreaterThan(whole({}));
    expect(whole({ reaction: 0.21 })).toBeGreaterThan(whole({}));
    expect(whole({ braking: 2.1 })).toBeLessThan(whole({}));
  });
});

describe("limits, from memory", () => {
  test("say so on the screen", () => {
    const { comparisons, notes } = compute({});
    expect(comparisons[0]?.limit.source.status).toBe("from memory");
    expect(comparisons[0]?.rest).toContain("from memory, check against the current text");
    expect(notes.join(" ")).toContain("from memory");
  });

  test("up 0.95 m and down 1.00 m with a 0.75 m apron and a 2.00 m door, from both sides", () => {
    // Nothing but reaction: ½ a t², then braking (a t)²/(2 b); with a 2 and b 20, s = 1.1 t².
    const at = (travel: number) =>
      compute({ detection: 0, acceleration: 2, braking: 20, reaction: Math.sqrt(travel / 1.1) });
    const holds = (travel: number) =>
      at(travel)
        .comparisons.slice(0, 2)
        .map((each) => each.holds);
    expect(holds(0.9499)).toEqual([true, true]);
    expect(holds(0.9501)).toEqual([false, true]);
    expect(holds(1.0001)).toEqual([false, false]);
    expect(at(0.9501).verdict).toMatchObject({ word: "Outside", holds: false });
    expect(at(0.9499).verdict).toMatchObject({ word: "Within", holds: true });
  });

  test("an apron under 0.75 m, from both sides", () => {
    expect(compute({ apronHeight: 0.75 }).verdict.word).toBe("Within");
    const { verdict } = compute({ apronHeight: 0.749 });
    expect(verdict.word).toBe("Outside");
    expect(verdict.sentence).toContain("apron is too short");
  });
});

describe("from the masses", () => {
  test("the empty car goes up, the full one down", () => {
    const keys = compute(masses).comparisons.map(({ key }) => key);
    expect(keys).toEqual(["travel up, empty car", "travel down, full car", "apron"]);
  });

  test("a counterweight heavier than the full car pulls it up in both cases", () => {
    const keys = compute({ ...masses, counterweight: 1700 }).comparisons.map(({ key }) => key);
    expect(keys.slice(0, 2)).toEqual(["travel up, empty car", "travel up, full car"]);
  });

  test("in balance the car stays, and that is said", () => {
    const result = compute({ ...masses, counterweight: 1630 });
    expect(result.notes[0]).toBe("Does not move by itself: full car.");
    expect(result.comparisons).toHaveLength(2);
  });

  test("the car that fails is named with its load and direction", () => {
    const result = compute({ ...masses, detection: 0.2, reaction: 0.25, braking: 1 });
    expect(result.verdict.sentence).toBe("The empty car would travel 991\u00a0mm up before it stands.");
  });

  test("an acceleration entered before does not count", () => {
    expect(compute({ ...masses, acceleration: 9 })).toEqual(compute(masses));
  });
});

test("says what the travel is made of", () => {
  const { verdict } = compute({ acceleration: 3, detection: 0.35, braking: 0.5 });
  expect(verdict.because).toContain("Until detected 350\u00a0mm, reacting");
  expect(verdict.until).toContain("out of service");
});
