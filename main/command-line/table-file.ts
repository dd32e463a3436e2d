import { readFile } from "node:fs/promises";
import { parse } from "csv-parse/sync";
import { unzipSync } from "fflate";
import readWorkbook from "read-excel-file/node";
import { SillbookError } from "#shared-lib/errors.ts";
import {
  readTable,
  type TableFile,
  type TableReaders,
  type WorkbookSheet,
} from "#shared-lib/import/table-file.ts";

const readers: TableReaders = {
  parseCsv(text, delimiter) {
    const records = parse(text, {
      delimiter,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      info: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    let line = 1;
    return records.map(({ record, info }) => {
      const row = { rowNumber: line, cells: record };
      line = info.lines + 1;
      return row;
    });
  },
  readWorkbook: async (bytes) =>
    (await readWorkbook(Buffer.from(bytes))) as unknown as readonly WorkbookSheet[],
  unpackedSize(bytes) {
    let size = 0;
    unzipSync(bytes, {
      filter({ originalSize }) {
        size += originalSize;
        return false;
      },
    });
    return size;
  },
};

/** @throws SillbookError input-invalid, with the place in the file */
export async function readTableFile(file: string): Promise<TableFile> {
  const bytes = await readFile(file).catch((error: Error) => {
    throw new SillbookError("input-invalid", `The table cannot be read: ${error.message}`);
  });
  return readTable(bytes, readers);
}
