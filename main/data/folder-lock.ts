import { randomUUID } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import { SillbookError } from "#shared-lib/errors.ts";
import { removeIfThere, writeNewFile } from "./sqlite-disk/durable-files.ts";
import { diskError } from "./sqlite-disk/sqlite-error.ts";
import { systemErrorCode } from "./sqlite-disk/system-errors.ts";

/** Who holds a data folder, as written in its lock file. */
export interface LockHolder {
  readonly pid: number;
  readonly host: string;
  /** ISO 8601, UTC. */
  readonly since: string;
  /** Differs for each holding, so that a lock is known again. */
  readonly token: string;
  /** On Linux the boot and the start time of the process: a number that is used again by another process differs. */
  readonly processStart?: string | undefined;
}

export interface FolderLock {
  readonly holder: LockHolder;
  release(): void;
}

// A lock that cannot be read is a lock being written, unless it is older than this.
const writingMilliseconds = 60_000;
const deepestTakeover = 3;

/**
 * Takes the lock file, or throws `folder-in-use` with `details` { pid, host, since, file } of the holder. A lock that a dead
 * process of this computer left behind is taken over; one of another computer never, as nobody here can know whether it lives.
 */
export function takeFolderLock(file: string): FolderLock {
  const holder = describeThisProcess();
  const draft = `${file}.${holder.token}`;
  try {
    writeNewFile(draft, JSON.stringify(holder));
    takeLock(file, draft, 0);
  } catch (error) {
    throw error instanceof SillbookError ? error : diskError(systemErrorCode(error), { path: file });
  } finally {
    removeIfThere(draft);
  }
  return { holder, release: () => releaseLock(file, holder) };
}

// The draft is complete and flushed before it gets the name, so nobody ever reads half a lock. Who finds a stale lock
// first takes a second lock, beside it, and looks again: so only one process replaces a stale lock, however many try,
// and none replaces a fresh one. A takeover that was itself interrupted is taken over in the same way.
function takeLock(file: string, draft: string, depth: number): void {
  while (!giveName(draft, file)) {
    const found = readHolder(file);
    if (found === "gone") continue;
    if (found === "being-written" || isAlive(found) || depth > deepestTakeover) throw inUse(file, found);
    const takeover = `${file}.takeover`;
    takeLock(takeover, draft, depth + 1);
    try {
      const again = readHolder(file);
      if (again === "gone") continue;
      if (again === "being-written" || isAlive(again)) throw inUse(file, again);
      const fresh = `${draft}.${depth}`;
      writeNewFile(fresh, fs.readFileSync(draft, "utf8"));
      fs.renameSync(fresh, file);
      return;
    } finally {
      removeIfThere(takeover);
    }
  }
}

function giveName(draft: string, file: string): boolean {
  try {
    fs.linkSync(draft, file);
    return true;
  } catch (error) {
    const code = systemErrorCode(error);
    if (code === "EEXIST") return false;
    // Some file systems (memory sticks, network folders) have no second names; there the file is created and then written.
    if (code === "EPERM" || code === "ENOTSUP" || code === "EOPNOTSUPP" || code === "ENOSYS") {
      return createWithName(draft, file);
    }
    throw error;
  }
}

function createWithName(draft: string, file: string): boolean {
  try {
    writeNewFile(file, fs.readFileSync(draft, "utf8"));
    return true;
  } catch (error) {
    if (systemErrorCode(error) === "EEXIST") return false;
    throw error;
  }
}

function releaseLock(file: string, holder: LockHolder): void {
  const found = readHolder(file);
  if (typeof found === "object" && found.token === holder.token) removeIfThere(file);
}

function readHolder(file: string): LockHolder | "gone" | "being-written" {
  try {
    const value: unknown = JSON.parse(fs.readFileSync(file, "utf8"));
    if (isHolder(value)) return value;
  } catch (error) {
    if (systemErrorCode(error) === "ENOENT") return "gone";
    if (!(error instanceof SyntaxError)) throw error;
  }
  const age = Date.now() - (fs.statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0);
  if (age < writingMilliseconds) return "being-written";
  return { pid: 0, host: os.hostname(), since: "", token: "" };
}

function isHolder(value: unknown): value is LockHolder {
  if (typeof value !== "object" || value === null) return false;
  const { pid, host, since, token } = value as Partial<Record<keyof LockHolder, unknown>>;
  return (
    typeof pid === "number" &&
    typeof host === "string" &&
    typeof since === "string" &&
    typeof token === "string"
  );
}

function isAlive(holder: LockHolder): boolean {
  if (holder.host !== os.hostname()) return true;
  if (!processIsAlive(holder.pid)) return false;
  const start = processStart(holder.pid);
  return start === undefined || holder.processStart === undefined || start === holder.processStart;
}

/** Whether a process with this number runs on this computer. */
export function processIsAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Another user's process may not be signalled, but it is there.
    return systemErrorCode(error) === "EPERM";
  }
}

// Field 22 of /proc/<pid>/stat counts from the start of the computer, so the start is named too. The second field is
// the name of the program in brackets and may itself hold blanks and brackets.
function processStart(pid: number): string | undefined {
  if (process.platform !== "linux") return undefined;
  try {
    const boot = fs.readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
    const stat = fs.readFileSync(`/proc/${pid}/stat`, "utf8");
    const afterName = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    return `${boot}:${afterName[19] ?? ""}`;
  } catch {
    return undefined;
  }
}

function describeThisProcess(): LockHolder {
  return {
    pid: process.pid,
    host: os.hostname(),
    since: new Date().toISOString(),
    token: randomUUID(),
    processStart: processStart(process.pid),
  };
}

function inUse(file: string, holder: LockHolder | "being-written"): SillbookError {
  if (holder === "being-written") {
    return new SillbookError("folder-in-use", "Another program is just taking hold of this data folder.", {
      file,
    });
  }
  const { pid, host, since } = holder;
  const elsewhere =
    host === os.hostname()
      ? `process ${pid}`
      : `process ${pid} on the computer "${host}"; if that computer no longer uses it, remove the file ${file}`;
  return new SillbookError(
    "folder-in-use",
    `Another program holds this data folder since ${since}: ${elsewhere}.`,
    { pid, host, since, file },
  );
}
