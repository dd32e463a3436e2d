import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { findElectron, obtainElectron } from "../../../main/command-line/electron-binary.mjs";

const day = 24 * 60 * 60 * 1000;
let root: string;
let electron: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "sillbook-root-"));
  electron = join(root, "node_modules", "electron");
  mkdirSync(electron, { recursive: true });
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

/** An install script that counts its runs, as the real one would be started. */
function installScript(body: string): void {
  const count = JSON.stringify(join(root, "runs"));
  writeFileSync(join(electron, "install.js"), `require("node:fs").appendFileSync(${count}, "x");\n${body}`);
}

const runs = (): number =>
  existsSync(join(root, "runs")) ? readFileSync(join(root, "runs"), "utf8").length : 0;

function placeBinary(folder: string): string {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(electron, "path.txt"), "electron");
  writeFileSync(join(folder, "electron"), "");
  return join(folder, "electron");
}

describe("the Electron binary", () => {
  test("is found where it is installed", () => {
    expect(findElectron(root, {})).toBeUndefined();
    const binary = placeBinary(join(electron, "dist"));
    expect(findElectron(root, {})).toBe(binary);
  });

  test("is found in the folder that the environment names", () => {
    const other = join(root, "other");
    const binary = placeBinary(other);
    expect(findElectron(root, { ELECTRON_OVERRIDE_DIST_PATH: other })).toBe(binary);
    expect(findElectron(root, {})).toBeUndefined();
  });

  test("is fetched when it is missing", async () => {
    installScript(`
      const fs = require("node:fs"), path = require("node:path");
      fs.mkdirSync(path.join(__dirname, "dist"));
      fs.writeFileSync(path.join(__dirname, "path.txt"), "electron");
      fs.writeFileSync(path.join(__dirname, "dist", "electron"), "");`);
    expect(await obtainElectron({ root })).toEqual({ binary: join(electron, "dist", "electron") });
  });

  test("a failed attempt is remembered for a day, then repeated", async () => {
    installScript("process.exit(1);");
    const failedAt = Date.parse("2026-03-02T08:00:00Z");
    const attempt = (now: number) => obtainElectron({ root, now: () => now });
    expect(await attempt(failedAt)).toEqual({ reason: expect.stringMatching(/download failed/) });
    expect(await attempt(failedAt + day - 1)).toEqual({
      reason: expect.stringMatching(/less than a day ago/),
    });
    expect(runs()).toBe(1);
    await attempt(failedAt + day);
    expect(runs()).toBe(2);
  });

  test("a clock that was set back does not keep the failure for longer", async () => {
    installScript("process.exit(1);");
    await obtainElectron({ root, now: () => Date.parse("2030-01-01T00:00:00Z") });
    await obtainElectron({ root, now: () => Date.parse("2026-01-01T00:00:00Z") });
    expect(runs()).toBe(2);
  });

  test("an attempt that does not end is ended", async () => {
    installScript("setInterval(() => {}, 1000);");
    expect(await obtainElectron({ root, limitMilliseconds: 700 })).toEqual({
      reason: expect.stringMatching(/not finished after 0.7 s/),
    });
  });
});
