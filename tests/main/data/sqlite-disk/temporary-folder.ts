import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { onTestFinished } from "vitest";

/** A folder for one test, removed after it. */
export function temporaryFolder(): string {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-test-"));
  onTestFinished(() => fs.rmSync(folder, { recursive: true, force: true }));
  return folder;
}
