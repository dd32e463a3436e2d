import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { motionDuring, stopFrom, tripOver } from "#shared-lib/calculators/kinematics.ts";
import { terminalSlowdown } from "#shared-lib/calculators/terminal-slowdown.ts";

const base = { speed: 1, retardation: 0.7, jerkStart: 1, reactionTime: 0.15 };
const compute = (input: CalculatorInput) => terminalSlowdown.compute({ ...base, ...input });
const required = (input: CalculatorInput): number =>
  compute(input).values.find((each) => each.key === "required")?.value ?? Number.NaN;
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stop = fc.record({
  speed: positive(0.05, 10),
  retardation: positive(0.1, 5),
  jerkStart: positive(0.1, 10),
  jerkEnd: positive(0.1, 10),
});

describe("monotone where physics says so", () => {
  test("more speed, more distance; more retardation or jerk at the start, less", () => {
    fc.assert(
      fc.property(stop, (request) => {
        const distance = stopFrom(request).distance;
        const more = (change: Partial<typeof request>): number =>
          stopFrom({ ...request, ...change }).distance;
        const slack = 1e-9 * distance;
        expect(more({ speed: request.speed * 1.1 })).toBeGreaterThan(distance);
        expect(more({ retardation: request.retardation * 1.1 })).toBeLessThanOrEqual(distance + slack);
        expect(more({ jerkStart: request.jerkStart * 1.1 })).toBeLessThanOrEqual(distance + slack);
        // A harder end keeps the car on full retardation longer, at a lower speed: it stands sooner.
        expect(stopFrom({ ...request, jerkEnd: request.jerkEnd * 1.1 }).time).toBeLessThanOrEqual(
          stopFrom(request).time + slack,
        );
      }),
    );
  });

  test("more reaction time or margin, more distance; longer trips take longer", () => {
    expect(required({ reactionTime: 0.2 })).toBeCloseTo(required({}) + 0.05, 12);
    expect(required({ margin: 0.1 })).toBeCloseTo(required({}) + 0.1, 12);
    fc.assert(
      fc.property(positive(0.1, 100), stop, (distance, { speed, retardation, jerkStart }) => {
        const trip = tripOver(distance, speed, retardation, jerkStart);
        expect(tripOver(distance * 1.01, speed, retardation, jerkStart).time).toBeGreaterThan(trip.time);
        expect(trip.peakSpeed).toBeLessThanOrEqual(speed * (1 + 1e-9));
      }),
    );
  });

  test("the motion is whole: starts at speed, ends standing at the stopping distance, without jumps", () => {
    fc.assert(
      fc.property(stop, (request) => {
        const { time, distance } = stopFrom(request);
        expect(motionDuring(request, 0)).toEqual({ speed: request.speed, travelled: 0 });
        expect(motionDuring(request, time)).toEqual({ speed: 0, travelled: distance });
        let before = motionDuring(request, 0);
        for (let index = 1; index <= 200; index += 1) {
          const now = motionDuring(request, (time * index) / 200);
          const step = ((before.speed + now.speed) / 2) * (time / 200);
          expect(now.speed).toBeLessThanOrEqual(before.speed + 1e-9);
          expect(Math.abs(now.travelled - before.travelled - step)).toBeLessThan(1e-4 * distance);
          before = now;
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("range for the switch", () => {
  test("at least the distance needed, from both sides", () => {
    const need = required({});
    expect(compute({ switchUp: need }).verdict).toMatchObject({ word: "Within", holds: true });
    expect(compute({ switchUp: need - 1e-5 }).verdict).toMatchObject({ word: "Outside", holds: false });
  });

  test("says by how much the car would pass the level", () => {
    expect(compute({ switchUp: 1.1 }).verdict.because).toContain("pass the level by 0.114\u00a0m");
    expect(compute({ switchUp: 1.3, margin: 0.2 }).verdict.because).toContain("still stand before the level");
  });

  test("less than the normal start of slowdown, from both sides, unless the maker says otherwise", () => {
    const at = (switchUp: number, makerAllows = "no") =>
      compute({ switchUp, normalStart: 1.5, makerAllows }).verdict.word;
    expect([at(1.499), at(1.5), at(1.6)]).toEqual(["Within", "Outside", "Outside"]);
    expect([at(1.5, "yes"), at(1.6, "yes")]).toEqual(["Within", "Within"]);
  });

  test("no place for the switch", () => {
    const verdict = compute({ normalStart: 1.2 }).verdict;
    expect(verdict).toMatchObject({ word: "Outside", holds: false });
    expect(verdict.sentence).toContain("no place for the switch");
  });

  test("without a switch it tells the range and judges nothing", () => {
    const verdict = compute({ normalStart: 1.5 }).verdict;
    expect(verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(verdict.sentence).toContain("at least 1.214\u00a0m and less than 1.500\u00a0m");
  });

  test("a normal start from which the lift cannot stop gets a sentence at its field", () => {
    expect(compute({ normalStart: 0.9 }).problems.map((each) => each.field)).toEqual(["normalStart"]);
  });

  test("the down switch is read for the bottom landing", () => {
    expect(compute({ side: "down", switchUp: 5, switchDown: 1.1 }).verdict.word).toBe("Outside");
    expect(compute({ side: "down", switchDown: 1.3 }).verdict.sentence).toContain("bottom landing");
  });

  test("always says what it does not prove", () => {
    expect(compute({}).notes.join(" ")).toContain(
      "not a proof of the monitored retardation that buffers of reduced stroke need",
    );
  });

  test("the curve ends where the car stands", () => {
    const curve = compute({ switchUp: 1.1 }).drawings.find(
      (each) => each.kind === "curve" && each.title.startsWith("Distance"),
    );
    if (curve?.kind !== "curve") throw new Error("The curve is missing.");
    expect(curve.marks[0]).toMatchObject({ outside: true });
    expect(curve.series[0]?.points.at(-1)?.[1]).toBeCloseTo(1.1 - 1.2142857, 6);
    expect(curve.series[0]?.points[0]).toEqual([0, 1.1]);
  });
});
