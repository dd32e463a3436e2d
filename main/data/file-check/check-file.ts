import { SillbookError } from "#shared-lib/errors.ts";
import { openSqliteOnDisk } from "../sqlite-disk/open-sqlite-on-disk.ts";
import { quickCheck, smallCache } from "../sqlite-disk/sqlite-disk.sql.ts";

export interface FileCheck {
  readonly isGood: boolean;
  /** What SQLite found, in its words. */
  readonly problems: readonly string[];
}

/** Looks through a database file; rejects where the disk fails, or when the signal ends it. */
export type FileChecker = (file: string, signal?: AbortSignal) => Promise<FileCheck>;

/** Opens the file without changing it and has SQLite look through it, in the thread of the caller. */
export const checkFile: FileChecker = async (file) => {
  try {
    const opened = await openSqliteOnDisk(file, { readOnly: true });
    try {
      opened.exec(smallCache);
      const rows = opened.all<{ quick_check: string }>(quickCheck).map((row) => row.quick_check);
      const isGood = rows.length === 1 && rows[0] === "ok";
      return { isGood, problems: isGood ? [] : rows };
    } finally {
      opened.close();
    }
  } catch (error) {
    if (!isDamage(error)) throw error;
    return { isGood: false, problems: [String(error.details.reason ?? error.message)] };
  }
};

export function isDamage(error: unknown): error is SillbookError {
  return error instanceof SillbookError && (error.code === "store-damaged" || error.code === "store-foreign");
}
