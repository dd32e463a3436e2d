import fs from "node:fs";
import path from "node:path";
import { SillbookError } from "#shared-lib/errors.ts";
import {
  type Backup,
  type BackupKind,
  backupName,
  backupsToRemove,
  newestFirst,
  readBackupName,
} from "./backup-retention.ts";
import type { DataFolderPaths } from "./data-folder.ts";
import { checkFile, type FileCheck, type FileChecker, isDamage } from "./file-check/check-file.ts";
import type { FaultPlan } from "./sqlite-disk/disk-faults.ts";
import {
  copyDurably,
  hasLiveJournal,
  removeIfThere,
  renameDurably,
  syncFolder,
} from "./sqlite-disk/durable-files.ts";
import { openSqliteOnDisk } from "./sqlite-disk/open-sqlite-on-disk.ts";
import { diskError } from "./sqlite-disk/sqlite-error.ts";
import type { SqliteFile } from "./sqlite-disk/sqlite-file.ts";
import { systemErrorCode } from "./sqlite-disk/system-errors.ts";

export interface BackupOptions {
  readonly now?: Date;
  /** Only for tests: system calls that fail. */
  readonly faults?: FaultPlan;
  /** Looks through the copy before it counts; in the caller's thread when left out. */
  readonly check?: FileChecker;
  readonly signal?: AbortSignal;
}

export interface MadeBackup {
  readonly backup: Backup;
  /** Older backups that were removed afterwards. */
  readonly removed: readonly string[];
}

export interface Restored {
  readonly restored: string;
  /** File name in the backups folder of what was in place before; undefined where nothing was. */
  readonly keptAs: string | undefined;
  /** What was in place could not be opened; it is kept as it was. */
  readonly wasDamaged: boolean;
}

type BackupPaths = Pick<DataFolderPaths, "database" | "backups">;

/** Newest first. */
export function listBackups({ backups }: BackupPaths): Backup[] {
  if (!fs.existsSync(backups)) return [];
  const found = fs.readdirSync(backups).flatMap((name): Backup[] => {
    const said = readBackupName(name);
    if (!said) return [];
    const facts = fs.statSync(path.join(backups, name), { throwIfNoEntry: false });
    return facts?.isFile() ? [{ name, ...said, bytes: facts.size }] : [];
  });
  return newestFirst(found);
}

/**
 * Makes a backup of the open database, checks it, and only then removes older ones. The copy is made at once, before this
 * returns; only its check may take place while the database is used again.
 * Errors: `backup-failed` with details { reason } (an error code); no half backup is left under a final name.
 */
export async function makeBackup(
  paths: BackupPaths,
  database: SqliteFile,
  kind: BackupKind,
  options: BackupOptions = {},
): Promise<MadeBackup> {
  const now = options.now ?? new Date();
  const name = freeName(paths, now, kind);
  const bytes = await copyDatabase(database, path.join(paths.backups, name), options);
  const backup: Backup = { name, kind, madeAt: readBackupName(name)?.madeAt ?? now.toISOString(), bytes };
  return { backup, removed: removeOld(paths, now) };
}

/**
 * Writes a consistent, checked copy of the open database to a file that must not exist. Returns its size in bytes.
 * Between transactions the file on the disk is complete (this process holds it alone), so its bytes are copied.
 * Errors: `backup-failed` with details { reason }.
 */
export async function copyDatabase(
  database: SqliteFile,
  target: string,
  options: BackupOptions = {},
): Promise<number> {
  if (database.inTransaction || hasLiveJournal(database.path)) {
    throw new Error("A copy of the database cannot be made while a transaction is open.");
  }
  return placeCopy(database.path, target, options);
}

/** Opens the backup without changing it and has SQLite look through it. Errors: `not-found`. */
export async function checkBackup(paths: BackupPaths, name: string): Promise<FileCheck> {
  return checkFile(path.join(paths.backups, findBackup(paths, name).name));
}

/**
 * Puts a backup in the place of the database. The database must be closed and stay closed. What was in place is kept: as a
 * `before-restore` backup, or where it is damaged, as it was, under a name that starts with `damaged-`.
 * Errors: `not-found`; `backup-failed` with details { reason } (then the database in place is untouched);
 * `disk-full`, `disk-denied`, `disk-failed`.
 */
