import type { Ask } from "../import/bring-in-table.ts";

/** text; number; moment: ISO 8601 UTC, shown on this machine's clock; day: as stored, 2026-11-24. */
export type ColumnKind = "text" | "number" | "moment" | "day";
/** null: nothing is recorded. */
export type CellValue = string | number | null;

export interface ListColumn {
  /** The words at its head, as the screen has them. */
  readonly head: string;
  readonly kind: ColumnKind;
  /** In characters. */
  readonly width: number;
}

export interface RowsRead {
  readonly rows: readonly (readonly CellValue[])[];
  /** How many rows there are in all; null while that is not known. */
  readonly of: number | null;
}

/** A list that can be saved as a table: what it is called, its columns, and its rows a page at a time. */
export interface ExportList<Input> {
  readonly title: string;
  readonly columns: readonly ListColumn[];
  /** `input` is that of the operation which the screen asks; paging is done here. Throws SillbookError. */
  readonly pages: (ask: Ask, input: Input) => AsyncGenerator<RowsRead>;
}

export interface ColumnOf<Row> extends ListColumn {
  readonly value: (row: Row) => CellValue;
}

export function text<Row>(head: string, width: number, value: (row: Row) => string | null): ColumnOf<Row> {
  return { head, kind: "text", width, value };
}

export function number<Row>(head: string, value: (row: Row) => number | null): ColumnOf<Row> {
  return { head, kind: "number", width: 12, value };
}

export function moment<Row>(head: string, value: (row: Row) => string | null): ColumnOf<Row> {
  return { head, kind: "moment", width: 17, value };
}

export function day<Row>(head: string, value: (row: Row) => string | null): ColumnOf<Row> {
  return { head, kind: "day", width: 12, value };
}

/** A list whose rows come a page at a time. */
export function pagedList<Input, Row>(
  title: string,
  columns: readonly ColumnOf<Row>[],
  read: (
    ask: Ask,
    input: Input,
  ) => AsyncGenerator<{ readonly rows: readonly Row[]; readonly of: number | null }>,
): ExportList<Input> {
  return {
    title,
    columns: columns.map(({ head, kind, width }) => ({ head, kind, width })),
    async *pages(ask, input) {
      for await (const { rows, of } of read(ask, input))
        yield { rows: rows.map((row) => columns.map(({ value }) => value(row))), of };
    },
  };
}

/** A list that one request answers as a whole. */
export function wholeList<Input, Row>(
  title: string,
  columns: readonly ColumnOf<Row>[],
  read: (ask: Ask, input: Input) => Promise<readonly Row[]>,
): ExportList<Input> {
  return pagedList<Input, Row>(title, columns, async function* (ask, input) {
    const rows = await read(ask, input);
    yield { rows, of: rows.length };
  });
}
