import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { NumberField } from "#shared-lib/calculators/field.ts";
import { calculators } from "#shared-lib/calculators/registry.ts";
import { changesForPass, movesMost } from "#shared-lib/calculators/sensitivity.ts";
import { terminalSlowdown } from "#shared-lib/calculators/terminal-slowdown.ts";
import { numbersEntered, uncertaintyOf } from "#shared-lib/calculators/uncertainty.ts";
import { anyInput, leavesOf } from "./any-input.ts";

/** By hand: s = 2.400 m, reaction 1.6 x 0.1 = 0.160 m, needed 2.560 m. */
const stop = {
  side: "up",
  speed: 1.6,
  retardation: 0.8,
  jerkStart: 0.8,
  reactionTime: 0.1,
  switchUp: 2.6,
} as const;

describe("tolerances", () => {
  // Reaction +-20 ms is +-32 mm of way, margin +-10 mm adds straight: worst 42 mm, root-sum-square 33.53 mm.
  const found = uncertaintyOf(
    terminalSlowdown,
    { ...stop, margin: 0.02 },
    { reactionTime: 0.02, margin: 0.01 },
  );
  const needed = found.values.find(({ key }) => key === "required");

  test("worst case adds them, root-sum-square adds their squares", () => {
    expect(needed?.value).toBeCloseTo(2.58, 9);
    expect(needed?.worst[0]).toBeCloseTo(2.538, 9);
    expect(needed?.worst[1]).toBeCloseTo(2.622, 9);
    expect(needed?.rootSumSquare).toBeCloseTo(Math.sqrt(0.032 ** 2 + 0.01 ** 2), 9);
    expect(needed?.mostFrom).toBe("reactionTime");
  });

  test("the verdict may stand by root-sum-square and not in the worst case", () => {
    const at = (switchUp: number) =>
      uncertaintyOf(
        terminalSlowdown,
        { ...stop, switchUp },
        { reactionTime: 0.02, margin: 0.01, switchUp: 0.005 },
      );
    // Room 0.040; worst change 0.032 + 0.010 + 0.005 = 0.047 (margin only upwards from 0); squares 0.0339.
    expect(at(2.6)).toMatchObject({ standsInWorstCase: false, standsByRootSumSquare: true, cut: ["margin"] });
    expect(at(2.61)).toMatchObject({ standsInWorstCase: true, standsByRootSumSquare: true });
    expect(at(2.59)).toMatchObject({ standsInWorstCase: false, standsByRootSumSquare: false });
    // The same on the other side of the limit: 2.53 is outside by 0.030, 2.50 by 0.060.
    expect(at(2.53)).toMatchObject({ standsInWorstCase: false, standsByRootSumSquare: false });
    expect(at(2.5)).toMatchObject({ standsInWorstCase: true, standsByRootSumSquare: true });
  });

  test("no tolerance: nothing spreads; no verdict: nothing stands", () => {
    const none = uncertaintyOf(terminalSlowdown, stop, {});
    for (const { value, worst, rootSumSquare } of none.values) {
      expect(worst).toEqual([value, value]);
      expect(rootSumSquare).toBe(0);
    }
    const open = uncertaintyOf(terminalSlowdown, { ...stop, switchUp: undefined }, { speed: 0.1 });
    expect(open).toMatchObject({ standsInWorstCase: null, standsByRootSumSquare: null });
  });
});

describe("what would have to change", () => {
  const changes = changesForPass(terminalSlowdown, { ...stop, switchUp: 2.5 });
  const to = (key: string) => changes.find(({ field }) => field.key === key)?.to;

  test("each input alone, as solved by hand", () => {
    expect(to("switchUp")).toBeCloseTo(2.56, 9);
    // 1.6 t <= 0.1: 62.5 ms, shown in whole milliseconds on the side that holds.
    expect(to("reactionTime")).toBeCloseTo(0.062, 9);
    // v^2 + 0.96 v - 4 = 0: 1.5768 m/s, two digits on the side that holds.
    expect(to("speed")).toBeCloseTo(1.57, 9);
    expect(to("margin")).toBeNull();
  });

  test("in feet the number shown holds as well", () => {
    const foot = changesForPass(terminalSlowdown, { ...stop, switchUp: 2.5 }, "foot-pound");
    const changed = foot.find(({ field }) => field.key === "switchUp")?.to ?? 0;
    expect(changed / 0.3048).toBeCloseTo(Math.ceil((2.56 / 0.3048) * 1000) / 1000, 6);
  });

  test("nothing is asked where the verdict holds or cannot be said", () => {
    expect(changesForPass(terminalSlowdown, stop)).toEqual([]);
    expect(changesForPass(terminalSlowdown, {})).toEqual([]);
  });

  test("which input moves the result most, by one hundredth", () => {
    // d = v t_r + v^2/(2 a) + v a/(2 j): one hundredth of v moves it by 1.6 % of 1.6 + ... = 0.0402 m, of d by 0.026 m.
    const mover = movesMost(terminalSlowdown, stop);
    expect(mover?.field.key).toBe("speed");
    expect(mover?.by).toBeCloseTo(-(1.6 * 0.1 * 0.01 + (1.6 ** 2 / 1.6) * 0.0201 + 0.8 * 0.01), 9);
    expect(movesMost(terminalSlowdown, {})).toBeNull();
  });
});

describe.each(calculators.map((calculator) => [calculator.id, calculator] as const))(
  "%s",
  (_, calculator) => {
    const keys = calculator.inputs.filter((field): field is NumberField => field.kind === "number");
    const tolerances = fc.record(
      Object.fromEntries(
        keys.map(({ key, range }) => [
          key,
          fc.oneof(fc.constant(0), fc.double({ min: 0, max: range[1], noNaN: true })),
        ]),
      ),
    );

    test("spreads are finite, hold the value, and root-sum-square is no wider than all changes added", () => {
      fc.assert(
        fc.property(anyInput(calculator, true), tolerances, (input, given) => {
          const few = Object.fromEntries(Object.entries(given).slice(0, 4));
          const found = uncertaintyOf(calculator, input, few);
          for (const { leaf } of leavesOf(found))
            if (typeof leaf === "number") expect(Number.isFinite(leaf)).toBe(true);
          for (const { value, worst } of [...found.values, ...found.comparisons]) {
            expect(worst[0]).toBeLessThanOrEqual(value);
            expect(worst[1]).toBeGreaterThanOrEqual(value);
          }
        }),
        { numRuns: 40 },
      );
    });

    test("a change that is named does make it pass, and lies in its range", () => {
      fc.assert(
        fc.property(anyInput(calculator, false), (input) => {
          for (const { field, to } of changesForPass(calculator, input)) {
            expect(numbersEntered(calculator, input).map(({ field: each }) => each.key)).toContain(field.key);
            if (to === null) continue;
            expect(to).toBeGreaterThanOrEqual(field.range[0]);
            expect(to).toBeLessThanOrEqual(field.range[1]);
            expect(calculator.compute({ ...input, [field.key]: to }).verdict.holds).toBe(true);
          }
        }),
        { numRuns: 15 },
      );
    });
  },
);
