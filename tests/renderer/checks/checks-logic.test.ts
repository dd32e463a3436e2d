import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Expected } from "#shared-lib/contract/check.ts";
import { readChecksAddress } from "../../../renderer/features/checks/check-address.ts";
import { changeOf } from "../../../renderer/features/checks/compare-steps.ts";
import { orderChoices, orderPanels } from "../../../renderer/features/checks/order-panels.ts";
import { packRows } from "../../../renderer/features/checks/print-pages.ts";
import {
  countVerdicts,
  countWords,
  firstOpenStep,
  groupVerdict,
  stepGroups,
} from "../../../renderer/features/checks/step-groups.ts";
import {
  expectedWords,
  foundWords,
  placeWords,
  sourceWords,
} from "../../../renderer/features/checks/step-words.ts";
import { valueProblem } from "../../../renderer/features/checks/value-range.ts";
import { previous, step } from "./support.ts";

const metres = (least: number | null, most: number | null): Expected & { kind: "value" } => ({
  kind: "value",
  unit: "m",
  least,
  most,
  source: "this lift's record",
});

describe("the order of signals, drawn", () => {
  const up = ["upper on", "lower on", "upper off", "lower off"];

  test("each signal changes at its own edge, upper row above lower", () => {
    const { expected, seen } = orderPanels(up, null);
    expect(seen).toBeNull();
    expect(expected.signals).toEqual([
      {
        name: "upper",
        levels: [
          { from: 0, to: 1, state: "off" },
          { from: 1, to: 3, state: "on" },
          { from: 3, to: 5, state: "off" },
        ],
      },
      {
        name: "lower",
        levels: [
          { from: 0, to: 2, state: "off" },
          { from: 2, to: 4, state: "on" },
          { from: 4, to: 5, state: "off" },
        ],
      },
    ]);
  });

  test("leaving a terminal landing both signals begin on", () => {
    const { expected } = orderPanels(["upper off", "lower off"], null);
    expect(expected.signals.map(({ levels }) => levels[0]?.state)).toEqual(["on", "on"]);
  });

  test("a signal that never came keeps the level it should have begun with", () => {
    const { seen } = orderPanels(up, []);
    expect(seen?.signals.map(({ levels }) => levels)).toEqual([
      [{ from: 0, to: 5, state: "off" }],
      [{ from: 0, to: 5, state: "off" }],
    ]);
  });

  test("switches that only act come on and stay", () => {
    const { expected } = orderPanels(["slowdown switch", "landing level", "final switch"], null);
    expect(expected.signals.map(({ name, levels }) => [name, levels.at(-1)?.state])).toEqual([
      ["slowdown switch", "on"],
      ["landing level", "on"],
      ["final switch", "on"],
    ]);
  });

  test("both pictures have the same rows and the same span, and every row is whole", () => {
    const edges = fc.array(fc.constantFrom("upper on", "upper off", "lower on", "lower off"), {
      maxLength: 20,
    });
    fc.assert(
      fc.property(edges, edges, (should, came) => {
        const panels = orderPanels(should, came);
        for (const panel of [panels.expected, panels.seen]) {
          expect(panel?.to).toBe(Math.max(should.length, came.length) + 1);
          expect(panel?.signals.map(({ name }) => name)).toEqual(
            panels.expected.signals.map(({ name }) => name),
          );
          for (const { levels } of panel?.signals ?? []) {
            expect(levels[0]?.from).toBe(0);
            expect(levels.at(-1)?.to).toBe(panel?.to);
            for (const [i, level] of levels.entries()) if (i > 0) expect(level.from).toBe(levels[i - 1]?.to);
          }
        }
      }),
    );
  });

  test("all four edges can be pressed where two should come; switches are not offered in their right order", () => {
    expect(orderChoices(["lower on", "upper on"])).toHaveLength(4);
    expect(orderChoices(["slowdown switch", "landing level", "final switch"])).toEqual([
      "final switch",
      "landing level",
      "slowdown switch",
    ]);
  });
});

describe("a measured value", () => {
  test("in the wrong unit is asked back with what was probably meant", () => {
    expect(valueProblem(metres(1.3, null), 850)).toBe(
      "850\u00a0m cannot be: 0 to 40\u00a0m is possible here. Was it 850\u00a0mm? Then enter 0.85\u00a0m. Nothing was recorded.",
    );
    expect(valueProblem(metres(1.3, null), -1)).toMatch(/cannot be.*Nothing was recorded/);
    expect(valueProblem(metres(1.3, null), 0.2)).toBeUndefined();
    expect(valueProblem({ ...metres(-10, 10), unit: "mm" }, -17)).toBeUndefined();
    expect(valueProblem({ ...metres(-10, 10), unit: "mm" }, 1200)).toMatch(/^1200\u00a0mm cannot be/);
    expect(valueProblem({ ...metres(null, 5), unit: "ohm" }, 100_000)).toBeUndefined();
  });

  test("says its limit and where it is from, or that there is none", () => {
    expect(expectedWords(metres(0.5, 0.63))).toBe("at least 0.5\u00a0m and at most 0.63\u00a0m");
    expect(expectedWords(metres(null, null))).toMatch(/no limit is recorded/);
    expect(sourceWords({ expected: metres(1, null), source: "the site's drawing" })).toBe(
      "this lift's record; the site's drawing",
    );
  });
});

