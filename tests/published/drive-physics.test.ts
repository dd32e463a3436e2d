import { describe, expect, test } from "vitest";
import {
  carSpeedAt,
  countsPerMetre,
  sheaveSpeed,
  sheaveTorque,
  slipOf,
  steadyPower,
  synchronousFrequency,
  synchronousSpeed,
} from "#shared-lib/calculators/drive-physics.ts";

/** The examples print four digits. */
const fourDigits = (value: number): number => Number(value.toPrecision(4));
/** One unit of the fourth digit: three examples print a number that is not rounded to the nearest. */
const lastDigit = (printed: number): number => 10 ** (Math.floor(Math.log10(printed)) - 3);
const offBy = (value: number, printed: number): number => Math.abs(value - printed) / lastDigit(printed);
const perMinute = (perSecond: number): number => fourDigits(perSecond * 60);

describe("sheave and motor speed; status: computed by hand arithmetic, derived", () => {
  test.each([
    { v: 1.0, roping: 2, diameter: 0.4, sheave: 95.49 },
    { v: 1.0, roping: 1, diameter: 0.52, sheave: 36.73 },
    { v: 1.6, roping: 2, diameter: 0.32, sheave: 191.0 },
  ])("$v m/s, $roping:1, $diameter m", ({ v, roping, diameter, sheave }) => {
    const hung = { roping, sheaveDiameter: diameter };
    expect(perMinute(sheaveSpeed(v, hung))).toBe(sheave);
    expect(carSpeedAt(sheaveSpeed(v, hung) * 41, 41, hung)).toBeCloseTo(v, 12);
  });

  test("gear 41 on a 520 mm sheave: 1506 per minute", () => {
    expect(perMinute(41 * sheaveSpeed(1, { roping: 1, sheaveDiameter: 0.52 }))).toBe(1506);
  });
});

describe("synchronous speed and slip; status: computed by hand arithmetic, derived", () => {
  test("50 Hz: 4 poles 1500, 6 poles 1000 per minute; 1440 per minute is 4.000 % slip", () => {
    expect(perMinute(synchronousSpeed(50, 4))).toBe(1500);
    expect(perMinute(synchronousSpeed(50, 6))).toBe(1000);
    expect(fourDigits(slipOf(1500, 1440))).toBe(0.04);
  });

  test("95.49 per minute with 20 poles: 15.92 Hz", () => {
    // Exactly 15.915.
    expect(offBy(synchronousFrequency(95.49 / 60, 20), 15.92)).toBeLessThanOrEqual(0.5 + 1e-9);
  });
});

describe("encoder scale; status: computed by hand arithmetic, derived", () => {
  test("1024 on a 400 mm sheave, 2:1: 1.630 per mm, 0.6136 mm per pulse, four edges 6.519 per mm", () => {
    const encoder = { pulses: 1024, edges: 1, turns: 1, roping: 2, sheaveDiameter: 0.4 };
    const perMillimetre = countsPerMetre(encoder) / 1000;
    expect(fourDigits(perMillimetre)).toBe(1.63);
    expect(fourDigits(1 / perMillimetre)).toBe(0.6136);
    expect(fourDigits(countsPerMetre({ ...encoder, edges: 4 }) / 1000)).toBe(6.519);
  });

  test("1024 on the motor, 520 mm, 1:1, gear 41: 25.70 per mm", () => {
    const encoder = { pulses: 1024, edges: 1, turns: 41, roping: 1, sheaveDiameter: 0.52 };
    expect(fourDigits(countsPerMetre(encoder) / 1000)).toBe(25.7);
  });
});

describe("power and torque; status: computed by hand arithmetic, derived", () => {
  test.each([
    { ratedLoad: 1000, balance: 0.5, speed: 1.6, efficiency: 0.8, kilowatt: 9.807 },
    { ratedLoad: 630, balance: 0.5, speed: 1.0, efficiency: 0.55, kilowatt: 5.616 },
    { ratedLoad: 630, balance: 0.45, speed: 1.0, efficiency: 0.85, kilowatt: 3.998 },
  ])("$ratedLoad kg, $balance, $speed m/s, $efficiency", ({ kilowatt, ...hoist }) => {
    // 5.616 is cut off, not rounded: 5.61654.
    expect(offBy(steadyPower(hoist, hoist.ratedLoad, "up") / 1000, kilowatt)).toBeLessThan(0.6);
  });

  test("1000 kg, balance 0.5, 400 mm, 2:1, efficiency 0.85: 576.9 N·m", () => {
    expect(fourDigits(sheaveTorque(500, 0.85, { sheaveDiameter: 0.4, roping: 2 }))).toBe(576.9);
  });
});

/**
 * Status: published table for geared lifts, 40 % counterbalance, 10 horsepower, with the efficiency it states for each
 * speed; our formula agrees within the rounding of the table.
 */
describe("10 horsepower geared lifts", () => {
  const pound = 0.45359237;
  const footPerMinute = 0.3048 / 60;
  const horsepower = 550 * 0.3048 * 4.4482216152605;

  test.each([
    { pounds: 8800, feet: 25, efficiency: 0.4, ours: 10.0 },
    { pounds: 2800, feet: 100, efficiency: 0.51, ours: 9.982 },
    { pounds: 1500, feet: 200, efficiency: 0.55, ours: 9.917 },
    { pounds: 840, feet: 400, efficiency: 0.61, ours: 10.02 },
  ])("$pounds lb at $feet ft/min", ({ pounds, feet, efficiency, ours }) => {
    const hoist = { ratedLoad: pounds * pound, balance: 0.4, speed: feet * footPerMinute, efficiency };
    const power = steadyPower(hoist, hoist.ratedLoad, "up");
    // 10.02 is rounded up: 10.0149.
    expect(offBy(power / horsepower, ours)).toBeLessThan(0.6);
    expect(Math.abs(power / horsepower - 10)).toBeLessThan(0.1);
    if (feet === 100) expect(fourDigits(power / 1000)).toBe(7.444);
  });
});
