import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { traction } from "#shared-lib/calculators/traction.ts";
import { frictionRatio, type Masses, pullAt, stalledCase } from "#shared-lib/calculators/traction-physics.ts";

const rad = Math.PI / 180;
/** The lift of Ex 5j. */
const base = {
  form: "round",
  gamma: 30 * rad,
  beta: 95 * rad,
  wrap: Math.PI,
  roping: "1:1",
  speed: 1,
  ratedLoad: 630,
  car: 1000,
  counterweight: 1315,
  ropes: 5,
  ropeMass: 0.35,
  travel: 20,
  compensation: 0,
  retardation: 0.5,
} as const;
const compute = (input: CalculatorInput) => traction.compute({ ...base, ...input });
const value = (input: CalculatorInput, key: string): number =>
  compute(input).values.find((each) => each.key === key)?.value ?? Number.NaN;
const held = (input: CalculatorInput, key: string) =>
  compute(input).comparisons.find((each) => each.key === key)?.holds;

describe("verdicts", () => {
  test("traction is kept, and the least margin is named", () => {
    const { verdict } = compute({});
    expect(verdict).toMatchObject({ word: "Within", holds: true });
    // 1.7564/1.4951 - 1 and 1.8581/1.3859 - 1
    expect(verdict.sentence).toContain("17.5\u00a0%, in an emergency stop");
  });

  test("a lighter car slips in an emergency stop, empty, going up", () => {
    const { verdict } = compute({ car: 800 });
    expect(verdict).toMatchObject({ word: "Outside", holds: false });
    expect(verdict.sentence).toContain("slip in an emergency stop");
    expect(verdict.because).toBe("Car empty, stopped going up, highest landing.");
  });

  test("each condition turns where the wrap is the one needed, from both sides", () => {
    for (const key of ["loading", "braking"] as const) {
      const needed = value({}, `${key}Wrap`);
      expect(held({ wrap: needed * 1.0001 }, key)).toBe(true);
      expect(held({ wrap: needed * 0.9999 }, key)).toBe(false);
    }
  });

  test("stalled the ropes must slip; with an electric safety device nothing is judged", () => {
    // Heavy ropes on the resting side hold on: 200 m of five ropes of 2 kg/m.
    const heavy = { ropeMass: 2, travel: 200, compensation: 2000 };
    expect(held(heavy, "stalled")).toBe(false);
    expect(held({ ...heavy, stall: "device" }, "stalled")).toBeNull();
    expect(held({}, "stalled")).toBe(true);
  });

  test("braking counts with the speed of the rope", () => {
    expect(value({ roping: "2:1" }, "brakingCoefficient")).toBeCloseTo(0.1 / 1.2, 12);
    expect(value({ roping: "1:1" }, "brakingCoefficient")).toBeCloseTo(0.1 / 1.1, 12);
  });

  test("the pressure is compared only where rope and sheave are entered", () => {
    expect(compute({}).comparisons.map((each) => each.key)).toEqual(["loading", "braking", "stalled"]);
    const small = compute({ ropeDiameter: 0.01, sheave: 0.4 });
    expect(small.comparisons.at(-1)).toMatchObject({ key: "pressure", holds: false });
    expect(small.verdict.because).toContain("Traction is kept");
    expect(held({ ropeDiameter: 0.01, sheave: 0.6 }, "pressure")).toBe(true);
  });

  test("a counterweight out of place gets a sentence at its field", () => {
    expect(compute({}).problems).toEqual([]);
    expect(compute({ counterweight: 900 }).problems.map((each) => each.field)).toEqual(["counterweight"]);
    expect(compute({ counterweight: 1700 }).problems.map((each) => each.field)).toEqual(["counterweight"]);
  });
});

describe("physics", () => {
  const masses: Masses = {
    car: 1000,
    ratedLoad: 630,
    counterweight: 1315,
    ropes: 35,
    compensation: 0,
    cable: 0,
    roping: 2,
  };

  test("compensation as heavy as the ropes makes the standing forces alike at top and bottom", () => {
    const full = { ...masses, roping: 1, compensation: 35 };
    const [bottom, top] = [pullAt(full, 0, 0, 0), pullAt(full, 0, 1, 0)];
    expect(bottom.car).toBeCloseTo(top.car, 9);
    expect(bottom.counterweight).toBeCloseTo(top.counterweight, 9);
  });

  test("over 2:1 the work done at the sheave is the change of energy of car and ropes", () => {
    // Car side alone, upwards with a: T at rope speed 2v must give (m (g + a)) v and the rope's m (g 2v + 4 a v).
    const pull = pullAt({ ...masses, counterweight: 1315 }, 0, 0, 0.7).car;
    expect(pull * 2).toBeCloseTo(1000 * (9.80665 + 0.7) + 35 * (2 * 9.80665 + 4 * 0.7), 6);
  });

  test("more undercut, a narrower V, more friction; the ropes alone are what still pulls on the resting side", () => {
    const angle = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(angle, fc.double({ min: 25, max: 60, noNaN: true }), (beta, gamma) => {
        const groove = { form: "round", gamma: gamma * rad, beta: beta * rad } as const;
        const more = { ...groove, beta: (beta + 1) * rad };
        expect(frictionRatio(more, "loading")).toBeGreaterThan(frictionRatio(groove, "loading"));
        const wedge = { form: "hardened wedge", gamma: gamma * rad, beta: 0 } as const;
        const wider = { ...wedge, gamma: (gamma + 1) * rad };
        expect(frictionRatio(wider, "loading")).toBeLessThan(frictionRatio(wedge, "loading"));
      }),
    );
    expect(stalledCase({ ...masses, roping: 1 }).smaller).toBeCloseTo(35 * 9.80665, 9);
  });
});
