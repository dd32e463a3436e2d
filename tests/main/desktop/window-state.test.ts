import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, expect, test } from "vitest";
import { readWindowState, smallestWindow, writeWindowState } from "../../../main/desktop/window-state.ts";

const display = { x: 0, y: 0, width: 1920, height: 1080 };
const firstStart = { width: 1280, height: 800, maximized: false };
let folder: string;
let file: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "sillbook-state-"));
  file = join(folder, "window-state.json");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("a window comes back where it was", () => {
  writeWindowState(file, { x: 40, y: 50, width: 1100, height: 750 }, true);
  expect(readWindowState(file, [display])).toEqual({
    x: 40,
    y: 50,
    width: 1100,
    height: 750,
    maximized: true,
  });
  expect(readdirSync(folder)).toEqual(["window-state.json"]);
});

test.each([
  "",
  "{",
  "null",
  "[]",
  '{"x":1}',
  '{"x":"1","y":2,"width":1200,"height":800}',
  '{"x":1e99,"y":2,"width":1,"height":1}',
])("a file that holds %j is a first start", (text) => {
  writeFileSync(file, text);
  expect(readWindowState(file, [display])).toEqual(firstStart);
});

test("no file is a first start, and a folder that cannot be written costs nothing else", () => {
  expect(readWindowState(file, [display])).toEqual(firstStart);
  writeWindowState(join(folder, "missing", "state.json"), { x: 0, y: 0, width: 1200, height: 800 }, false);
});

test("a window whose display is gone is centred in its size", () => {
  writeWindowState(file, { x: 2000, y: 100, width: 1200, height: 800 }, false);
  expect(readWindowState(file, [display])).toEqual({ width: 1200, height: 800, maximized: false });
  const second = { x: 1920, y: 0, width: 1920, height: 1080 };
  expect(readWindowState(file, [display, second])).toMatchObject({ x: 2000, y: 100 });
});

test("whatever is stored, the window is large enough and its title bar within reach", () => {
  const number = fc.integer({ min: -5_000, max: 5_000 });
  fc.assert(
    fc.property(number, number, number, number, (x, y, width, height) => {
      writeWindowState(file, { x, y, width, height }, false);
      const state = readWindowState(file, [display]);
      expect(state.width).toBeGreaterThanOrEqual(smallestWindow.width);
      expect(state.height).toBeGreaterThanOrEqual(smallestWindow.height);
      if (state.x === undefined || state.y === undefined) return;
      expect(state.y).toBeGreaterThanOrEqual(0);
      expect(state.y).toBeLessThan(1080);
      expect(state.x + state.width).toBeGreaterThan(0);
      expect(state.x).toBeLessThan(1920);
    }),
  );
});