describe("this time and the previous time", () => {
  const value = (n: number) => ({ kind: "value" as const, value: n });
  test.each([
    ["checked for the first time", false, step({ verdict: "passed", found: value(1) })],
    ["never checked", false, step()],
    ["not checked this time", false, step({ previous: previous() })],
    ["failed before, not checked since", true, step({ previous: previous({ verdict: "failed" }) })],
    [
      "failed before, not checked since",
      true,
      step({ found: { kind: "not checked" }, previous: previous({ verdict: "failed" }) }),
    ],
    ["was in order before", true, step({ verdict: "failed", found: value(1), previous: previous() })],
    [
      "in order again",
      false,
      step({ verdict: "passed", found: value(1), previous: previous({ verdict: "failed" }) }),
    ],
    [
      "0.1\u00a0m more",
      false,
      step({
        verdict: "passed",
        expected: metres(0.1, null),
        found: value(0.3),
        previous: previous({ found: value(0.2) }),
      }),
    ],
    [
      "failed again, 0.05\u00a0m less",
      true,
      step({
        verdict: "failed",
        expected: metres(1, null),
        found: value(0.7),
        previous: previous({ verdict: "failed", found: value(0.75) }),
      }),
    ],
  ])("%s", (words, worse, compared) => {
    expect(changeOf(compared)).toEqual({ words, worse });
  });

  test("the same finding is the same, and the same failure is still worse than none", () => {
    const found = { kind: "order" as const, order: ["lower on", "upper on"] };
    const failed = step({ verdict: "failed", found, previous: previous({ verdict: "failed", found }) });
    expect(changeOf(failed)).toEqual({ words: "failed as before", worse: true });
    expect(changeOf({ ...failed, verdict: "passed", previous: previous({ found }) })).toEqual({
      words: "the same",
      worse: false,
    });
  });
});

describe("steps by place", () => {
  const at = (
    landingMarking: string | null,
    key: string,
    part: "car" | "pit" | "zone-magnet" = "zone-magnet",
  ) => step({ key, landingMarking, part });

  test("stand in the plan's order, also where it comes back to a place", () => {
    const steps = [at(null, "a", "car"), at(null, "b", "car"), at(null, "c", "pit"), at(null, "d", "car")];
    expect(stepGroups(steps).map(({ words, steps: own }) => [words, own.map(({ key }) => key)])).toEqual([
      ["Car", ["a", "b"]],
      ["Pit", ["c"]],
      ["Car", ["d"]],
    ]);
    expect(placeWords(at("B1", "e"))).toBe("Landing B1");
  });

  test("a place has failed while one step has, and passed only when all have", () => {
    const verdicts = fc.array(fc.constantFrom("passed" as const, "failed" as const, "unchecked" as const), {
      minLength: 1,
      maxLength: 9,
    });
    fc.assert(
      fc.property(verdicts, (all) => {
        const steps = all.map((verdict) => ({ verdict }));
        const { passed, failed, unchecked } = countVerdicts(steps);
        expect(passed + failed + unchecked).toBe(all.length);
        const place = groupVerdict(steps);
        expect(place === "failed").toBe(failed > 0);
        expect(place === "passed").toBe(passed === all.length);
      }),
    );
    expect(countWords({ passed: 2, failed: 0, unchecked: 1 })).toBe("2 passed, 1 unchecked");
  });

  test("work goes on at the first step with nothing recorded", () => {
    const done = { at: "2026-11-17T08:52:00.000Z" };
    const steps = [step({ key: "a", ...done }), step({ key: "b" }), step({ key: "c" })];
    expect(firstOpenStep(steps)?.key).toBe("b");
    expect(firstOpenStep(steps.map((one) => ({ ...one, ...done })))?.key).toBe("a");
  });

  test("what was found is told in words", () => {
    const { expected } = step();
    expect(foundWords(null, expected)).toBe("not checked");
    expect(foundWords({ kind: "not checked" }, expected)).toBe("could not be checked");
    expect(foundWords({ kind: "order", order: [] }, expected)).toBe("nothing came");
    expect(foundWords({ kind: "value", value: -0.25 }, metres(0, 1))).toBe("\u22120.25\u00a0m");
  });
});

describe("the printed record", () => {
  test("has every row once, in order, and no page is overfull but one of a single row", () => {
    const heights = fc.array(fc.integer({ min: 10, max: 1200 }), { maxLength: 80 });
    fc.assert(
      fc.property(heights, fc.integer({ min: -50, max: 900 }), (rows, firstRoom) => {
        const pages = packRows(rows, firstRoom, 900);
        expect(pages.flat()).toEqual(rows.map((_, i) => i));
        for (const [i, page] of pages.entries()) {
          const taken = page.reduce((sum, row) => sum + (rows[row] ?? 0), 0);
          if (i === 0) expect(taken === 0 || taken <= firstRoom).toBe(true);
          else expect(page.length === 1 || taken <= 900).toBe(true);
        }
      }),
    );
  });

  test("begins a page only where the row does not fit on the one before", () => {
    expect(packRows([50, 50, 50], 100, 200)).toEqual([[0, 1], [2]]);
    expect(packRows([50, 500, 50], 100, 200)).toEqual([[0], [1], [2]]);
    expect(packRows([], 100, 200)).toEqual([[]]);
  });
});

describe("the address of Checks", () => {
  const id = "01900000-0000-7000-8000-000000000001";
  test("chooses lift and plan, and leaves out what fits nothing", () => {
    expect(readChecksAddress({ lift: id, plan: "zone-sensors", callout: id })).toEqual({
      lift: id,
      plan: "zone-sensors",
      callout: id,
      visit: null,
    });
    expect(readChecksAddress({ lift: "x", plan: 7, callout: id })).toEqual({
      lift: null,
      plan: null,
      callout: null,
      visit: null,
    });
  });
});