export async function restoreBackup(
  paths: BackupPaths,
  name: string,
  options: BackupOptions = {},
): Promise<Restored> {
  const source = path.join(paths.backups, findBackup(paths, name).name);
  const draft = `${paths.database}.restore`;
  try {
    removeIfThere(draft);
    await placeCopy(source, draft, options);
    const kept = await keepPresent(paths, options);
    // A journal that belongs to the old file would be played into the new one.
    removeIfThere(`${paths.database}-journal`);
    renameDurably(draft, paths.database, path.dirname(paths.database), options.faults);
    return { restored: name, ...kept };
  } catch (error) {
    throw error instanceof SillbookError
      ? error
      : diskError(systemErrorCode(error), { path: paths.database });
  } finally {
    removeIfThere(draft);
  }
}

function findBackup(paths: BackupPaths, name: string): Backup {
  const found = listBackups(paths).find((backup) => backup.name === name);
  if (!found) throw new SillbookError("not-found", `There is no backup named "${name}".`, { name });
  return found;
}

function freeName({ backups }: BackupPaths, now: Date, kind: BackupKind): string {
  for (let copy = 1; ; copy += 1) {
    const name = backupName(now, kind, copy);
    if (!fs.existsSync(path.join(backups, name))) return name;
  }
}

// Under a temporary name until it is flushed and found to be good.
async function placeCopy(source: string, target: string, options: BackupOptions): Promise<number> {
  const { faults, check: look = checkFile, signal } = options;
  const draft = `${target}.part`;
  try {
    removeIfThere(draft);
    if (fs.existsSync(target)) throw Object.assign(new Error(`${target} exists`), { code: "EEXIST" });
    const bytes = copyDurably(source, draft, faults);
    const check = await look(draft, signal);
    if (!check.isGood) {
      throw new SillbookError("store-damaged", undefined, { problems: check.problems });
    }
    renameDurably(draft, target, path.dirname(target), faults);
    return bytes;
  } catch (error) {
    throw backupFailed(error, target);
  } finally {
    removeIfThere(draft);
  }
}

function backupFailed(error: unknown, target: string): SillbookError {
  const cause =
    error instanceof SillbookError ? error : diskError(systemErrorCode(error), { cause: String(error) });
  return new SillbookError(
    "backup-failed",
    `The backup could not be made or checked: ${reasonWords(cause)}`,
    {
      ...cause.details,
      reason: cause.code,
      path: target,
    },
  );
}

function reasonWords(cause: SillbookError): string {
  switch (cause.code) {
    case "disk-full":
      return "the disk is full. Free some space and try again.";
    case "disk-denied":
      return "the folder does not allow writing. Check its permissions and try again.";
    case "store-damaged":
    case "store-foreign":
      return "the copied file is damaged.";
    default:
      return "the disk reported an error. Check the disk and try again.";
  }
}

function removeOld(paths: BackupPaths, now: Date): string[] {
  return backupsToRemove(listBackups(paths), now).flatMap(({ name }) => {
    try {
      removeIfThere(path.join(paths.backups, name));
      return [name];
    } catch {
      // One that cannot be removed is in nobody's way; the next backup tries again.
      return [];
    }
  });
}

async function keepPresent(
  paths: BackupPaths,
  options: BackupOptions,
): Promise<{ readonly keptAs: string | undefined; readonly wasDamaged: boolean }> {
  if (!fs.existsSync(paths.database)) return { keptAs: undefined, wasDamaged: false };
  try {
    // Opening it plays back what a crash left in its journal.
    const present = await openSqliteOnDisk(paths.database, { whenMissing: "refuse" });
    present.close();
    const name = freeName(paths, options.now ?? new Date(), "before-restore");
    await placeCopy(paths.database, path.join(paths.backups, name), options);
    return { keptAs: name, wasDamaged: false };
  } catch (error) {
    const isDamaged =
      isDamage(error) || (error instanceof SillbookError && error.details.reason === "store-damaged");
    if (!isDamaged) throw error;
    return { keptAs: keepDamaged(paths, options.now ?? new Date()), wasDamaged: true };
  }
}

function keepDamaged(paths: BackupPaths, now: Date): string {
  const stem = `damaged-${backupName(now, "before-restore").slice("sillbook-".length, -"-before-restore.sqlite".length)}`;
  let name = `${stem}.sqlite`;
  for (let copy = 2; fs.existsSync(path.join(paths.backups, name)); copy += 1)
    name = `${stem}-${copy}.sqlite`;
  const target = path.join(paths.backups, name);
  const journal = `${paths.database}-journal`;
  if (hasLiveJournal(paths.database)) copyDurably(journal, `${target}-journal`);
  try {
    // A second name for the same file needs no space and leaves it in place until the restored one takes its name.
    fs.linkSync(paths.database, target);
  } catch {
    fs.renameSync(paths.database, target);
  }
  syncFolder(paths.backups);
  return name;
}
