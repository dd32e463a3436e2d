import fs from "node:fs";
import path from "node:path";
import { SillbookError } from "#shared-lib/errors.ts";
import type { FaultPlan } from "./disk-faults.ts";
import { hasLiveJournal, removeIfThere, syncFolder } from "./durable-files.ts";
import { loadSqlJs } from "./load-sql-js.ts";
import { RedirectedCalls } from "./redirected-calls.ts";
import {
  flushEverything,
  holdFileAlone,
  keepJournalOnDisk,
  limitJournal,
  readApplicationId,
  readSchemaSize,
  readSynchronous,
  settings,
  sillbookApplicationId,
  synchronousExtra,
  writeApplicationId,
} from "./sqlite-disk.sql.ts";
import { diskError, explainSqliteError, SqliteError } from "./sqlite-error.ts";
import { SqliteFile } from "./sqlite-file.ts";
import type { SystemCallTrace } from "./system-call-trace.ts";
import { isSystemError, systemErrorCode } from "./system-errors.ts";

export interface OpenOptions {
  /** What to do when the file does not exist: create it (default) or refuse with `not-found`. */
  readonly whenMissing?: "create" | "refuse";
  /** The file is only read; nothing is written, created or recovered. Implies `whenMissing: "refuse"`. */
  readonly readOnly?: boolean;
  /** Only for tests: system calls that fail. */
  readonly faults?: FaultPlan;
  /** Receives every change on the disk, in order. */
  readonly trace?: SystemCallTrace;
}

/**
 * Opens (or creates) a Sillbook database on the real disk. A file that is damaged, empty or not a Sillbook database is
 * never replaced or opened as if it were new.
 *
 * Errors: `store-damaged`, `store-foreign`, `not-found`, `disk-full`, `disk-denied`, `disk-failed`.
 */
export async function openSqliteOnDisk(file: string, options: OpenOptions = {}): Promise<SqliteFile> {
  const wanted = path.resolve(file);
  const found = inspect(wanted);
  if (found === "missing") {
    if (options.readOnly || options.whenMissing === "refuse") {
      throw new SillbookError("not-found", `There is no database at ${wanted}.`, { path: wanted });
    }
    await createDatabase(wanted, options);
  }
  return openFile(fs.realpathSync(wanted), options, (opened) => {
    opened.get(readSchemaSize);
    const id = opened.get<{ application_id: number }>(readApplicationId)?.application_id;
    if (id !== sillbookApplicationId) {
      throw new SillbookError("store-foreign", undefined, { path: wanted, applicationId: id ?? 0 });
    }
  });
}

function inspect(file: string): "missing" | "present" {
  const facts = statOrExplain(file);
  if (!facts) {
    // A journal with content belongs to a database that was there; a new one must not be put in its place.
    if (hasLiveJournal(file)) {
      throw new SillbookError("store-damaged", undefined, {
        path: file,
        reason: "the database file is missing, but its journal is there",
      });
    }
    return "missing";
  }
  if (!facts.isFile()) {
    throw new SillbookError("store-foreign", undefined, {
      path: file,
      reason: "this is a folder, not a file",
    });
  }
  // SQLite takes an empty file for a new database. Ours is never empty: it gets its name only when it is complete.
  if (facts.size === 0) {
    throw new SillbookError("store-damaged", undefined, { path: file, reason: "the file is empty" });
  }
  return "present";
}

function statOrExplain(file: string): fs.Stats | undefined {
  try {
    return fs.statSync(file, { throwIfNoEntry: false });
  } catch (error) {
    throw diskError(systemErrorCode(error), { path: file });
  }
}

// Written under another name first, so that a crash never leaves an empty or half database under the final one.
async function createDatabase(file: string, options: OpenOptions): Promise<void> {
  const temporary = `${file}.new`;
  try {
    for (const name of [temporary, `${temporary}-journal`]) removeIfThere(name);
    const opened = await openFile(temporary, options, (created) => created.exec(writeApplicationId));
    opened.close();
    removeIfThere(`${temporary}-journal`);
    fs.renameSync(temporary, file);
    syncFolder(path.dirname(file));
  } catch (error) {
    if (isSystemError(error) || error instanceof SqliteError)
      throw diskError(systemErrorCode(error), { path: file });
    throw error;
  }
}

async function openFile(
  file: string,
  options: OpenOptions,
  prepare: (opened: SqliteFile) => void,
): Promise<SqliteFile> {
  const { readOnly = false, faults, trace } = options;
  const calls = new RedirectedCalls({ file, readOnly, faults, trace });
  let opened: SqliteFile | undefined;
  try {
    opened = new SqliteFile(file, await loadSqlJs(calls), calls);
    opened.exec(holdFileAlone);
    if (!readOnly) requireDurableSettings(opened);
    opened.exec(settings);
    prepare(opened);
    return opened;
  } catch (error) {
    const explained = explainSqliteError(error, "open", calls.lastFailure);
    closeQuietly(opened, calls);
    throw explained instanceof SillbookError ? withPath(explained, file) : explained;
  }
}

function requireDurableSettings(opened: SqliteFile): void {
  const mode = opened.get<{ journal_mode: string }>(keepJournalOnDisk)?.journal_mode;
  opened.get(limitJournal);
  opened.exec(flushEverything);
  const level = opened.get<{ synchronous: number }>(readSynchronous)?.synchronous;
  if (mode !== "persist" || level !== synchronousExtra) {
    throw new SillbookError("disk-failed", "The database engine refused its safe settings.", { mode, level });
  }
}

// The error that is being reported matters more than one while giving up.
function closeQuietly(opened: SqliteFile | undefined, calls: RedirectedCalls): void {
  try {
    opened?.close();
  } catch {
    calls.closeAll();
  }
}

function withPath(error: SillbookError, file: string): SillbookError {
  return new SillbookError(error.code, error.message, { path: file, ...error.details });
}
