import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { findChromium } from "../../../main/command-line/find-chromium.mjs";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "sillbook-browser-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function place(name: string, mode = 0o755): string {
  const path = join(folder, name);
  writeFileSync(path, "");
  chmodSync(path, mode);
  return path;
}

test("a Chromium on the path is found, Chromium before Chrome", () => {
  const chrome = place("google-chrome");
  expect(findChromium({ PATH: folder }, "linux")).toBe(chrome);
  const chromium = place("chromium");
  expect(findChromium({ PATH: `/nowhere:${folder}` }, "linux")).toBe(chromium);
});

test("the one that is named wins over the path", () => {
  place("chromium");
  const own = place("my-browser");
  expect(findChromium({ PATH: folder, CHROMIUM: own }, "linux")).toBe(own);
  expect(findChromium({ PATH: folder, CHROMIUM: "/nowhere", SILLBOOK_CHROMIUM: own }, "linux")).toBe(own);
});

test("one that is named and missing is not silently replaced by another", () => {
  place("chromium");
  expect(findChromium({ PATH: folder, CHROMIUM: join(folder, "gone") }, "linux")).toBeUndefined();
});

test("nothing is found where there is nothing", () => {
  expect(findChromium({ PATH: folder }, "linux")).toBeUndefined();
  expect(findChromium({}, "win32")).toBeUndefined();
});
