import { z } from "zod";
import type { Quantity, Unit } from "../quantities.ts";
import type { ChoiceOption } from "./field.ts";
import type { Pen } from "./pen.ts";
import { numberProblem } from "./range-problem.ts";
import type { Problem } from "./result.ts";

interface ColumnBase {
  readonly key: string;
  readonly label: string;
  /** A row without a cell that may not stay empty is left out, with a sentence. */
  readonly optional: boolean;
}

export interface NumberColumn extends ColumnBase {
  readonly kind: "number";
  readonly quantity: Quantity;
  readonly unit: Unit;
  /** Least and most allowed, SI, both inclusive. */
  readonly range: readonly [number, number];
  /** Decimals in `unit`. */
  readonly digits: number;
  readonly whole?: boolean;
}

export interface ChoiceColumn extends ColumnBase {
  readonly kind: "choice";
  readonly options: readonly ChoiceOption[];
}

export interface TextColumn extends ColumnBase {
  readonly kind: "text";
  readonly longest: number;
}

export type TableColumn = NumberColumn | ChoiceColumn | TextColumn;

/** A row by column key, numbers in SI; an empty cell is absent. */
export type TableRow = Readonly<Record<string, number | string | undefined>>;

type CellOf<C> = C extends { kind: "number" }
  ? number
  : C extends { kind: "choice"; options: readonly { id: infer Id }[] }
    ? Id
    : string;

/** A row as a calculator gets it. */
export type RowOf<Columns extends readonly TableColumn[]> = {
  readonly [C in Columns[number] as C["key"]]: C extends { optional: false }
    ? CellOf<C>
    : CellOf<C> | undefined;
};

function cellSchema(column: TableColumn): z.ZodType {
  switch (column.kind) {
    case "number":
      return z.number().describe(`${column.label}, SI unit of ${column.quantity}`);
    case "choice":
      return z.enum(column.options.map((option) => option.id)).describe(column.label);
    case "text":
      return z.string().max(column.longest).describe(column.label);
  }
}

interface Shape {
  readonly label: string;
  readonly columns: readonly TableColumn[];
  readonly most: number;
}

/** Rows as plain JSON objects; every cell may be absent, none may be unknown. */
export function tableSchema({ label, columns, most }: Shape): z.ZodType {
  const cells = Object.fromEntries(columns.map((column) => [column.key, cellSchema(column).optional()]));
  return z.array(z.strictObject(cells)).max(most).describe(label);
}

const isEmptyCell = (cell: number | string | undefined): boolean => cell === undefined || cell === "";

interface SortedRows {
  readonly rows: readonly TableRow[];
  readonly problems: readonly Problem[];
}

/**
 * Rows fit to compute with. A cell outside its range is left out, a row without a needed cell too; each with a
 * sentence that names row and column. Empty rows are passed over, but counted, as the person sees them.
 */
export function sortRows(
  field: { readonly key: string; readonly columns: readonly TableColumn[] },
  rows: readonly TableRow[],
  pen: Pen,
): SortedRows {
  const kept: TableRow[] = [];
  const problems: Problem[] = [];
  for (const [index, row] of rows.entries()) {
    if (Object.values(row).every(isEmptyCell)) continue;
    const place = `Row ${index + 1}`;
    const cells: Record<string, number | string> = {};
    const found: string[] = [];
    const missing: string[] = [];
    for (const column of field.columns) {
      const cell = row[column.key];
      const sentence =
        column.kind === "number" && typeof cell === "number"
          ? numberProblem({ ...column, label: `${place}, ${column.label}` }, cell, pen)
          : null;
      if (sentence !== null) found.push(sentence);
      else if (cell !== undefined && !isEmptyCell(cell)) cells[column.key] = cell;
      else if (!column.optional) missing.push(column.label);
    }
    if (missing.length > 0)
      found.push(`${place} still needs: ${missing.join(", ")}. It is left out until then.`);
    problems.push(...found.map((sentence) => ({ field: field.key, sentence })));
    if (field.columns.every((column) => column.optional || cells[column.key] !== undefined)) kept.push(cells);
  }
  return { rows: kept, problems };
}
