import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { verdictOf } from "#shared-lib/check-verdict.ts";
import type { Expected } from "#shared-lib/contract/check.ts";

const value = (least: number | null, most: number | null): Expected => ({
  kind: "value",
  unit: "m/s",
  least,
  most,
  source: "somewhere",
});

describe("the verdict of a step", () => {
  test("a state is as expected or not", () => {
    const chain: Expected = { kind: "state", on: false };
    expect(verdictOf(chain, { kind: "state", on: false })).toEqual({
      verdict: "passed",
      sentence: "Expected off; found off.",
    });
    expect(verdictOf(chain, { kind: "state", on: true })).toEqual({
      verdict: "failed",
      sentence: "Expected off; found on.",
    });
  });

  test("an order is the same in every place or it has failed", () => {
    const expected: Expected = {
      kind: "order",
      direction: "down",
      order: ["lower on", "upper on", "lower off", "upper off"],
    };
    const found = (...order: string[]) => verdictOf(expected, { kind: "order", order });
    expect(found("lower on", "upper on", "lower off", "upper off")?.verdict).toBe("passed");
    expect(found("upper on", "lower on", "upper off", "lower off")).toEqual({
      verdict: "failed",
      sentence:
        "Expected lower on, upper on, lower off, upper off; found upper on, lower on, upper off, lower off.",
    });
    expect(found("lower on", "upper on", "lower off")?.verdict).toBe("failed");
    expect(found("lower on", "upper on", "lower off", "upper off", "upper on")?.verdict).toBe("failed");
    expect(found()?.sentence).toContain("nothing came");
  });

  test("a value is compared with its own limits, the limit itself included", () => {
    const judge = (least: number | null, most: number | null, found: number) =>
      verdictOf(value(least, most), { kind: "value", value: found })?.verdict;
    expect(judge(null, 0.63, 0.63)).toBe("passed");
    expect(judge(null, 0.63, 0.1 + 0.53)).toBe("passed");
    expect(judge(null, 0.63, 0.631)).toBe("failed");
    expect(judge(1.8, null, 1.8)).toBe("passed");
    expect(judge(1.8, null, 1.799)).toBe("failed");
    expect(judge(1, 2, 2.5)).toBe("failed");
    expect(verdictOf(value(1, 2), { kind: "value", value: 0.25 })?.sentence).toBe(
      "Expected at least 1\u00a0m/s and at most 2\u00a0m/s; found 0.25\u00a0m/s.",
    );
  });

  test("a value without a limit proves nothing", () => {
    expect(verdictOf(value(null, null), { kind: "value", value: 3 })).toEqual({
      verdict: "unchecked",
      sentence: "Found 3\u00a0m/s. No limit is recorded to compare it with.",
    });
  });

  test("yes has passed, no has failed; another kind of finding is no finding", () => {
    const yes: Expected = { kind: "yes", question: "Does the car stay still?" };
    expect(verdictOf(yes, { kind: "yes", yes: true })).toEqual({
      verdict: "passed",
      sentence: "Does the car stay still? Yes.",
    });
    expect(verdictOf(yes, { kind: "yes", yes: false })?.verdict).toBe("failed");
    expect(verdictOf(yes, { kind: "state", on: true })).toBeNull();
    expect(verdictOf(value(1, 2), { kind: "order", order: [] })).toBeNull();
  });

  test("agrees with plain comparison for any limits and value away from them", () => {
    const number = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(number, number, number, (a, b, found) => {
        const [least, most] = a <= b ? [a, b] : [b, a];
        fc.pre(Math.min(Math.abs(found - least), Math.abs(found - most)) > 1e-6);
        const within = found > least && found < most;
        expect(verdictOf(value(least, most), { kind: "value", value: found })?.verdict).toBe(
          within ? "passed" : "failed",
        );
      }),
    );
  });
});
