import type { TableField } from "#shared-lib/calculators/field.ts";
import type { TableColumn, TableRow } from "#shared-lib/calculators/table-field.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { toSi, type UnitSystem, unitIn, units } from "#shared-lib/quantities.ts";
import { type TableEntry, type TypedCell, type TypedRow, writtenNumber } from "./entries.ts";

const isEmptyRow = (row: TypedRow): boolean => Object.values(row).every(({ text }) => text.trim() === "");

function readCell(kept: unknown): TypedCell | undefined {
  if (typeof kept !== "object" || kept === null) return undefined;
  const { text, unit } = kept as Partial<Record<"text" | "unit", unknown>>;
  if (typeof text !== "string") return undefined;
  const isUnit = typeof unit === "string" && unit in units;
  return unit === null || isUnit ? { text, unit: unit as TypedCell["unit"] } : undefined;
}

/** A kept table of this field; cells of columns it no longer has are left out. */
export function readTable(field: TableField, kept: unknown): TableEntry | undefined {
  const { kind, rows } = kept as Partial<Record<"kind" | "rows", unknown>>;
  if (kind !== "table" || !Array.isArray(rows)) return undefined;
  const read = (row: unknown): TypedRow => {
    const cells = field.columns.map(({ key }) => [
      key,
      readCell((row as Readonly<Record<string, unknown>> | null)?.[key]),
    ]);
    return Object.fromEntries(cells.filter(([, cell]) => cell !== undefined));
  };
  return { kind: "table", rows: rows.slice(0, field.most).map(read) };
}

const optionOf = (column: TableColumn & { kind: "choice" }, text: string) =>
  column.options.find(({ id, words }) =>
    [id, words].some((one) => one.toLowerCase() === text.trim().toLowerCase()),
  );

/** The value of a typed cell, SI; undefined where it is empty or cannot be read. */
function cellValue(column: TableColumn, cell: TypedCell | undefined): number | string | undefined {
  if (cell === undefined || cell.text.trim() === "") return undefined;
  switch (column.kind) {
    case "number": {
      const reading = readNumber(cell.text);
      return reading.kind === "number" ? toSi(reading.number, cell.unit ?? column.unit) : undefined;
    }
    case "choice":
      return optionOf(column, cell.text)?.id;
    case "text":
      return cell.text.trim().slice(0, column.longest);
  }
}

/** The rows typed, SI. Empty ones at the end are none; between others they stand, so that row numbers stay. */
export function rowsOf(field: TableField, entry: TableEntry): readonly TableRow[] | undefined {
  const last = entry.rows.findLastIndex((row) => !isEmptyRow(row));
  if (last < 0) return undefined;
  return entry.rows.slice(0, last + 1).map((row) => {
    const cells = field.columns.map((column) => [column.key, cellValue(column, row[column.key])] as const);
    return Object.fromEntries(cells.filter(([, value]) => value !== undefined));
  });
}

/** Why a cell cannot be read, with its row and column; the first one found. */
export function unclearCell(field: TableField, entry: TableEntry): string | undefined {
  for (const [index, row] of entry.rows.entries()) {
    for (const column of field.columns) {
      const text = row[column.key]?.text ?? "";
      if (text.trim() === "") continue;
      const place = `Row ${index + 1}, ${column.label}`;
      if (column.kind === "number") {
        const reading = readNumber(text);
        if (reading.kind === "unclear") return `${place}: ${reading.problem}`;
      }
      if (column.kind === "choice" && optionOf(column, text) === undefined) {
        return `${place}: “${text}” is none of ${column.options.map(({ words }) => words).join(", ")}.`;
      }
    }
  }
  return undefined;
}

/** A cell as it is shown: as typed in the unit it was typed in, in another unit written from its SI value. */
export function shownCell(column: TableColumn, cell: TypedCell | undefined, system: UnitSystem): string {
  if (cell === undefined) return "";
  if (column.kind === "choice") return optionOf(column, cell.text)?.id ?? cell.text;
  if (column.kind === "text" || cell.unit === unitIn(system, column.unit)) return cell.text;
  const value = cellValue(column, cell);
  return typeof value === "number" ? writtenNumber(value, column, system) : cell.text;
}

const cellUnit = (column: TableColumn, system: UnitSystem) =>
  column.kind === "number" ? unitIn(system, column.unit) : null;

/** Filled-in rows as if they had been typed, so that one cell of them can be changed. */
export function typedRows(
  field: TableField,
  rows: readonly TableRow[],
  system: UnitSystem,
): readonly TypedRow[] {
  return rows.map((row) => {
    const cells = field.columns.flatMap((column) => {
      const value = row[column.key];
      if (value === undefined) return [];
      const text =
        column.kind === "number" && typeof value === "number"
          ? writtenNumber(value, column, system)
          : String(value);
      return [[column.key, { text, unit: cellUnit(column, system) }] as const];
    });
    return Object.fromEntries(cells);
  });
}

/** A block as a spreadsheet copies it: rows by line, cells by tab. */
export function blockOf(text: string): readonly (readonly string[])[] {
  const lines = text.replace(/\r\n?/g, "\n").split("\n");
  if (lines.at(-1) === "") lines.pop();
  return lines.map((line) => line.split("\t"));
}

export interface CellPlace {
  readonly row: number;
  readonly column: number;
}

/**
 * Lays a block over the rows from one cell on. What lies beyond the last column or the most rows is left out.
 * @returns the rows, and how many cells found no place
 */
export function withBlock(
  field: TableField,
  rows: readonly TypedRow[],
  from: CellPlace,
  block: readonly (readonly string[])[],
  system: UnitSystem,
): { readonly rows: readonly TypedRow[]; readonly leftOut: number } {
  const next: Record<string, TypedCell>[] = rows.map((row) => ({ ...row }));
  let leftOut = 0;
  for (const [down, line] of block.entries()) {
    for (const [across, text] of line.entries()) {
      const column = field.columns[from.column + across];
      const row = from.row + down;
      if (column === undefined || row >= field.most) {
        if (text.trim() !== "") leftOut += 1;
        continue;
      }
      while (next.length <= row) next.push({});
      const cells = next[row];
      if (cells !== undefined) cells[column.key] = { text: text.trim(), unit: cellUnit(column, system) };
    }
  }
  return { rows: next, leftOut };
}
