import { SillbookError } from "../errors.ts";
import type { Ask } from "../import/bring-in-table.ts";
import { guardCell } from "./cell-guard.ts";
import type { CellValue, ColumnKind, ExportList, ListColumn } from "./export-list.ts";
import { exportLists, type ListInput, type ListName } from "./lists.ts";

export type TableForm = "csv" | "xlsx";

export interface CsvWriterOptions {
  readonly bom: boolean;
  readonly record_delimiter: "windows";
  readonly quoted_match: RegExp;
}

export interface WorkbookValue {
  readonly value: string | Date;
  readonly type?: DateConstructor;
  readonly format?: string;
  readonly fontWeight?: "bold";
}

/** The libraries that write the two forms: their builds differ between Node and a page. */
export interface TableWriters {
  /** `stringify` of csv-stringify. */
  readonly stringifyCsv: (rows: string[][], options: CsvWriterOptions) => string;
  /** write-excel-file; the header row stays in sight. */
  readonly writeWorkbook: (
    rows: (string | number | null | WorkbookValue)[][],
    sheet: {
      readonly sheet: string;
      readonly columns: { width: number }[];
      readonly stickyRowsCount: number;
    },
  ) => Promise<Uint8Array>;
}

export interface ListToSave<Name extends ListName = ListName> {
  readonly list: Name;
  readonly input: ListInput<Name>;
  readonly form: TableForm;
  readonly writers: TableWriters;
  /** Takes the pieces of the file in order; the next one is made when it has taken one. */
  readonly take: (piece: string | Uint8Array) => void | Promise<void>;
  /** Called after each page. `of` is null while nobody knows how many there are. */
  readonly progress?: (rows: number, of: number | null) => void;
}

/** A workbook is put together in memory: some 7 kB a row of callouts were measured. */
const mostWorkbookRows = 120_000;

/**
 * Reads a list page by page and hands on the bytes of its table. CSV follows RFC 4180, in UTF-8 with the byte order mark
 * by which spreadsheets know it, and never holds more than a page; moments stand as "2026-11-24 09:05" on this machine's clock.
 * @returns how many rows were written, the header aside
 * @throws SillbookError of the list; input-invalid for a workbook with too many rows
 */
export async function saveList<Name extends ListName>(ask: Ask, work: ListToSave<Name>): Promise<number> {
  const list = exportLists[work.list] as unknown as ExportList<ListInput<Name>>;
  return work.form === "csv" ? saveCsv(ask, list, work) : saveWorkbook(ask, list, work);
}

async function saveCsv<Name extends ListName>(
  ask: Ask,
  { columns, pages }: ExportList<ListInput<Name>>,
  { input, writers, take, progress }: ListToSave<Name>,
): Promise<number> {
  const write = (rows: string[][], bom: boolean): string =>
    writers.stringifyCsv(rows, { bom, record_delimiter: "windows", quoted_match: /[\r\n]|^\s|\s$/ });
  await take(write([columns.map(({ head }) => guardCell(head))], true));
  let count = 0;
  for await (const { rows, of } of pages(ask, input)) {
    if (rows.length > 0) await take(write(csvRows(columns, rows), false));
    count += rows.length;
    progress?.(count, of);
  }
  return count;
}

function csvRows(columns: readonly ListColumn[], rows: readonly (readonly CellValue[])[]): string[][] {
  const kinds = columns.map(({ kind }) => kind);
  return rows.map((row) => row.map((value, at) => csvCell(value, kinds[at] ?? "text")));
}

/** A number is written as a number; everything else is text that starts no formula. */
export function csvCell(value: CellValue, kind: ColumnKind): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  return guardCell(kind === "moment" ? localMoment(value) : value);
}

async function saveWorkbook<Name extends ListName>(
  ask: Ask,
  { title, columns, pages }: ExportList<ListInput<Name>>,
  { input, writers, take, progress }: ListToSave<Name>,
): Promise<number> {
  const table: (string | number | null | WorkbookValue)[][] = [
    columns.map(({ head }) => ({ value: head, fontWeight: "bold" as const })),
  ];
  for await (const { rows, of } of pages(ask, input)) {
    if (Math.max(of ?? 0, table.length + rows.length) > mostWorkbookRows) throw tooManyRows();
    for (const row of rows) table.push(row.map((value, at) => workbookCell(value, columns[at]?.kind)));
    progress?.(table.length - 1, of);
  }
  await take(
    await writers.writeWorkbook(table, {
      sheet: title,
      columns: columns.map(({ width }) => ({ width })),
      stickyRowsCount: 1,
    }),
  );
  return table.length - 1;
}

function tooManyRows(): SillbookError {
  const most = mostWorkbookRows.toLocaleString("en-GB");
  return new SillbookError(
    "input-invalid",
    `An XLSX file of more than ${most} rows is too large to be put together here. Save the list as CSV, or narrow it.`,
  );
}

/** Text is text by its type and no formula. A moment carries no time zone in a workbook: it is as the clock here shows it. */
export function workbookCell(
  value: CellValue,
  kind: ColumnKind | undefined,
): string | number | null | WorkbookValue {
  if (value === null || value === "") return null;
  if (typeof value === "number") return value;
  if (kind === "moment")
    return {
      value: new Date(`${localMoment(value).replace(" ", "T")}Z`),
      type: Date,
      format: "yyyy-mm-dd hh:mm",
    };
  if (kind === "day") return { value: new Date(`${value}T00:00:00Z`), type: Date, format: "yyyy-mm-dd" };
  return escapeForWorkbook(value);
}

/**
 * Signs that XML cannot hold or that the library leaves out, and text that looks like their escape, as _xHHHH_
 * (ECMA-376-1:2016 22.9.2.19). So is the first letter of the few words that every JavaScript object knows, "constructor"
 * for one: the library looks its texts up in a plain object and would take what it finds there for a text it has seen.
 */
function escapeForWorkbook(text: string): string {
  const escaped = text
    .replace(/_x(?=[0-9A-Fa-f]{4}_)/g, "_x005F_x")
    .replace(/[\p{Cc}\p{Cn}\uFFFD]/gu, (sign) =>
      sign === "\t" || sign === "\n" ? sign : sign.split("").map(escapedUnit).join(""),
    );
  return escaped in {} ? escapedUnit(escaped) + escaped.slice(1) : escaped;
}

function escapedUnit(sign: string): string {
  return `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;
}

const two = (value: number): string => String(value).padStart(2, "0");

/** "2026-11-24 09:05" on this machine's clock: ISO 8601 with a space (RFC 3339 5.6), which spreadsheets read as a date. */
export function localMoment(moment: string): string {
  const date = new Date(moment);
  const day = `${String(date.getFullYear()).padStart(4, "0")}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${day} ${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** "callouts 2026-11-24.csv" */
export function listFileName(list: ListName, form: TableForm, now: Date): string {
  return `${list} ${localMoment(now.toISOString()).slice(0, 10)}.${form}`;
}
