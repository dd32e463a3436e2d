import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { calculatorById, calculators } from "#shared-lib/calculators/registry.ts";
import type { Result } from "#shared-lib/calculators/result.ts";
import { formatDate } from "#shared-lib/format.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
let liftId: string;
let landings: readonly { readonly id: string; readonly marking: string }[];
beforeEach(async () => {
  bench = await openTestCore();
  liftId = addLift(bench).liftId;
  bench.ask("lift.change", {
    id: liftId,
    version: 1,
    fields: { magnetLength: 0.25, sensorSpacing: 0.03, unlockingZone: 0.2, unlockNeeds: "either" },
  });
  landings = bench.ask("lift.find", { id: liftId }).landings;
});
afterEach(() => bench.close());

const landing = (marking: string): string => {
  const found = landings.find((one) => one.marking === marking);
  if (!found) throw new Error(`no landing ${marking}`);
  return found.id;
};

function save(marking: string, centreUp: number, centreDown: number) {
  return bench.ask("calculation.save", {
    calculatorId: "zone-sensors",
    liftId,
    landingId: landing(marking),
    inputs: {
      measured: "positions",
      landing: marking,
      magnetLength: 0.25,
      sensorSpacing: 0.03,
      unlockingZone: "200",
      unlockNeeds: "either",
      zoneTolerance: 0.01,
      centreUp,
      centreDown,
    },
  });
}

function refused(input: object, operation = "calculator.compute") {
  const envelope = bench.core.request({ operation, input, as: bench.people.engineer });
  if (envelope.ok) throw new Error("it was accepted");
  return {
    code: envelope.error.code,
    paths: envelope.error.details.fields?.map(({ path }) => path.join(".")),
  };
}

test("every calculator is listed with its inputs as plain data", () => {
  const listed = bench.ask("calculator.list", {}).calculators;
  expect(listed.map(({ id }) => id)).toEqual(calculators.map(({ id }) => id));
  for (const calculator of listed) {
    expect(calculator.inputs).toEqual(expect.any(Array));
    expect(JSON.parse(JSON.stringify(calculator))).toEqual(calculator);
    expect(Object.keys(calculator)).not.toContain("schema");
  }
});

describe("computing", () => {
  test("answers the worked example of F1 (L 250, S 30, centre +4)", () => {
    const { result } = bench.ask("calculator.compute", {
      id: "zone-sensors",
      inputs: { magnetLength: 0.25, sensorSpacing: 0.03, centreUp: 0.01, centreDown: -0.002, speed: 0.3 },
    });
    const { values } = result as unknown as Result;
    const value = (key: string) => values.find((line) => line.key === key)?.value;
    expect(value("centre")).toBeCloseTo(0.004, 9);
    expect(value("delay")).toBeCloseTo(0.02, 9);
    expect(value("overlap")).toBeCloseTo(0.22, 9);
    expect(value("union")).toBeCloseTo(0.28, 9);
  });

  test("an unknown calculator is not found; unknown and wrong inputs name their fields", () => {
    expect(bench.refusal("calculator.compute", { id: "horoscope", inputs: {} })).toBe("not-found");
    expect(refused({ id: "zone-sensors", inputs: { magnetLength: "long", moon: 3 } })).toEqual({
      code: "input-invalid",
      paths: expect.arrayContaining(["inputs.magnetLength", "inputs.moon"]),
    });
  });

  test("missing values are part of the answer", () => {
    const { result } = bench.ask("calculator.compute", { id: "zone-sensors", inputs: {} });
    expect(result).toMatchObject({
      verdict: { word: "Not enough", holds: null },
      missing: ["magnetLength", "sensorSpacing"],
    });
  });
});

describe("the results saved last", () => {
  test("come from every lift, newest first, with their place in words; a deleted one is not among them", () => {
    const first = save("2", 0.004, 0.002);
    bench.minutes(5);
    const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
    const second = bench.ask("calculation.save", {
      calculatorId: "panel-bus",
      liftId: other,
      inputs: { panels: 6 },
    });
    const recent = () => bench.ask("calculation.recent", {}).calculations;
    expect(recent()).toMatchObject([
      { id: second.id, liftTitle: "Saltpan Court, Lift 1", landingMarking: null },
      {
        id: first.id,
        liftTitle: "Kittiwake House, Lift 2",
        landingMarking: "2",
        verdictWord: first.verdictWord,
        by: { name: "Ines Calder" },
      },
    ]);
    expect(bench.ask("calculation.recent", { limit: 1 }).calculations.map(({ id }) => id)).toEqual([
      second.id,
    ]);
    bench.ask("record.delete", { entity: "calculation", id: second.id, version: 1 });
    expect(recent().map(({ id }) => id)).toEqual([first.id]);
  });
});

