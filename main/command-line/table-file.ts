import { readFile } from "node:fs/promises";
import { parse } from "csv-parse/sync";
import { unzipSync } from "fflate";
import readWorkbook from "read-excel-file/node";
import { SillbookError } from "#shared-lib/errors.ts";
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
    (await readWorkbook(Buffer.from(bytes))) as unknown as readonly WorkbookSheet[],
  unzip: unzipSync,
};

/** @throws SillbookError input-invalid, with the place in the file */
export async function readTableFile(file: string): Promise<TableFile> {
  const bytes = await readFile(file).catch((error: Error) => {
    throw new SillbookError("input-invalid", `The table cannot be read: ${error.message}`);
  });
  return readTable(bytes, readers);
}
