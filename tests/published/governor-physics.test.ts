import { describe, expect, test } from "vitest";
import {
  gravityStop,
  guidedTravel,
  leastStroke,
  trippingBounds,
} from "#shared-lib/calculators/governor-physics.ts";

/** The examples print four digits. */
const fourDigits = (value: number | null): number => Number((value ?? Number.NaN).toPrecision(4));
const threeDecimals = (value: number): number => Number((Math.round(value * 1000 + 1e-7) / 1000).toFixed(3));

/** Status: computed from EN 81-20:2020 5.6.2.2.1.1, second-hand. The list prints three decimals, one line four digits. */
describe("tripping speed, progressive safety gear", () => {
  test.each([
    { speed: 0.63, least: 0.725, below: 1.5 },
    { speed: 1.0, least: 1.15, below: 1.5 },
    { speed: 1.6, least: 1.84, below: 2.156 },
    { speed: 1.75, least: 2.013, below: 2.33 },
    { speed: 2.0, least: 2.3, below: 2.625 },
    { speed: 2.5, least: 2.875, below: 3.225 },
    { speed: 4.0, least: 4.6, below: 5.063 },
  ])("$speed m/s", ({ speed, least, below }) => {
    const bounds = trippingBounds(speed, "progressive");
    expect(threeDecimals(bounds.least)).toBe(least);
    expect(threeDecimals(bounds.below)).toBe(below);
  });

  test("0.63 m/s: 0.7245 m/s; the other gears: 0.8 and 1.0 m/s", () => {
    expect(fourDigits(trippingBounds(0.63, "progressive").least)).toBe(0.7245);
    expect(trippingBounds(0.63, "instantaneous").below).toBe(0.8);
    expect(trippingBounds(0.63, "captive roller").below).toBe(1);
  });

  test("not the upper bound without 1.25 that some pages print: it lies under 1.15 v", () => {
    const misprint = 1.6 + 0.25 / 1.6;
    expect(misprint).toBeLessThan(trippingBounds(1.6, "progressive").least);
    expect(trippingBounds(1.6, "progressive").below).not.toBeCloseTo(misprint, 2);
  });
});

describe("buffers; status: computed from EN 81-20:2020 5.8.2 (second-hand) and 5.2.5.6.1.1 (published)", () => {
  const stroke = (buffer: "linear" | "dissipation", speed: number) =>
    leastStroke({ buffer, speed, contactSpeed: null });

  test("linear: 0.0536 m at 0.63 m/s, so 65 mm governs; 135.0 mm at 1.0 m/s", () => {
    expect(Number((0.135 * 0.63 ** 2).toPrecision(3))).toBe(0.0536);
    expect(stroke("linear", 0.63)).toBe(0.065);
    expect(fourDigits(stroke("linear", 1))).toBe(0.135);
  });

  test.each([
    { speed: 1.0, millimetres: 67.4 },
    { speed: 1.6, millimetres: 172.5 },
    { speed: 2.5, millimetres: 421.3 },
    { speed: 4.0, millimetres: 1078 },
  ])("dissipation at $speed m/s: $millimetres mm", ({ speed, millimetres }) => {
    // 421.25 is printed as 421.3: halves are rounded up.
    expect(fourDigits((stroke("dissipation", speed) ?? 0) * 1000 + 1e-6)).toBe(millimetres);
  });

  test("guided travel at 1.6 m/s: 89.60 mm, half of the gravity stopping distance", () => {
    expect(fourDigits(guidedTravel(1.6) * 1000)).toBe(89.6);
    expect(fourDigits(gravityStop(1, 9.81))).toBe(0.06741);
    expect(guidedTravel(1) / gravityStop(1, 9.81)).toBeCloseTo(0.5, 1);
  });
});
