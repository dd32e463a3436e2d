import { randomUUID } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { processIsAlive, takeFolderLock } from "./folder-lock.ts";
import { removeIfThere, syncFolder, writeNewFile } from "./sqlite-disk/durable-files.ts";
import { diskError } from "./sqlite-disk/sqlite-error.ts";
import { systemErrorCode } from "./sqlite-disk/system-errors.ts";

/** The absolute paths of what a data folder holds. */
export interface DataFolderPaths {
  readonly folder: string;
  readonly database: string;
  readonly backups: string;
  readonly attachments: string;
  readonly lock: string;
  readonly running: string;
  readonly log: string;
  /** The ranked search index as it was last kept. Made from the database: it may be deleted at any time. */
  readonly searchIndex: string;
}

/** A data folder that this process holds until `close`. */
export interface DataFolder extends DataFolderPaths {
  close(): void;
}

/** How the program that runs on a folder is reached. The key is a secret of this user. */
export interface RunningProgramAddress {
  readonly address: string;
  readonly key: string;
  readonly pid: number;
}

export function dataFolderPaths(folder: string): DataFolderPaths {
  const root = path.resolve(folder);
  return {
    folder: root,
    database: path.join(root, "sillbook.sqlite"),
    backups: path.join(root, "backups"),
    attachments: path.join(root, "attachments"),
    lock: path.join(root, "sillbook.lock"),
    running: path.join(root, "running.json"),
    log: path.join(root, "sillbook.log"),
    searchIndex: path.join(root, "search-index.bin"),
  };
}

/**
 * Creates the folder where it is missing (readable for this user only) and holds it.
 * Errors: `folder-in-use` with details { pid, host, since }; `disk-denied`, `disk-full`, `disk-failed` with { path }.
 */
export function openDataFolder(folder: string): DataFolder {
  const paths = dataFolderPaths(folder);
  for (const needed of [paths.folder, paths.backups, paths.attachments]) makeFolder(needed);
  const lock = takeFolderLock(paths.lock);
  return { ...paths, close: () => lock.release() };
}

function makeFolder(folder: string): void {
  try {
    const firstMade = fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (firstMade !== undefined) syncFolder(path.dirname(folder));
  } catch (error) {
    throw diskError(systemErrorCode(error), { path: folder });
  }
}

/**
 * The database is missing although backups are there: it was removed or its disk is not connected. A new one must then
 * not be created without asking.
 */
export function databaseHasVanished(paths: DataFolderPaths): boolean {
  if (fs.existsSync(paths.database)) return false;
  return (
    fs.existsSync(paths.backups) && fs.readdirSync(paths.backups).some((name) => name.endsWith(".sqlite"))
  );
}

/** Where the data of this user lies unless another folder is named. */
export function defaultDataFolder(
  platform: NodeJS.Platform = process.platform,
  environment: NodeJS.ProcessEnv = process.env,
  home: string = os.homedir(),
): string {
  if (platform === "win32") {
    const { APPDATA } = environment;
    return path.win32.join(APPDATA || path.win32.join(home, "AppData", "Roaming"), "Sillbook");
  }
  if (platform === "darwin") return path.posix.join(home, "Library", "Application Support", "Sillbook");
  const { XDG_DATA_HOME } = environment;
  // The XDG base directory specification says to ignore a path that is not absolute.
  const isUsable = XDG_DATA_HOME !== undefined && path.posix.isAbsolute(XDG_DATA_HOME);
  return path.posix.join(isUsable ? XDG_DATA_HOME : path.posix.join(home, ".local", "share"), "Sillbook");
}

/** Tells other programs of this user how to reach this one. Nobody ever reads half of it. */
export function writeRunning(folder: string, running: RunningProgramAddress): void {
  const file = dataFolderPaths(folder).running;
  const draft = `${file}.${randomUUID()}`;
  try {
    writeNewFile(draft, JSON.stringify(running));
    fs.renameSync(draft, file);
  } catch (error) {
    removeIfThere(draft);
    throw diskError(systemErrorCode(error), { path: file });
  }
}

/** Undefined where no program runs on the folder, or the one that left the file is dead. */
export function readRunning(folder: string): RunningProgramAddress | undefined {
  try {
    const value: unknown = JSON.parse(fs.readFileSync(dataFolderPaths(folder).running, "utf8"));
    return isRunning(value) && processIsAlive(value.pid) ? value : undefined;
  } catch (error) {
    if (error instanceof SyntaxError || systemErrorCode(error) === "ENOENT") return undefined;
    throw diskError(systemErrorCode(error), { path: dataFolderPaths(folder).running });
  }
}

export function removeRunning(folder: string): void {
  removeIfThere(dataFolderPaths(folder).running);
}

function isRunning(value: unknown): value is RunningProgramAddress {
  if (typeof value !== "object" || value === null) return false;
  const { address, key, pid } = value as Partial<Record<keyof RunningProgramAddress, unknown>>;
  return typeof address === "string" && typeof key === "string" && typeof pid === "number";
}
