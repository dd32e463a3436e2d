import { readFile } from "node:fs/promises";
import { CsvError, parse } from "csv-parse/sync";
import { unzipSync } from "fflate";
import readWorkbook from "read-excel-file/node";
import { SillbookError } from "#shared-lib/errors.ts";
import { decodeText, type TextEncoding } from "#shared-lib/import/decode-text.ts";
import { type Delimiter, findDelimiter } from "#shared-lib/import/delimiter.ts";
import type { TableRow } from "#shared-lib/import/look-at-table.ts";

export interface TableFile {
  readonly form: "CSV" | "XLSX";
  readonly encoding: TextEncoding | null;
  readonly delimiter: Delimiter | null;
  /** The sheets of a workbook; the first with any cell is read. */
  readonly sheets: readonly string[];
  readonly rows: readonly TableRow[];
}

type Cell = string | number | boolean | Date | null;

const largestFile = 100 * 1024 * 1024;
/** A workbook of a hundred thousand rows unpacks to some 60 MB; a file made to fill the memory to a thousand times more. */
const largestUnpacked = 512 * 1024 * 1024;

/**
 * Reads a table from a CSV or XLSX file. Formulas are never worked out: what the spreadsheet showed last is taken.
 * @throws SillbookError input-invalid, with the place in the file
 */
export async function readTableFile(file: string): Promise<TableFile> {
  const bytes = await readFile(file).catch((error: Error) => {
    throw new SillbookError("input-invalid", `The table cannot be read: ${error.message}`);
  });
  if (bytes.length === 0) throw new SillbookError("input-invalid", "The table is an empty file.");
  if (bytes.length > largestFile)
    throw new SillbookError(
      "input-invalid",
      "The table is larger than 100 MB. Bring it in as several files.",
    );
  return bytes[0] === 0x50 && bytes[1] === 0x4b ? readXlsx(bytes) : readCsv(bytes);
}

function readCsv(bytes: Uint8Array): TableFile {
  const { text, encoding } = decodeText(bytes);
  const delimiter = findDelimiter(text);
  try {
    const records = parse(text, {
      delimiter,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      info: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    let line = 1;
    const rows = records.map(({ record, info }) => {
      const row = { rowNumber: line, cells: record };
      line = info.lines + 1;
      return row;
    });
    return { form: "CSV", encoding, delimiter, sheets: [], rows };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new SillbookError(
      "input-invalid",
      `The table cannot be read: ${error.message}. Nothing was changed.`,
    );
  }
}

async function readXlsx(bytes: Uint8Array): Promise<TableFile> {
  refuseUnpackable(bytes);
  let sheets: readonly { readonly sheet: string; readonly data: readonly (readonly Cell[])[] }[];
  try {
    sheets = (await readWorkbook(Buffer.from(bytes))) as unknown as typeof sheets;
  } catch (error) {
    throw new SillbookError(
      "input-invalid",
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

/** Reads only the list of contents: nothing is unpacked. */
function refuseUnpackable(bytes: Uint8Array): void {
  let unpacked = 0;
  try {
    unzipSync(bytes, {
      filter({ originalSize }) {
        unpacked += originalSize;
        return false;
      },
    });
  } catch {
    throw new SillbookError(
      "input-invalid",
      "The workbook is damaged or only half there. Nothing was changed.",
    );
  }
  if (unpacked > largestUnpacked)
    throw new SillbookError(
      "input-invalid",
      "The workbook unpacks to more than 512 MB. Bring it in as several files.",
    );
}

/** A day of a spreadsheet carries no time zone: it is written as the clock showed it. */
function cellText(cell: Cell): string {
  if (cell === null || cell === undefined) return "";
  if (!(cell instanceof Date)) return String(cell);
  const text = cell.toISOString();
  return text.slice(11, 16) === "00:00" ? text.slice(0, 10) : `${text.slice(0, 10)} ${text.slice(11, 16)}`;
}
