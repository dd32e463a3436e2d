import { open, rename, rm } from "node:fs/promises";
import { dirname, extname } from "node:path";
import { stringify } from "csv-stringify/sync";
import writeWorkbook, { type SheetData } from "write-excel-file/node";
import { SillbookError } from "#shared-lib/errors.ts";
import { exportLists, type ListName } from "#shared-lib/export/lists.ts";
import { saveList, type TableForm, type TableWriters } from "#shared-lib/export/save-list.ts";
import type { Ask } from "#shared-lib/import/bring-in-table.ts";
import { syncFolder } from "../data/sqlite-disk/durable-files.ts";

const writers: TableWriters = {
  stringifyCsv: (rows, options) => stringify(rows, options),
  writeWorkbook: async (rows, sheet) =>
    new Uint8Array(await writeWorkbook(rows as SheetData, sheet).toBuffer()),
};

/**
 * Saves a list as a CSV or XLSX file, as the ending of its name says. Under its name stands the whole file or nothing.
 * @throws SillbookError input-invalid for an unknown list or ending, disk errors as input-invalid naming the file
 */
export async function saveListFile(
  ask: Ask,
  work: { readonly list: string; readonly input: unknown; readonly file: string },
): Promise<{ readonly file: string; readonly rows: number }> {
  const { list, file } = work;
  const form = extname(file).slice(1).toLowerCase();
  if (form !== "csv" && form !== "xlsx")
    throw new SillbookError("input-invalid", "The name of the file ends with .csv or .xlsx.");
  if (!Object.hasOwn(exportLists, list))
    throw new SillbookError(
      "input-invalid",
      `There is no list “${list}”. The lists: ${Object.keys(exportLists).join(", ")}.`,
    );
  const rows = await writeWhole(file, (take) =>
    saveList(ask, {
      list: list as ListName,
      input: work.input as never,
      form: form as TableForm,
      writers,
      take,
    }),
  );
  return { file, rows };
}

type Take = (piece: string | Uint8Array) => Promise<void>;

/** Under a temporary name until it is flushed. */
async function writeWhole<Result>(file: string, work: (take: Take) => Promise<Result>): Promise<Result> {
  const draft = `${file}.part`;
  try {
    const target = await open(draft, "w");
    let result: Result;
    try {
      result = await work(async (piece) => {
        await target.writeFile(piece);
      });
      await target.sync();
    } finally {
      await target.close();
    }
    await rename(draft, file);
    syncFolder(dirname(file));
    return result;
  } catch (error) {
    await rm(draft, { force: true });
    if (error instanceof SillbookError) throw error;
    throw new SillbookError("input-invalid", `The file cannot be written: ${(error as Error).message}`);
  }
}
