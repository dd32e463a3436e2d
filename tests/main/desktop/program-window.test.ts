import { expect, test } from "vitest";
import { bringToFront, windowOptions } from "../../../main/desktop/program-window.ts";

test("the page is sandboxed, without Node, apart from its preload, and fetches no dictionary", () => {
  const { webPreferences, show } = windowOptions("/preload.cjs", {
    width: 1280,
    height: 800,
    maximized: false,
  });
  expect(webPreferences).toEqual({
    preload: "/preload.cjs",
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webviewTag: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    navigateOnDragDrop: false,
    spellcheck: false,
  });
  expect(show).toBe(false);
});

test.each([
  [true, ["restore", "show", "focus"]],
  [false, ["show", "focus"]],
])("a window that is minimized: %s is brought to the front", (isMinimized, expected) => {
  const done: string[] = [];
  bringToFront({
    isMinimized: () => isMinimized,
    restore: () => done.push("restore"),
    show: () => done.push("show"),
    focus: () => done.push("focus"),
  });
  expect(done).toEqual(expected);
});