describe("saving a result", () => {
  test("computes it again and lists it newest first, with its verdict", () => {
    const first = save("2", 0.004, 0.002);
    bench.minutes(5);
    const second = save("3", 0.3, 0.29);
    const { calculations } = bench.ask("calculation.list", { liftId });
    expect(calculations.map(({ id }) => id)).toEqual([second.id, first.id]);
    expect(calculations[0]).toMatchObject({
      calculatorName: calculatorById("zone-sensors")?.name,
      by: { name: "Ines Calder" },
      landingId: landing("3"),
      verdictWord: second.verdictWord,
      verdictSentence: second.verdictSentence,
      inputs: { centreUp: 0.3 },
      result: { verdict: { word: second.verdictWord } },
    });
    expect([first.verdictWord, second.verdictWord]).toEqual(["Within", "Outside"]);
    expect(bench.ask("calculation.list", { liftId, landingId: landing("2") }).calculations).toHaveLength(1);
    expect(bench.ask("calculation.list", { liftId, calculatorId: "panel-bus" }).calculations).toEqual([]);
  });

  test("refuses what is not enough, a landing and a visit of another lift", () => {
    const input = { calculatorId: "zone-sensors", liftId, inputs: { centreUp: 0.01 } };
    expect(refused(input, "calculation.save")).toEqual({
      code: "input-invalid",
      paths: ["inputs.magnetLength", "inputs.sensorSpacing"],
    });
    const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
    const inputs = { magnetLength: 0.25, sensorSpacing: 0.03, centreUp: 0.01, centreDown: 0 };
    expect(
      refused({ ...input, inputs, liftId: other, landingId: landing("2") }, "calculation.save").paths,
    ).toEqual(["landingId"]);
    const visit = bench.ask("visit.record", {
      liftId,
      kind: "maintenance",
      engineerId: bench.people.engineer,
      arrivedAt: new Date(bench.now).toISOString(),
    });
    expect(refused({ ...input, inputs, liftId: other, visitId: visit.id }, "calculation.save").paths).toEqual(
      ["visitId"],
    );
    bench.ask("calculation.save", { ...input, inputs, visitId: visit.id });
  });
});

describe("filling in inputs", () => {
  const fill = (landingId: string | null = null) =>
    bench.ask("calculator.prefill", { id: "zone-sensors", liftId, landingId });

  test("from the lift and the landing, each with where it is from", () => {
    expect(fill(landing("2"))).toEqual({
      inputs: {
        landing: "2",
        magnetLength: 0.25,
        sensorSpacing: 0.03,
        ratedSpeed: 1,
        unlockingZone: "200",
        unlockNeeds: "either",
      },
      from: {
        landing: "from landing 2",
        magnetLength: "from the lift",
        sensorSpacing: "from the lift",
        ratedSpeed: "from the lift",
        unlockingZone: "from the lift",
        unlockNeeds: "from the lift",
      },
    });
    expect(fill().inputs).not.toHaveProperty("landing");
  });

  test("from saved results of the other landings, the newest of each, and of this one", () => {
    save("0", 0.05, 0.05);
    const day = formatDate(new Date(bench.now));
    bench.minutes(1);
    save("0", -0.012, -0.014);
    save("1", 0.004, 0.004);
    save("2", 0.09, 0.08);
    const { inputs, from } = fill(landing("2"));
    expect(inputs).toMatchObject({
      othersChecked: 2,
      centreUp: 0.09,
      measured: "positions",
      magnetLength: 0.25,
    });
    expect(inputs.othersLargest).toBeCloseTo(0.013, 9);
    expect(from).toMatchObject({
      othersChecked: "from saved results of 2 other landings",
      othersLargest: "from saved results of 2 other landings",
      centreUp: `from the result of ${day}`,
      magnetLength: "from the lift",
    });
    // What the form is filled in with can be computed as it is.
    bench.ask("calculator.compute", { id: "zone-sensors", inputs });
    const [newest] = bench.ask("calculation.list", { liftId, landingId: landing("1") }).calculations;
    bench.ask("record.delete", { entity: "calculation", id: newest?.id ?? "", version: 1 });
    expect(fill(landing("2")).from.othersChecked).toBe("from saved results of 1 other landing");
  });

  test("of every calculator names inputs it has", () => {
    for (const { id, schema } of calculators) {
      const { inputs, from } = bench.ask("calculator.prefill", { id, liftId, landingId: landing("1") });
      expect(schema.safeParse(inputs).success, id).toBe(true);
      expect(Object.keys(from).sort()).toEqual(Object.keys(inputs).sort());
    }
    expect(bench.refusal("calculator.prefill", { id: "horoscope", liftId })).toBe("not-found");
  });
});
