import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editDistance } from "#shared-lib/search/edit-distance.ts";

/** Optimal string alignment by its definition, whole table, no limit. */
function plainDistance(left: string, right: string): number {
  const table = Array.from({ length: left.length + 1 }, (_, row) =>
    Array.from({ length: right.length + 1 }, (_, column) => (row === 0 ? column : column === 0 ? row : 0)),
  );
  const cell = (row: number, column: number) => table[row]?.[column] ?? Number.NaN;
  for (let row = 1; row <= left.length; row++) {
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1];
      let best = Math.min(cell(row - 1, column), cell(row, column - 1)) + 1;
      best = Math.min(best, cell(row - 1, column - 1) + (same ? 0 : 1));
      if (
        row > 1 &&
        column > 1 &&
        left[row - 1] === right[column - 2] &&
        left[row - 2] === right[column - 1]
      ) {
        best = Math.min(best, cell(row - 2, column - 2) + 1);
      }
      (table[row] as number[])[column] = best;
    }
  }
  return cell(left.length, right.length);
}

describe("editDistance", () => {
  it("counts a swap of neighbours as one edit", () => {
    expect(editDistance("brake", "barke", 2)).toBe(1);
    expect(editDistance("governor", "govenor", 2)).toBe(1);
    expect(editDistance("lift", "shaft", 2)).toBe(3);
  });

  it("agrees with the whole table up to the limit, and never comes out under it beyond", () => {
    const word = fc.string({ unit: fc.constantFrom("a", "b", "c", "d"), maxLength: 9 });
    fc.assert(
      fc.property(word, word, fc.integer({ min: 1, max: 2 }), (left, right, limit) => {
        expect(editDistance(left, right, limit)).toBe(Math.min(plainDistance(left, right), limit + 1));
      }),
      { numRuns: 3000 },
    );
  });

  it("takes words longer than its rows for too far, not for an error", () => {
    expect(editDistance("a".repeat(200), "a".repeat(199), 2)).toBe(3);
    expect(editDistance("a".repeat(200), "a".repeat(200), 2)).toBe(0);
  });
});
