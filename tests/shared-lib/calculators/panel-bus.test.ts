import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dropAt, readTerminators, resistanceSeen } from "#shared-lib/calculators/bus-physics.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { panelBus } from "#shared-lib/calculators/panel-bus.ts";

const compute = (input: CalculatorInput) => panelBus.compute(input);
const read = (resistance: number) => compute({ reading: "value", resistance, power: "off" }).verdict;
const value = (input: CalculatorInput, key: string) =>
  compute(input).values.find((each) => each.key === key)?.value;

describe("reading between the two bus lines", () => {
  test("50 to 70 ohm, from both sides", () => {
    expect([50, 60, 70].map((ohm) => read(ohm).word)).toEqual(["Within", "Within", "Within"]);
    expect([49.99, 70.01].map((ohm) => read(ohm).word)).toEqual(["Outside", "Outside"]);
  });

  test("120, 40, 0 and open are told apart", () => {
    expect(read(120).sentence).toContain("Only one terminator");
    expect(read(40).sentence).toContain("about 40 Ω is three");
    expect(read(0).sentence).toContain("shorted");
    expect(compute({ reading: "open", power: "off" }).verdict.sentence).toContain("No terminator");
    expect(read(82).sentence).toContain("fits no number of terminators");
  });

  // 5, 30, 50, 70, 95 and 160 ohm: 50 and 70 are published, the others our own reading of what lies between.
  test.each([
    [4.9, "short"],
    [5, "unclear"],
    [29.9, "unclear"],
    [30, "more than two"],
    [49.9, "more than two"],
    [50, "two"],
    [70, "two"],
    [70.1, "unclear"],
    [94.9, "unclear"],
    [95, "one"],
    [160, "one"],
    [160.1, "none"],
  ] as const)("%d ohm: %s", (ohm, found) => {
    expect(readTerminators(ohm)).toBe(found);
  });

  test("with power on a reading means nothing, and says so at the field", () => {
    const result = compute({ reading: "value", resistance: 120, power: "on" });
    expect(result.problems.map((each) => each.field)).toEqual(["power"]);
    expect(result.verdict.word).toBe("Not enough");
    expect(result.comparisons).toEqual([]);
  });

  test("a reading needs the word that power was off", () => {
    expect(compute({ reading: "value", resistance: 60 }).missing).toEqual(["power"]);
  });

  test("more panels or a shorter line, less resistance; never under half of a terminator's parallel", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.double({ min: 20_000, max: 1e6, noNaN: true }),
        (panels, length, inputResistance) => {
          const line = { panels, length, inputResistance, resistance: 0.04, near: true, far: true };
          const ohm = resistanceSeen(line) ?? 0;
          expect(resistanceSeen({ ...line, length: length + 10 })).toBeGreaterThan(ohm);
          expect(resistanceSeen({ ...line, inputResistance: inputResistance * 1.1 })).toBeGreaterThan(ohm);
          expect(resistanceSeen({ ...line, far: false })).toBeGreaterThan(ohm);
          expect(ohm).toBeLessThan(120);
        },
      ),
    );
  });

  test("nothing closes the loop: no number, and no value line", () => {
    expect(
      resistanceSeen({
        panels: 0,
        length: 10,
        inputResistance: null,
        resistance: 0.07,
        near: false,
        far: false,
      }),
    ).toBeNull();
  });
});

describe("bit rate against length and stubs, from both sides", () => {
  test.each([
    ["1000", 25],
    ["250", 250],
    ["125", 500],
    ["10", 5000],
  ])("%s kbit/s up to %d m", (bitRate, most) => {
    expect(compute({ bitRate, busLength: most }).verdict.word).toBe("Within");
    expect(compute({ bitRate, busLength: most + 0.01 }).verdict.word).toBe("Outside");
  });

  test("single stub and all stubs", () => {
    const stubs = (longestStub: number, allStubs: number) =>
      compute({ bitRate: "125", longestStub, allStubs }).verdict.word;
    expect([stubs(22, 110), stubs(22.1, 110), stubs(22, 110.1)]).toEqual(["Within", "Outside", "Outside"]);
    expect(compute({ bitRate: "20", longestStub: 5 }).comparisons[0]).toMatchObject({
      holds: null,
      word: "no limit given",
    });
  });

  test("all stubs shorter than one stub gets a sentence", () => {
    expect(
      compute({ bitRate: "125", longestStub: 10, allStubs: 5 }).problems.map((each) => each.field),
    ).toEqual(["allStubs"]);
  });
});

describe("supply riser", () => {
  const riser = { supply: 24, panels: 20, panelCurrent: 0.03, span: 3.3, feeder: 10, conductor: "0.75" };

  test("the sum over every span is the closed form, at every panel", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        (panels, current) => {
          const parts = { supply: 24, panels, current, span: 3, feeder: 8, resistance: 0.026 };
          let drop = panels * current * 2 * 8 * 0.026;
          for (let panel = 1; panel <= panels; panel += 1) {
            drop += (panels - panel + 1) * current * 2 * 3 * 0.026;
            expect(dropAt(parts, panel)).toBeCloseTo(drop, 9);
          }
        },
      ),
    );
  });

  test("the panel's least supply, from both sides; without one there is no verdict on it", () => {
    const last = value(riser, "lastVoltage") ?? 0;
    const at = (leastVoltage: number) => compute({ ...riser, leastVoltage }).verdict.word;
    expect([at(last), at(last + 1e-4)]).toEqual(["Within", "Outside"]);
    expect(compute(riser).comparisons[0]).toMatchObject({ key: "lastVoltage", holds: null });
  });

  test("the curve falls from panel to panel and has one point a landing", () => {
    const curve = compute(riser).drawings.find((each) => each.kind === "curve");
    if (curve?.kind !== "curve") throw new Error("The curve is missing.");
    const points = curve.series[0]?.points ?? [];
    expect(points.map(([panel]) => panel)).toEqual(Array.from({ length: 21 }, (_, index) => index));
    for (const [index, [, voltage]] of points.entries()) {
      if (index > 0) expect(voltage).toBeLessThan(points[index - 1]?.[1] ?? 0);
    }
  });

  test("a riser that cannot carry its currents is said to be so, never a voltage below nothing", () => {
    const result = compute({ ...riser, panels: 200, panelCurrent: 1 });
    expect(result.verdict.sentence).toContain("cannot carry");
    expect(result.values.find((each) => each.key === "lastVoltage")).toBeUndefined();
  });

  test("a riser begun but not finished names what is missing", () => {
    expect(compute({ supply: 24 }).notes.join(" ")).toContain(
      "still needed: panels, current of one panel, distance between panels, conductor",
    );
  });

  test("a least supply above the supply gets a sentence", () => {
    expect(compute({ ...riser, leastVoltage: 30 }).problems.map((each) => each.field)).toEqual([
      "leastVoltage",
    ]);
  });
});
