import { parse } from "csv-parse/browser/esm/sync";
import { stringify } from "csv-stringify/browser/esm/sync";
import { unzipSync } from "fflate";
import readWorkbook from "read-excel-file/universal";
import { guardCell } from "#shared-lib/export/cell-guard.ts";
import {
  type CsvRecord,
  readTable,
  type TableFile,
  type TableReaders,
  type WorkbookSheet,
} from "#shared-lib/import/table-file.ts";
import { handOverFile } from "../../ui/hand-over-file.ts";

const readers: TableReaders = {
  // With `info` each record comes with its place, which the types of the package do not say.
  parseCsv: (text, options) => parse(text, options) as unknown as readonly CsvRecord[],
  readWorkbook: async (bytes) =>
    (await readWorkbook(new Blob([new Uint8Array(bytes)]))) as unknown as readonly WorkbookSheet[],
  unzip: unzipSync,
};

/** @throws SillbookError input-invalid, with the place in the file */
export async function readChosenFile(file: File): Promise<TableFile> {
  return readTable(new Uint8Array(await file.arrayBuffer()), readers);
}

/** Hands a table to the person as a CSV file. A cell that a spreadsheet would take for a formula is made text. */
export function saveTable(table: readonly (readonly string[])[], fileName: string): void {
  const text = stringify(
    table.map((row) => row.map(guardCell)),
    { bom: true },
  );
  handOverFile(new Blob([text], { type: "text/csv;charset=utf-8" }), fileName);
}
