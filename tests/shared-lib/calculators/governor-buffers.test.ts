import { describe, expect, test } from "vitest";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { governorBuffers } from "#shared-lib/calculators/governor-buffers.ts";

const compute = (input: CalculatorInput) => governorBuffers.compute({ speed: 1.6, ...input });
const word = (input: CalculatorInput) => compute(input).verdict.word;

describe("tripping speed, second-hand", () => {
  const at = (tripping: number, more: CalculatorInput = {}) =>
    word({ gear: "progressive", tripping, ...more });

  test("progressive at 1.6 m/s: from both sides, the upper bound itself is outside", () => {
    expect([at(1.84), at(1.8399), at(2.1562), at(2.15625)]).toEqual([
      "Within",
      "Outside",
      "Within",
      "Outside",
    ]);
  });

  test("progressive up to 1.0 m/s: less than 1.5 m/s", () => {
    expect([at(1.499, { speed: 1 }), at(1.5, { speed: 1 })]).toEqual(["Within", "Outside"]);
  });

  test("instantaneous: less than 0.8, captive roller: less than 1.0 m/s", () => {
    const slow = { speed: 0.5 };
    const roller = { ...slow, gear: "captive roller" };
    const plain = { ...slow, gear: "instantaneous" };
    expect([at(0.799, plain), at(0.8, plain)]).toEqual(["Within", "Outside"]);
    expect([at(0.999, roller), at(1, roller)]).toEqual(["Within", "Outside"]);
  });

  test("an instantaneous gear above 0.63 m/s is outside whatever the governor does", () => {
    const verdict = compute({ speed: 0.64, gear: "captive roller", tripping: 0.8 }).verdict;
    expect(verdict).toMatchObject({ word: "Outside", holds: false });
    expect(verdict.sentence).toContain("safety gear may not be used");
    expect(word({ speed: 0.63, gear: "captive roller", tripping: 0.8 })).toBe("Within");
  });

  test("says whether it trips too early or too late", () => {
    const because = (tripping: number) => compute({ gear: "progressive", tripping }).verdict.because;
    expect(because(1.8)).toContain("too early");
    expect(because(2.2)).toContain("too late");
  });

  test("not entered: the bounds are told", () => {
    const verdict = compute({ gear: "progressive" }).verdict;
    expect(verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(verdict.sentence).toContain("at least 1.840\u00a0m/s and less than 2.156\u00a0m/s");
  });
});

describe("overspeed switch and counterweight governor, from memory", () => {
  const trip = { gear: "progressive", tripping: 2 } as const;

  test("the switch acts before tripping; up to 1 m/s at the latest at tripping", () => {
    expect([word({ ...trip, switchSpeed: 1.99 }), word({ ...trip, switchSpeed: 2 })]).toEqual([
      "Within",
      "Outside",
    ]);
    expect(word({ speed: 1, gear: "progressive", tripping: 1.3, switchSpeed: 1.3 })).toBe("Within");
  });

  test("the counterweight's trips above the car's, by no more than 10 %", () => {
    const at = (otherTripping: number) => word({ ...trip, otherTripping });
    expect([at(2), at(2.01), at(2.2), at(2.2001)]).toEqual(["Outside", "Within", "Within", "Outside"]);
  });

  test("say so on the screen", () => {
    const { comparisons } = compute({ ...trip, switchSpeed: 1.9, otherTripping: 2.1 });
    for (const key of ["switch", "other"]) {
      expect(comparisons.find((each) => each.key === key)?.rest).toContain("from memory, check against");
    }
  });

  test("cannot be said without the car's tripping speed", () => {
    expect(compute({ otherTripping: 2.1 }).comparisons[0]?.holds).toBeNull();
  });
});

describe("buffers", () => {
  const at = (buffer: string, speed: number, stroke: number, more: CalculatorInput = {}) =>
    word({ buffer, speed, stroke, ...more });

  test("linear: 0.135 v² and 65 mm, from both sides; not above 1.0 m/s", () => {
    expect([at("linear", 1, 0.135), at("linear", 1, 0.1349)]).toEqual(["Within", "Outside"]);
    expect([at("linear", 0.5, 0.065), at("linear", 0.5, 0.0649)]).toEqual(["Within", "Outside"]);
    expect(at("linear", 1.01, 2)).toBe("Outside");
  });

  test("dissipation: 0.0674 v², from both sides", () => {
    expect([at("dissipation", 2, 0.2696), at("dissipation", 2, 0.2695)]).toEqual(["Within", "Outside"]);
  });

  test("the contact speed counts above 2.5 m/s only, and never below 0.42 m", () => {
    const contact = { contactSpeed: 2.5 };
    expect([at("dissipation", 4, 0.422, contact), at("dissipation", 4, 0.421, contact)]).toEqual([
      "Within",
      "Outside",
    ]);
    const slow = { contactSpeed: 1 };
    expect([at("dissipation", 4, 0.42, slow), at("dissipation", 4, 0.419, slow)]).toEqual([
      "Within",
      "Outside",
    ]);
    const result = compute({ speed: 2.5, buffer: "dissipation", contactSpeed: 1, stroke: 0.3 });
    expect(result.verdict.word).toBe("Outside");
    expect(result.problems.map(({ field }) => field)).toEqual(["contactSpeed"]);
  });

  test("a non-linear buffer is not judged by stroke", () => {
    const result = compute({ speed: 1, buffer: "non-linear" });
    expect(result.comparisons.find(({ key }) => key === "stroke")?.holds).toBeNull();
    expect(result.verdict.word).toBe("Not enough");
  });

  test("guided travel 0.035 v², from both sides", () => {
    expect([word({ guided: 0.0897 }), word({ guided: 0.0895 })]).toEqual(["Within", "Outside"]);
  });
});

test("the curves carry the entered point", () => {
  const { drawings } = compute({ gear: "progressive", tripping: 2.3, buffer: "dissipation", stroke: 0.2 });
  const marks = drawings.flatMap((each) => (each.kind === "curve" ? each.marks : []));
  expect(marks.map(({ x, y, outside }) => [x, y, outside])).toEqual([
    [1.6, 2.3, true],
    [1.6, 0.2, false],
  ]);
});
