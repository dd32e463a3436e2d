import fc from "fast-check";
import { expect, test } from "vitest";
import { formatNumber } from "#shared-lib/format.ts";
import { readNumber } from "#shared-lib/number-words.ts";

test.each([
  ["300", 300],
  ["−11", -11],
  ["-11", -11],
  ["– 11", -11],
  ["+3.5", 3.5],
  ["3,5", 3.5],
  ["± 5", 5],
  [".5", 0.5],
  ["3.", 3],
  ["0,125", 0.125],
  ["1 000", 1000],
  ["12\u00a0500.5", 12500.5],
])("%s is a number", (text, number) => {
  expect(readNumber(text)).toEqual({ kind: "number", number });
});

test("a comma before three digits is asked back, not guessed", () => {
  expect(readNumber("1,000")).toEqual({
    kind: "unclear",
    problem: "Is that 1000 or 1.000? Write it without a comma.",
  });
});

test.each(["3,0,0", "three", "1e3", "--5", "0x10", "Infinity", "5 mm", "."])("%s is no number", (text) => {
  expect(readNumber(text).kind).toBe("unclear");
});

test("empty is neither a number nor a mistake", () => {
  expect(readNumber("  ")).toEqual({ kind: "empty" });
});

test("what the program writes it also reads", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1_000_000, max: 1_000_000 }),
      fc.integer({ min: 0, max: 4 }),
      (n, decimals) => {
        const value = n / 10 ** decimals;
        expect(readNumber(formatNumber(value, decimals))).toEqual({
          kind: "number",
          number: value === 0 ? 0 : value,
        });
      },
    ),
  );
});
