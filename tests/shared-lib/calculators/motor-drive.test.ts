import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { steadyPower } from "#shared-lib/calculators/drive-physics.ts";
import type { CalculatorInput } from "#shared-lib/calculators/field.ts";
import { motorDrive } from "#shared-lib/calculators/motor-drive.ts";

const base = {
  ratedLoad: 630,
  speed: 1,
  balance: 0.5,
  efficiency: 0.55,
  sheaveDiameter: 0.52,
  roping: "1:1",
  gear: 41,
} as const;
const compute = (input: CalculatorInput) => motorDrive.compute({ ...base, ...input });
const lineValue = (key: string, input: CalculatorInput = {}) =>
  compute(input).values.find((each) => each.key === key)?.value;

describe("power", () => {
  const needed = steadyPower(base, 630, "up");

  test("the plate's power, from both sides", () => {
    expect(compute({ platePower: needed }).verdict).toMatchObject({ word: "Within", holds: true });
    expect(compute({ platePower: needed - 1 }).verdict).toMatchObject({ word: "Outside", holds: false });
  });

  test("the empty car down counts where it is the heavier side", () => {
    const { verdict } = compute({ balance: 0.6, platePower: needed });
    expect(verdict.word).toBe("Outside");
    expect(lineValue("emptyDown", { balance: 0.6 })).toBeGreaterThan(
      lineValue("fullUp", { balance: 0.6 }) ?? 0,
    );
  });

  test("up and down are equal at the balanced load, and what one side drives the other gives back", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 630, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (load, efficiency) => {
          const hoist = { ...base, efficiency };
          const [up, down] = [steadyPower(hoist, load, "up"), steadyPower(hoist, load, "down")];
          expect(up * down).toBeLessThanOrEqual(0);
          const [driving, driven] = [Math.max(up, down), -Math.min(up, down)];
          expect(driven).toBeCloseTo(driving * efficiency ** 2, 6);
        },
      ),
    );
    expect(steadyPower(base, 315, "up")).toBeCloseTo(0, 9);
  });

  test("nothing from the plate: the need is told, nothing judged", () => {
    expect(compute({}).verdict).toMatchObject({ word: "Not enough", holds: null });
    expect(compute({}).verdict.sentence).toContain("Full load up needs 5.62\u00a0kW");
  });
});

describe("measured speed, at most 5 % above (from memory), at least 8 % below rated (common practice)", () => {
  const at = (measuredSpeed: number) => compute({ measuredSpeed }).verdict.word;

  test("from both sides", () => {
    expect([at(1.05), at(1.0501), at(0.92), at(0.9199)]).toEqual(["Within", "Outside", "Within", "Outside"]);
  });

  test("the screen says that the 5 % are from memory", () => {
    const fast = compute({ measuredSpeed: 1 }).comparisons.find(({ key }) => key === "fast");
    expect(fast?.limit.source.status).toBe("from memory");
    expect(fast?.rest).toContain("from memory, check against the current text");
  });
});

describe("plate of the motor", () => {
  const plate = { motor: "asynchronous", poles: 4, frequency: 50 } as const;

  test("slip of an asynchronous motor", () => {
    expect(lineValue("slip", { ...plate, plateSpeed: 24 })).toBeCloseTo(0.04, 12);
  });

  test("not slower than its field: a sentence, and no slip", () => {
    const input = { ...plate, plateSpeed: 25 };
    expect(compute(input).problems.map(({ field }) => field)).toEqual(["plateSpeed"]);
    expect(lineValue("slip", input)).toBeUndefined();
  });

  test("an odd number of poles is left out with a sentence", () => {
    expect(compute({ ...plate, poles: 5 }).problems.map(({ field }) => field)).toEqual(["poles"]);
    expect(lineValue("synchronous", { ...plate, poles: 5 })).toBeUndefined();
  });

  test("a plate that does not fit the rated speed is named", () => {
    expect(compute({ ...plate, plateSpeed: 24 }).notes[0]).not.toContain("plate's speed");
    expect(compute({ ...plate, plateSpeed: 16 }).notes[0]).toContain("gear, sheave or roping");
  });

  test("frequency that a synchronous motor needs", () => {
    const input = { motor: "synchronous", poles: 20, gear: 1, roping: "2:1", sheaveDiameter: 0.4 } as const;
    expect(lineValue("neededFrequency", input)).toBeCloseTo(15.9155, 3);
  });
});
