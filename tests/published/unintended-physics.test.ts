import { describe, expect, test } from "vitest";
import {
  allowedTravel,
  naturalAcceleration,
  stopRunaway,
} from "#shared-lib/calculators/unintended-physics.ts";

/** The examples print four digits. */
const fourDigits = (value: number): number => Number(value.toPrecision(4));

describe("distance model; status: computed by hand arithmetic, derived", () => {
  test("1.0 m/s², detected after 150 mm, 0.20 s, braked with 2.0 m/s²", () => {
    const stop = stopRunaway({ acceleration: 1, detection: 0.15, reaction: 0.2, braking: 2 });
    expect(fourDigits(stop.speedDetected)).toBe(0.5477);
    expect(fourDigits(stop.reactionTravel)).toBe(0.1295);
    expect(fourDigits(stop.speedBraked)).toBe(0.7477);
    expect(fourDigits(stop.brakingTravel)).toBe(0.1398);
    expect(fourDigits(stop.total)).toBe(0.4193);
  });

  test("1.5 m/s², detected after 200 mm, 0.15 s, braked with 1.5 m/s²: 0.6661 m", () => {
    const stop = stopRunaway({ acceleration: 1.5, detection: 0.2, reaction: 0.15, braking: 1.5 });
    expect(fourDigits(stop.total)).toBe(0.6661);
  });
});

describe("limits; status: computed from numbers of EN 81-20 5.6.7.5 that are from memory", () => {
  test.each([
    { apronHeight: 0.75, doorHeight: 2.0, up: 0.95, down: 1.0 },
    { apronHeight: 0.75, doorHeight: 2.1, up: 0.95, down: 1.1 },
    { apronHeight: 1.05, doorHeight: 2.3, up: 1.2, down: 1.2 },
  ])("apron $apronHeight m, door $doorHeight m", ({ up, down, ...entrance }) => {
    const allowed = allowedTravel(entrance);
    expect(fourDigits(allowed.up)).toBe(up);
    expect(fourDigits(allowed.down)).toBe(down);
  });
});

test("natural acceleration; status: computed: 1000 kg car, 630 kg load, 1315 kg counterweight", () => {
  const masses = { car: 1000, counterweight: 1315 };
  expect(fourDigits(naturalAcceleration({ ...masses, load: 630 }))).toBe(1.049);
  expect(fourDigits(-naturalAcceleration({ ...masses, load: 0 }))).toBe(1.334);
});
