import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { isInstalled, nodeIsTooOld } from "../../../main/command-line/ensure-installed.mjs";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "sillbook-root-"));
  writeFileSync(join(root, "package-lock.json"), "{}");
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

test("an install that is not remembered, or of another lock file, is no install", () => {
  expect(isInstalled(root)).toBe(false);
  mkdirSync(join(root, "node_modules"));
  expect(isInstalled(root)).toBe(false);
  writeFileSync(join(root, "node_modules", ".sillbook-install"), "of another lock file");
  expect(isInstalled(root)).toBe(false);
});

test.each(["18.20.4", "20.19.9", "16.0.0"])("Node %s is too old", (version) => {
  expect(nodeIsTooOld(version)).toMatch(version);
});

test.each(["20.20.0", "20.21.1", "22.0.0", "25.1.0"])("Node %s will do", (version) => {
  expect(nodeIsTooOld(version)).toBeUndefined();
});
