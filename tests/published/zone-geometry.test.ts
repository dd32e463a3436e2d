import { describe, expect, test } from "vitest";
import {
  centreFromRuns,
  delayFromRuns,
  lengthOf,
  reachOf,
  type Zone,
  zonesOf,
} from "#shared-lib/calculators/zone-geometry.ts";
import { expectedOrder } from "#shared-lib/calculators/zone-order.ts";
import { zoneSensors } from "#shared-lib/calculators/zone-sensors.ts";

/** mm as in the worked examples, rounded to what they print. */
const mm = (zone: Zone | null): number[] =>
  zone === null ? [] : [zone.from, zone.to].map((x) => Math.round(x * 1e6) / 1e3);

describe("two sensors and one magnet; status: computed by hand arithmetic, derived geometry", () => {
  test("L 250, S 30, e +4", () => {
    const zones = zonesOf({
      upperLength: 0.25,
      lowerLength: 0.25,
      spacing: 0.03,
      centre: 0.004,
      sensorsOn: "car",
    });
    expect(mm(zones.upper)).toEqual([-136, 114]);
    expect(mm(zones.lower)).toEqual([-106, 144]);
    expect(mm(zones.both)).toEqual([-106, 114]);
    expect(mm(zones.either)).toEqual([-136, 144]);
    expect(lengthOf(zones.both ?? zones.either)).toBeCloseTo(0.22, 12);
    expect(lengthOf(zones.either)).toBeCloseTo(0.28, 12);
    expect(reachOf(zones.either)).toBeCloseTo(0.144, 12);
    expect(0.2 - reachOf(zones.either)).toBeCloseTo(0.056, 12);
    expect(0.35 - reachOf(zones.either)).toBeCloseTo(0.206, 12);
  });

  test("L 180, S 60, e -6", () => {
    const zones = zonesOf({
      upperLength: 0.18,
      lowerLength: 0.18,
      spacing: 0.06,
      centre: -0.006,
      sensorsOn: "car",
    });
    expect(mm(zones.upper)).toEqual([-126, 54]);
    expect(mm(zones.lower)).toEqual([-66, 114]);
    expect(lengthOf(zones.both ?? zones.either)).toBeCloseTo(0.12, 12);
    expect(lengthOf(zones.either)).toBeCloseTo(0.24, 12);
  });

  test("v 0.300 m/s, e_up +10, e_down -2: e +4.000 mm, tau 20.00 ms", () => {
    expect(centreFromRuns(0.01, -0.002)).toBeCloseTo(0.004, 12);
    expect(delayFromRuns(0.01, -0.002, 0.3)).toBeCloseTo(0.02, 12);
  });

  test("the calculator says the same", () => {
    const result = zoneSensors.compute({
      magnetLength: 0.25,
      sensorSpacing: 0.03,
      centreUp: 0.01,
      centreDown: -0.002,
      speed: 0.3,
      unlockNeeds: "either",
      unlockingZone: "200",
    });
    const value = (key: string) => result.values.find((line) => line.key === key)?.value;
    expect(value("centre")).toBeCloseTo(0.004, 12);
    expect(value("delay")).toBeCloseTo(0.02, 12);
    expect(value("overlap")).toBeCloseTo(0.22, 12);
    expect(value("union")).toBeCloseTo(0.28, 12);
    expect(result.comparisons.find((each) => each.key === "reach")?.value).toBeCloseTo(0.144, 12);
    expect(result.verdict.word).toBe("Within");
  });
});

describe("common practice, no source", () => {
  test("moving down, the lower sensor comes on first", () => {
    expect(expectedOrder("down", "car")[0]).toBe("lowerOn");
  });

  test("a 300 mm magnet with its middle between the two sensors when the sills are level is in place", () => {
    const result = zoneSensors.compute({
      magnetLength: 0.3,
      sensorSpacing: 0.06,
      centreUp: 0,
      centreDown: 0,
      zoneTolerance: 0.005,
      unlockNeeds: "both",
      unlockingZone: "200",
      sillDistance: 0,
    });
    expect(result.verdict).toMatchObject({ word: "Within", holds: true });
  });
});

describe("limits; status second-hand (notes that transcribe the clause)", () => {
  const base = { magnetLength: 0.3, sensorSpacing: 0.06, centreUp: 0, centreDown: 0, zoneTolerance: 0.005 };
  const limitOf = (key: string, input: Record<string, number | string>) =>
    zoneSensors.compute({ ...base, ...input }).comparisons.find((each) => each.key === key)?.limit;

  test("stopping accuracy ±10 mm, EN 81-20:2020 5.12.1.1.4", () => {
    expect(limitOf("sills", { sillDistance: 0.004 })).toMatchObject({
      least: -0.01,
      most: 0.01,
      source: { document: "EN 81-20", edition: "2020", clause: "5.12.1.1.4", status: "second-hand" },
    });
  });

  test("unlocking zone ±0.20 m and ±0.35 m, EN 81-20:2020 5.3.8.1", () => {
    const source = { document: "EN 81-20", edition: "2020", clause: "5.3.8.1", status: "second-hand" };
    expect(limitOf("reach", { unlockNeeds: "both", unlockingZone: "200" })).toMatchObject({
      most: 0.2,
      source,
    });
    expect(limitOf("reach", { unlockNeeds: "both", unlockingZone: "350" })).toMatchObject({
      most: 0.35,
      source,
    });
  });
});
