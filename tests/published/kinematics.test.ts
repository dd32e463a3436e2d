import { describe, expect, test } from "vitest";
import { stopFrom, tripOver } from "#shared-lib/calculators/kinematics.ts";
import { terminalSlowdown } from "#shared-lib/calculators/terminal-slowdown.ts";

/** The examples print four digits. */
const fourDigits = (value: number | undefined): number => Number((value ?? Number.NaN).toPrecision(4));

/** Stop by plain integration of the jerk, independent of the closed forms. */
function integrated(
  speed: number,
  peak: number,
  jerkStart: number,
  jerkEnd: number,
): { time: number; distance: number } {
  const buildUp = peak / jerkStart;
  const easeOff = peak / jerkEnd;
  const hold = (speed - peak ** 2 / (2 * jerkStart) - peak ** 2 / (2 * jerkEnd)) / peak;
  const time = buildUp + hold + easeOff;
  const steps = 200_000;
  const step = time / steps;
  const retardation = (at: number): number =>
    at < buildUp ? jerkStart * at : at < buildUp + hold ? peak : Math.max(0, jerkEnd * (time - at));
  let now = speed;
  let distance = 0;
  for (let index = 0; index < steps; index += 1) {
    const next = now - retardation((index + 0.5) * step) * step;
    distance += ((now + next) / 2) * step;
    now = next;
  }
  return { time, distance };
}

describe("stops; status: computed by hand arithmetic, derived kinematics", () => {
  test.each([
    {
      speed: 1.6,
      retardation: 0.8,
      jerkStart: 0.8,
      jerkEnd: 0.8,
      reaction: 0.1,
      time: 3.0,
      distance: 2.4,
      total: 2.56,
    },
    {
      speed: 1.0,
      retardation: 0.7,
      jerkStart: 1.0,
      jerkEnd: 1.0,
      reaction: 0.15,
      time: 2.129,
      distance: 1.064,
      total: 1.214,
    },
    {
      speed: 0.4,
      retardation: 1.0,
      jerkStart: 1.0,
      jerkEnd: 1.0,
      reaction: 0,
      time: 1.265,
      distance: 0.253,
      total: 0.253,
    },
    {
      speed: 2.5,
      retardation: 1.0,
      jerkStart: 1.2,
      jerkEnd: 1.2,
      reaction: 0.2,
      time: 3.333,
      distance: 4.167,
      total: 4.667,
    },
    {
      speed: 1.6,
      retardation: 0.8,
      jerkStart: 1.2,
      jerkEnd: 0.6,
      reaction: 0,
      time: 3.0,
      distance: 2.178,
      total: 2.178,
    },
  ])("v $speed, a $retardation, j $jerkStart and $jerkEnd", (row) => {
    const stop = stopFrom(row);
    expect(fourDigits(stop.time)).toBe(row.time);
    expect(fourDigits(stop.distance)).toBe(row.distance);
    const { speed, retardation, jerkStart, jerkEnd, reaction } = row;
    const result = terminalSlowdown.compute({
      speed,
      retardation,
      jerkStart,
      jerkEnd,
      reactionTime: reaction,
    });
    expect(fourDigits(result.values.find((line) => line.key === "required")?.value)).toBe(row.total);
    const plain = integrated(row.speed, stop.peak, row.jerkStart, row.jerkEnd);
    expect(stop.time).toBeCloseTo(plain.time, 9);
    expect(stop.distance).toBeCloseTo(plain.distance, 7);
  });

  test("at 0.4 m/s the retardation only reaches 0.6325 m/s²", () => {
    const stop = stopFrom({ speed: 0.4, retardation: 1, jerkStart: 1, jerkEnd: 1 });
    expect(fourDigits(stop.peak)).toBe(0.6325);
    expect(stop.reached).toBe(false);
  });
});

describe("trips at 1.6 m/s, a and j 0.8; status: computed, form of Peters from memory", () => {
  test.each([
    { distance: 30, time: 21.75, peak: 1.6 },
    { distance: 3.3, time: 5.183, peak: 1.273 },
    { distance: 0.8, time: 3.175, peak: 0.504 },
  ])("$distance m", ({ distance, time, peak }) => {
    const trip = tripOver(distance, 1.6, 0.8, 0.8);
    expect(fourDigits(trip.time)).toBe(time);
    expect(fourDigits(trip.peakSpeed)).toBe(peak);
  });
});
