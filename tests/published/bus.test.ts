import { describe, expect, test } from "vitest";
import {
  bitRateLimits,
  conductorResistance,
  directCurrentLength,
  dropAt,
  readTerminators,
  resistanceSeen,
} from "#shared-lib/calculators/bus-physics.ts";
import { panelBus } from "#shared-lib/calculators/panel-bus.ts";

const toDigits = (value: number | null | undefined, digits: number): number =>
  Number((value ?? Number.NaN).toPrecision(digits));

describe("length by resistance, AN96116 equation 16; formula published, values computed", () => {
  test.each([
    { resistance: 0.07, margin: 0, lengths: [356.3, 307.2, 266.0] },
    { resistance: 0.07, margin: 0.2, lengths: [259.1, 223.4, 193.5] },
    { resistance: 0.04, margin: 0.2, lengths: [453.4, 391.0, 338.6] },
  ])("$resistance ohm/m, margin $margin, 32, 64 and 100 nodes", ({ resistance, margin, lengths }) => {
    const found = [32, 64, 100].map((nodes) =>
      toDigits(directCurrentLength({ resistance, nodes, margin }), 4),
    );
    expect(found).toEqual(lengths);
  });
});

describe("resistance seen at one end; status: computed", () => {
  const line = { length: 0, resistance: 0, panels: 0, inputResistance: null, near: true, far: true };
  test.each([
    { words: "100 m at 70 mohm/m", with: { length: 100, resistance: 0.07 }, ohm: 63.31 },
    { words: "300 m at 40 mohm/m", with: { length: 300, resistance: 0.04 }, ohm: 65.45 },
    { words: "60 nodes of 50 kohm", with: { panels: 60, inputResistance: 50_000 }, ohm: 55.97 },
    { words: "60 nodes of 20 kohm", with: { panels: 60, inputResistance: 20_000 }, ohm: 50.85 },
  ])("$words: $ohm ohm, inside 50 to 70", (row) => {
    const ohm = resistanceSeen({ ...line, ...row.with });
    expect(toDigits(ohm, 4)).toBe(row.ohm);
    expect(readTerminators(ohm ?? 0)).toBe("two");
  });
});

describe("what a reading means; status: published", () => {
  test.each([
    [60, "two"],
    [50, "two"],
    [70, "two"],
    [120, "one"],
    [40, "more than two"],
    [0, "short"],
  ] as const)("%d ohm: %s", (ohm, found) => {
    expect(readTerminators(ohm)).toBe(found);
  });

  test("the acceptance band is 50 to 70 ohm", () => {
    const result = panelBus.compute({ reading: "value", resistance: 60, power: "off" });
    expect(result.comparisons[0]?.limit).toMatchObject({
      least: 50,
      most: 70,
      source: { status: "published" },
    });
  });
});

describe("bit rate against length and stubs; status: published, practice after CiA recommendations", () => {
  test("bus length", () => {
    const table = bitRateLimits.map((row) => [row.bitRate / 1000, row.length]);
    expect(table).toEqual([
      [1000, 25],
      [800, 50],
      [500, 100],
      [250, 250],
      [125, 500],
      [50, 1000],
      [20, 2500],
      [10, 5000],
    ]);
  });

  test("single stub and sum of stubs", () => {
    const stubs = bitRateLimits.filter((row) => row.stub !== null).map((row) => [row.stub, row.stubs]);
    expect(stubs).toEqual([
      [1.5, 7.5],
      [2.5, 12.5],
      [5.5, 27.5],
      [11, 55],
      [22, 110],
      [55, 275],
    ]);
  });
});

describe("supply riser; status: computed, conductor IEC 60228 class 5 published", () => {
  test("conductor resistances, ohm/km", () => {
    expect(Object.values(conductorResistance).map((each) => toDigits(each * 1000, 3))).toEqual([
      39, 26, 19.5, 13.3, 7.98, 4.95,
    ]);
  });

  const good = { supply: 24, panels: 20, current: 0.03, span: 3.3, feeder: 0, resistance: 0.026 };
  test("24 V, 20 panels of 30 mA, 3.3 m of 0.75 mm²", () => {
    expect(toDigits(2 * good.span * good.resistance, 4)).toBe(0.1716);
    expect(toDigits(dropAt(good, 20), 4)).toBe(1.081);
    expect(toDigits(24 - dropAt(good, 20), 4)).toBe(22.92);
  });

  test("the same with 10 m of feeder, through the calculator", () => {
    const result = panelBus.compute({
      supply: 24,
      panels: 20,
      panelCurrent: 0.03,
      span: 3.3,
      feeder: 10,
      conductor: "0.75",
    });
    const value = (key: string) => toDigits(result.values.find((line) => line.key === key)?.value, 4);
    expect([value("drop"), value("lastVoltage"), value("zeroShift")]).toEqual([1.393, 22.61, 0.6965]);
  });

  test("the bad case: 40 panels of 50 mA, 3.0 m of 0.5 mm², 10 m of feeder", () => {
    const result = panelBus.compute({
      supply: 24,
      panels: 40,
      panelCurrent: 0.05,
      span: 3,
      feeder: 10,
      conductor: "0.5",
    });
    const value = (key: string) => toDigits(result.values.find((line) => line.key === key)?.value, 4);
    expect([value("drop"), value("lastVoltage")]).toEqual([11.15, 12.85]);
  });
});
