import { randomUUID } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { SillbookError } from "#shared-lib/errors.ts";
import { removeIfThere } from "./durable-files.ts";
import { openSqliteOnDisk } from "./open-sqlite-on-disk.ts";
import { createProof, readProof, writeProof } from "./self-test.sql.ts";
import { diskError } from "./sqlite-error.ts";
import type { SystemCallTrace } from "./system-call-trace.ts";
import { isSystemError, systemErrorCode } from "./system-errors.ts";

/**
 * Proves in the data folder, before any data is touched, that a commit reaches the real disk: a small database is written,
 * looked at without SQLite, and opened again. Without that proof the program must not run.
 *
 * Errors: `disk-failed` with details { step } naming what did not happen; `disk-full` and `disk-denied` as they are.
 */
export async function proveDisk(
  folder: string,
  open: typeof openSqliteOnDisk = openSqliteOnDisk,
): Promise<void> {
  const file = path.join(folder, "self-test.sqlite");
  try {
    removeProof(file);
    const mark = await writeMark(file, open);
    await readMark(file, mark, open);
  } catch (error) {
    throw isSystemError(error)
      ? diskError(systemErrorCode(error), { path: file, step: String(error) })
      : error;
  } finally {
    removeProof(file);
  }
}

async function writeMark(file: string, open: typeof openSqliteOnDisk): Promise<string> {
  const mark = randomUUID();
  const trace: SystemCallTrace = [];
  const written = await open(file, { trace });
  try {
    written.exec(createProof);
    trace.length = 0;
    const flushedBefore = written.syncCount;
    written.transaction(() => written.run(writeProof, { mark }));
    for (const flushed of [file, `${file}-journal`]) {
      requireThat(
        trace.some(
          (record) => record.call === "sync" && path.basename(record.path) === path.basename(flushed),
        ),
        `a commit did not flush ${path.basename(flushed)}`,
        file,
      );
    }
    requireThat(written.syncCount > flushedBefore, "a commit did not flush anything", file);
    requireThat(
      fs.existsSync(file) && fs.readFileSync(file).includes(mark),
      "what was committed is not in the file on the disk",
      file,
    );
  } finally {
    written.close();
  }
  return mark;
}

async function readMark(file: string, mark: string, open: typeof openSqliteOnDisk): Promise<void> {
  const again = await open(file, { whenMissing: "refuse" });
  try {
    const read = again.get<{ mark: string }>(readProof);
    requireThat(read?.mark === mark, "what was committed could not be read after opening again", file);
  } finally {
    again.close();
  }
}

function requireThat(holds: boolean, step: string, file: string): void {
  if (holds) return;
  throw new SillbookError("disk-failed", `The disk failed the start-up test: ${step}.`, { path: file, step });
}

function removeProof(file: string): void {
  for (const end of ["", "-journal", ".new", ".new-journal"]) removeIfThere(file + end);
}
