import { stringify } from "csv-stringify/browser/esm/sync";
import writeWorkbook, { type SheetData } from "write-excel-file/universal";
import type { TableWriters } from "#shared-lib/export/save-list.ts";

export const tableWriters: TableWriters = {
  stringifyCsv: (rows, options) => stringify(rows, options),
  writeWorkbook: async (rows, sheet) => {
    const blob = await writeWorkbook(rows as SheetData, sheet).toBlob();
    return new Uint8Array(await blob.arrayBuffer());
  },
};
