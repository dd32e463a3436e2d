import { describe, expect, test } from "vitest";
import {
  brakingCase,
  frictionCoefficient,
  frictionRatio,
  type Groove,
  heldRatio,
  loadingCase,
  type Masses,
  pressureLimit,
  pullAt,
  ropePressure,
  stalledCase,
} from "#shared-lib/calculators/traction-physics.ts";

const toDigits = (value: number, digits: number): number => Number(value.toPrecision(digits));
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const round = (beta: number, gamma: number): Groove => ({
  form: "round",
  beta: rad(beta),
  gamma: rad(gamma),
});
const wedge = (gamma: number, form: Groove["form"] = "hardened wedge"): Groove => ({
  form,
  beta: 0,
  gamma: rad(gamma),
});

describe("Ex 5g: Feyrer, Wire Ropes, example 3.4; status: published; its half angles are not those of EN 81-50", () => {
  test("half angles 47.5° and 80°: beta 95°, gamma 20°", () => {
    const ratio = frictionRatio(round(2 * 47.5, 180 - 2 * 80), "loading");
    expect(toDigits(ratio, 4)).toBe(2.062);
    expect(toDigits(ratio, 5)).toBe(2.0615);
    // Taken for whole angles the same numbers give something else: the trap of the two conventions.
    expect(Math.abs(frictionRatio(round(47.5, 80), "loading") - 2.062)).toBeGreaterThan(0.1);
  });

  test("no undercut, 60°", () => {
    const ratio = frictionRatio(round(0, 60), "loading");
    expect(toDigits(ratio, 4)).toBe(1.17);
    expect(toDigits(ratio, 5)).toBe(1.1701);
  });
});

describe("Ex 5h: f over mu; status: computed", () => {
  test.each([
    [0, 25, 1.249],
    [90, 25, 1.933],
    [95, 30, 1.972],
    [105, 25, 2.222],
  ])("undercut %d°, groove %d°: %d", (beta, gamma, ratio) => {
    expect(toDigits(frictionRatio(round(beta, gamma), "braking"), 4)).toBe(ratio);
  });

  test("undercut 100°, groove 25°: the list says 2.115, rounded twice; it is 2.1145", () => {
    expect(toDigits(frictionRatio(round(100, 25), "braking"), 5)).toBe(2.1145);
  });

  test.each([
    [35, 3.326],
    [38, 3.072],
    [40, 2.924],
    [45, 2.613],
  ])("V %d°: %d, hardened in every case, not hardened only stalled", (gamma, ratio) => {
    expect(toDigits(frictionRatio(wedge(gamma), "loading"), 4)).toBe(ratio);
    expect(toDigits(frictionRatio(wedge(gamma, "wedge"), "stalled"), 4)).toBe(ratio);
    expect(frictionRatio(wedge(gamma, "wedge"), "loading")).toBeLessThan(ratio);
  });
});

describe("Ex 5i: friction coefficient while braking; status: computed", () => {
  test("rope at 1.0 m/s 0.09091; car at 1.0 m/s on 2:1 0.08333, for the rope runs at 2.0 m/s", () => {
    expect(toDigits(frictionCoefficient("braking", 1), 4)).toBe(0.09091);
    expect(toDigits(frictionCoefficient("braking", 2), 4)).toBe(0.08333);
    expect([frictionCoefficient("loading", 2), frictionCoefficient("stalled", 2)]).toEqual([0.1, 0.2]);
  });
});

describe("Ex 5j: a whole lift 1:1; status: computed", () => {
  const masses: Masses = {
    car: 1000,
    ratedLoad: 630,
    counterweight: 1315,
    ropes: 35,
    compensation: 0,
    cable: 0,
    roping: 1,
  };
  const groove = round(95, 30);

  test("loading 17873/12896 = 1.386 against 1.858", () => {
    const found = loadingCase(masses);
    expect([found.larger, found.smaller].map(Math.round)).toEqual([17_873, 12_896]);
    expect(toDigits(found.ratio, 4)).toBe(1.386);
    expect(found.place).toBe("lowest landing");
    expect(toDigits(heldRatio(groove, "loading", 1, Math.PI), 4)).toBe(1.858);
  });

  test("braking down, full, at the bottom: 17161/12238 = 1.402", () => {
    const pull = pullAt(masses, 630, 0, 0.5);
    expect([pull.car, pull.counterweight].map(Math.round)).toEqual([17_161, 12_238]);
    expect(toDigits(pull.car / pull.counterweight, 4)).toBe(1.402);
  });

  test("braking up, empty, at the top is the worst: 1.495 against 1.756", () => {
    const found = brakingCase(masses, 0.5);
    expect(toDigits(found.ratio, 4)).toBe(1.495);
    expect(found).toMatchObject({ place: "highest landing", load: "empty", direction: "up" });
    expect(toDigits(heldRatio(groove, "braking", 1, Math.PI), 4)).toBe(1.756);
  });

  test("stalled, car at the top: 28.57 against 3.453", () => {
    const found = stalledCase(masses);
    expect(toDigits(found.ratio, 4)).toBe(28.57);
    expect(found.rests).toBe("counterweight");
    expect(toDigits(heldRatio(groove, "stalled", 1, Math.PI), 4)).toBe(3.453);
  });
});

describe("Ex 5k: pressure of the rope in its groove; limit published, values computed", () => {
  test.each([
    [1, 8.25],
    [2, 6.833],
    [5, 5.417],
  ])("limit at %d m/s: %d N/mm²", (speed, limit) => {
    expect(toDigits(pressureLimit(speed) / 1e6, 4)).toBe(limit);
  });

  test("16000 N on five ropes of 10 mm, sheave 400 mm, undercut 95°: 8.872 N/mm²", () => {
    const request = { groove: round(95, 30), force: 16_000, ropes: 5, ropeDiameter: 0.01, sheave: 0.4 };
    expect(toDigits(ropePressure(request) / 1e6, 4)).toBe(8.872);
  });
});
