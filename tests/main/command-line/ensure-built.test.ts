import { mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { isBuilt, sourceHash } from "../../../main/command-line/ensure-built.mjs";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "sillbook-root-"));
  mkdirSync(join(root, "main", "data"), { recursive: true });
  writeFileSync(join(root, "main", "data", "store.ts"), "one");
  writeFileSync(join(root, "package-lock.json"), "{}");
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

test("a build is of the sources it was made of", () => {
  expect(isBuilt(root)).toBe(false);
  mkdirSync(join(root, "out"));
  writeFileSync(join(root, "out", ".sillbook-build"), sourceHash(root));
  expect(isBuilt(root)).toBe(true);
  utimesSync(join(root, "main", "data", "store.ts"), 1, 1);
  expect(isBuilt(root)).toBe(true);
  writeFileSync(join(root, "main", "data", "store.ts"), "two");
  expect(isBuilt(root)).toBe(false);
});

test("a source that is renamed, added, or moves bytes to its neighbour is a change", () => {
  const before = sourceHash(root);
  renameSync(join(root, "main", "data", "store.ts"), join(root, "main", "data", "storage.ts"));
  const renamed = sourceHash(root);
  writeFileSync(join(root, "main", "data", "z.ts"), "");
  const added = sourceHash(root);
  writeFileSync(join(root, "main", "data", "storage.ts"), "on");
  writeFileSync(join(root, "main", "data", "z.ts"), "e");
  const moved = sourceHash(root);
  expect(new Set([before, renamed, added, moved]).size).toBe(4);
});
