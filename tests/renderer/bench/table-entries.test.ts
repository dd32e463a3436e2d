import { expect, test } from "vitest";
import type { TableField } from "#shared-lib/calculators/field.ts";
import type { TypedRow } from "../../../renderer/features/bench/entries.ts";
import {
  blockOf,
  readTable,
  rowsOf,
  shownCell,
  typedRows,
  unclearCell,
  withBlock,
} from "../../../renderer/features/bench/table-entries.ts";

const level = {
  kind: "number",
  key: "level",
  label: "Level",
  optional: false,
  quantity: "length",
  unit: "m",
  range: [-50, 500],
  digits: 3,
} as const;
const side = {
  kind: "choice",
  key: "side",
  label: "Side",
  optional: true,
  options: [
    { id: "front", words: "at the front" },
    { id: "rear", words: "at the rear" },
  ],
} as const;
const field: TableField = {
  kind: "table",
  key: "landings",
  label: "Landings",
  optional: false,
  least: 1,
  most: 4,
  columns: [level, side],
};
const entry = (rows: readonly TypedRow[]) => ({ kind: "table", rows }) as const;

test("a block copied from a spreadsheet is laid over, with decimal commas and words of a choice", () => {
  const block = blockOf("0,000\tAt the front\r\n3,15\trear\r\n");
  const { rows, leftOut } = withBlock(field, [], { row: 0, column: 0 }, block, "metric");
  expect(leftOut).toBe(0);
  expect(rowsOf(field, entry(rows))).toEqual([
    { level: 0, side: "front" },
    { level: 3.15, side: "rear" },
  ]);
});

test("a number that may be read in two ways is asked back, not guessed", () => {
  const { rows } = withBlock(field, [], { row: 0, column: 0 }, [["3,150"]], "metric");
  expect(unclearCell(field, entry(rows))).toBe(
    "Row 1, Level: Is that 3150 or 3.150? Write it without a comma.",
  );
});

test("cells beyond the table are counted as left out; what was there before stays", () => {
  const before = withBlock(field, [], { row: 0, column: 0 }, [["1"], ["2"]], "metric").rows;
  const { rows, leftOut } = withBlock(
    field,
    before,
    { row: 1, column: 1 },
    blockOf("rear\tmore\n\n\nfront"),
    "metric",
  );
  expect(leftOut).toBe(2);
  expect(rowsOf(field, entry(rows))).toEqual([{ level: 1 }, { level: 2, side: "rear" }]);
});

test("an empty row between others stands, so that row numbers stay; at the end it is none", () => {
  const rows = [{ level: { text: "1", unit: "m" } }, {}, { level: { text: "2", unit: "m" } }, {}] as const;
  expect(rowsOf(field, entry(rows))).toEqual([{ level: 1 }, {}, { level: 2 }]);
  expect(rowsOf(field, entry([{}, {}]))).toBeUndefined();
});

test("what cannot be read is named by row and column and never dropped from the screen", () => {
  const rows = [{ level: { text: "1", unit: "m" } }, { level: { text: "about 3", unit: "m" } }] as const;
  expect(unclearCell(field, entry(rows))).toBe("Row 2, Level: “about 3” is not a number.");
  expect(shownCell(level, rows[1].level, "metric")).toBe("about 3");
  const wrong = [{ side: { text: "left", unit: null } }] as const;
  expect(unclearCell(field, entry(wrong))).toBe("Row 1, Side: “left” is none of at the front, at the rear.");
});

test("feet and back again: the digits typed are the digits shown, without drift", () => {
  const cell = { text: "10.37", unit: "ft" } as const;
  expect(shownCell(level, cell, "foot-pound")).toBe("10.37");
  expect(shownCell(level, cell, "metric")).toBe("3.160776");
  expect(rowsOf(field, entry([{ level: cell }]))?.[0]?.level).toBeCloseTo(10.37 * 0.3048, 12);
});

test("filled-in rows can be typed over, and a kept draft is read again", () => {
  const rows = typedRows(field, [{ level: 3.15, side: "rear" }], "metric");
  expect(rowsOf(field, entry(rows))).toEqual([{ level: 3.15, side: "rear" }]);
  expect(readTable(field, JSON.parse(JSON.stringify(entry(rows))))).toEqual(entry(rows));
  expect(
    readTable(field, { kind: "table", rows: [null, { level: 3, gone: { text: "1", unit: null } }] }),
  ).toEqual(entry([{}, {}]));
  expect(readTable(field, { kind: "value", value: "x" })).toBeUndefined();
});
