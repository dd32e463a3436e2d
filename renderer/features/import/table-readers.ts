import { parse } from "csv-parse/browser/esm/sync";
import { stringify } from "csv-stringify/browser/esm/sync";
import { unzipSync } from "fflate";
import readWorkbook from "read-excel-file/universal";
import {
  type CsvRecord,
  readTable,
  type TableFile,
  type TableReaders,
  type WorkbookSheet,
} from "#shared-lib/import/table-file.ts";

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
  const text = stringify(table as string[][], { bom: true, escape_formulas: true });
  const address = URL.createObjectURL(new Blob([text], { type: "text/csv;charset=utf-8" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  // The download reads the address after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
