import { describe, expect, test } from "vitest";
import {
  breakingForce,
  forceOfOneRope,
  grooveUndercut,
  grooveV,
  interpolated,
  pulleyBends,
  pulleyFactor,
  requiredByBends,
} from "#shared-lib/calculators/suspension-physics.ts";

const toDigits = (value: number | null | undefined, digits: number): number =>
  Number((value ?? Number.NaN).toPrecision(digits));

describe("Ex 5a: points read from the diagram of EN 81-50; status: second-hand notes", () => {
  test.each([
    [40, 10, 18.68],
    [34, 1, 10.06],
    [36, 3, 14.12],
  ])("D/d %d, N %d: %d", (ratio, bends, factor) => {
    expect(toDigits(requiredByBends(ratio, bends), 4)).toBe(factor);
  });
});

describe("Ex 5b: EN 81-50:2020 annex E; status: second-hand notes (it prints rounded steps)", () => {
  test("E.1: 2:1, V groove 40°, D_t 600, D_p 500, two simple bends", () => {
    const pulleys = { sheave: 0.6, pulley: 0.5, simple: 2, reversed: 0 };
    expect(interpolated(grooveV, 40)).toBe(10);
    expect(toDigits(pulleyFactor(pulleys), 3)).toBe(2.07);
    expect(toDigits(pulleyFactor(pulleys), 5)).toBe(2.0736);
    // It prints 4.14, from the rounded factor; exact 4.1472.
    expect(Math.abs(pulleyBends(pulleys) - 4.14)).toBeLessThan(0.01);
    expect(toDigits(10 + pulleyBends(pulleys), 4)).toBe(14.15);
  });

  test("E.2: 1:1, undercut 90°, D_t 600, D_p 400, one simple bend", () => {
    const pulleys = { sheave: 0.6, pulley: 0.4, simple: 1, reversed: 0 };
    expect(interpolated(grooveUndercut, 90)).toBe(5);
    expect(toDigits(pulleyBends(pulleys), 3)).toBe(5.06);
    expect(toDigits(5 + pulleyBends(pulleys), 6)).toBe(10.0625);
  });

  test("E.3: 1:1 double wrap, U groove, two simple bends over D_p = D_t", () => {
    expect(1 + 1 + pulleyBends({ sheave: 0.4, pulley: 0.4, simple: 2, reversed: 0 })).toBe(4);
  });
});

describe("Ex 5c: required factor; status: computed", () => {
  test.each([
    [40, 14.1472, 21.19],
    [50, 14.1472, 15.06],
    [40, 10.0625, 18.72],
    [40, 4, 13.38],
    [40, 5, 14.52],
  ])("D/d %d, N %d: %d", (ratio, bends, factor) => {
    expect(toDigits(requiredByBends(ratio, bends), 4)).toBe(factor);
  });

  test("D/d 40, N 7: the list says 16.41, rounded twice; with forty digits it is 16.40495", () => {
    expect(toDigits(requiredByBends(40, 7), 7)).toBe(16.40495);
  });
});

describe("Ex 5d: between the rows of the tables; status: computed", () => {
  test.each([
    ["V 39°", grooveV, 39, 11],
    ["undercut 97°", grooveUndercut, 97, 8.02],
    ["undercut 92.5°", grooveUndercut, 92.5, 5.85],
  ] as const)("%s", (_, table, angle, bends) => {
    expect(toDigits(interpolated(table, angle), 4)).toBe(bends);
  });
});

describe("Ex 5e: breaking force of a rope", () => {
  test("8x19 steel core, 8 mm, 1770: 40.33 kN; status: second-hand notes", () => {
    expect(toDigits(breakingForce("8x19 steel", 0.008, 1770) / 1000, 4)).toBe(40.33);
  });

  test.each([
    [0.01, 43.95],
    [0.013, 74.28],
  ])("8x19 fibre core, 1500, %d m: %d kN; status: computed", (diameter, force) => {
    expect(toDigits(breakingForce("8x19 fibre", diameter, 1500) / 1000, 4)).toBe(force);
  });
});

test("Ex 5f: five ropes of 10 mm, 1:1; status: computed", () => {
  const force = forceOfOneRope({ ropes: 5, roping: 1, car: 1000, ratedLoad: 630, ropeMass: 35 });
  expect(toDigits(breakingForce("8x19 fibre", 0.01, 1500) / force, 4)).toBe(13.46);
});
