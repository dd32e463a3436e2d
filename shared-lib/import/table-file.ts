import { SillbookError } from "../errors.ts";
import { unguardCell } from "../export/cell-guard.ts";
import { decodeText, type TextEncoding } from "./decode-text.ts";
import { type Delimiter, findDelimiter } from "./delimiter.ts";
import type { TableRow } from "./look-at-table.ts";

export interface TableFile {
  readonly form: "CSV" | "XLSX";
  readonly encoding: TextEncoding | null;
  readonly delimiter: Delimiter | null;
  /** The sheets of a workbook; the first with any cell is read. */
  readonly sheets: readonly string[];
  readonly rows: readonly TableRow[];
}

export type WorkbookCell = string | number | boolean | Date | null | undefined;
export interface WorkbookSheet {
  readonly sheet: string;
  readonly data: readonly (readonly WorkbookCell[])[];
}

/** A record with the line of the file where it ends. */
export interface CsvRecord {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

export interface CsvOptions {
  readonly delimiter: Delimiter;
  readonly bom: boolean;
  readonly relax_column_count: boolean;
  readonly relax_quotes: boolean;
  readonly skip_empty_lines: boolean;
  readonly info: boolean;
}

/** The libraries that read the two forms: their builds differ between Node and a page. */
export interface TableReaders {
  /** `parse` of csv-parse. Throws an error whose message names the line. */
  readonly parseCsv: (text: string, options: CsvOptions) => readonly CsvRecord[];
  readonly readWorkbook: (bytes: Uint8Array) => Promise<readonly WorkbookSheet[]>;
  /** `unzipSync` of fflate. Throws where it is no whole archive. */
  readonly unzip: (
    bytes: Uint8Array,
    options: { readonly filter: (entry: { readonly originalSize: number }) => boolean },
  ) => unknown;
}

const largestFile = 100 * 1024 * 1024;
/** A workbook of a hundred thousand rows unpacks to some 60 MB; a file made to fill the memory to a thousand times more. */
const largestUnpacked = 512 * 1024 * 1024;

/**
 * The table in the bytes of a CSV or XLSX file. Formulas are never worked out: what the spreadsheet showed last is taken.
 * @throws SillbookError input-invalid, with the place in the file
 */
export async function readTable(bytes: Uint8Array, readers: TableReaders): Promise<TableFile> {
  if (bytes.length === 0) throw refusal("The table is an empty file.");
  if (bytes.length > largestFile)
    throw refusal("The table is larger than 100 MB. Bring it in as several files.");
  return bytes[0] === 0x50 && bytes[1] === 0x4b ? readXlsx(bytes, readers) : readCsv(bytes, readers);
}

function readCsv(bytes: Uint8Array, readers: TableReaders): TableFile {
  const { text, encoding } = decodeText(bytes);
  const delimiter = findDelimiter(text);
  try {
    return { form: "CSV", encoding, delimiter, sheets: [], rows: parseRows(text, delimiter, readers) };
  } catch (error) {
    throw refusal(`The table cannot be read: ${(error as Error).message}. Nothing was changed.`);
  }
}

function parseRows(text: string, delimiter: Delimiter, { parseCsv }: TableReaders): TableRow[] {
  const records = parseCsv(text, {
    delimiter,
    bom: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    info: true,
  });
  let line = 1;
  return records.map(({ record, info }) => {
    const row = { rowNumber: line, cells: record.map(unguardCell) };
    line = info.lines + 1;
    return row;
  });
}

/** Bytes the archive says it unpacks to; nothing is unpacked. */
function unpackedSize(bytes: Uint8Array, { unzip }: TableReaders): number {
  let size = 0;
  unzip(bytes, {
    filter({ originalSize }) {
      size += originalSize;
      return false;
    },
  });
  return size;
}

async function readXlsx(bytes: Uint8Array, readers: TableReaders): Promise<TableFile> {
  let unpacked: number;
  try {
    unpacked = unpackedSize(bytes, readers);
  } catch {
    throw refusal("The workbook is damaged or only half there. Nothing was changed.");
  }
  if (unpacked > largestUnpacked)
    throw refusal("The workbook unpacks to more than 512 MB. Bring it in as several files.");
  let sheets: readonly WorkbookSheet[];
  try {
    sheets = await readers.readWorkbook(bytes);
  } catch (error) {
    throw refusal(
      `The workbook cannot be read (${(error as Error).message}). Nothing was changed. Save it anew as XLSX or CSV.`,
    );
  }
  const filled = sheets.find(({ data }) => data.length > 0);
  const rows = (filled?.data ?? []).map((cells, index) => ({
    rowNumber: index + 1,
    cells: cells.map(cellText),
  }));
  return { form: "XLSX", encoding: null, delimiter: null, sheets: sheets.map(({ sheet }) => sheet), rows };
}

function refusal(words: string): SillbookError {
  return new SillbookError("input-invalid", words);
}

/** A day of a spreadsheet carries no time zone: it is written as the clock showed it. */
function cellText(cell: WorkbookCell): string {
  if (cell === null || cell === undefined) return "";
  if (!(cell instanceof Date)) return String(cell);
  const text = cell.toISOString();
  return text.slice(11, 16) === "00:00" ? text.slice(0, 10) : `${text.slice(0, 10)} ${text.slice(11, 16)}`;
}
