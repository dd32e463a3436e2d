import { SillbookError } from "#shared-lib/errors.ts";
import type { DiskFailure } from "./redirected-calls.ts";

/** A mistake in a statement or a broken rule of the schema. The text is SQLite's own. */
export class SqliteError extends Error {
  readonly sql: string;
  /** A NOT NULL, UNIQUE, CHECK or FOREIGN KEY rule refused the row. */
  readonly isConstraint: boolean;

  constructor(text: string, sql: string) {
    super(`${text} (in: ${sql.trim()})`);
    this.name = "SqliteError";
    this.sql = sql;
    this.isConstraint = / constraint failed/.test(text);
  }
}

const diskTexts =
  /disk I\/O error|database or disk is full|unable to open database file|attempt to write a readonly database|unknown error|access permission denied/;

/**
 * Turns what SQLite threw into the error a person meets: `disk-full`, `disk-denied`, `disk-failed`, `store-damaged` or
 * `store-foreign`; anything else is a defect and becomes a `SqliteError`. SQLite reports a text only, so the kind of
 * a disk error is taken from the system call that failed last.
 */
export function explainSqliteError(thrown: unknown, sql: string, failure: DiskFailure | undefined): Error {
  if (thrown instanceof SillbookError || thrown instanceof SqliteError) return thrown;
  const text = thrown instanceof Error ? thrown.message : String(thrown);
  const isForeign = text === "file is not a database";
  const isDamaged = /database disk image is malformed|malformed database schema/.test(text);
  if (!isForeign && !isDamaged && !diskTexts.test(text)) return new SqliteError(text, sql);
  // What could not be read may look damaged to SQLite, but it is the disk that failed.
  if (failure) return diskError(failure.code, { reason: text, call: failure.call, path: failure.path });
  if (isForeign) return new SillbookError("store-foreign", undefined, { reason: text });
  if (isDamaged) return new SillbookError("store-damaged", undefined, { reason: text });
  return new SillbookError(text.includes("full") ? "disk-full" : "disk-failed", undefined, { reason: text });
}

/** The error for a system call that failed with `code`, such as "ENOSPC". */
export function diskError(code: string, details: Readonly<Record<string, unknown>> = {}): SillbookError {
  const facts = { ...details, systemError: code };
  if (code === "ENOSPC" || code === "EDQUOT" || code === "EFBIG") {
    return new SillbookError("disk-full", undefined, facts);
  }
  if (code === "EACCES" || code === "EPERM" || code === "EROFS") {
    return new SillbookError("disk-denied", undefined, facts);
  }
  return new SillbookError("disk-failed", undefined, facts);
}
