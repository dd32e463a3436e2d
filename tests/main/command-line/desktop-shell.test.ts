import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { desktopObstacle, runDesktop, windowFailure } from "../../../main/command-line/desktop-shell.mjs";

const display = { DISPLAY: ":0" };

describe("what stands in the way of a window", () => {
  test.each([
    ["linux", {}, 1000, /no display/],
    ["linux", display, 0, /root.*sandbox/],
    ["linux", {}, 0, /no display/],
  ] as const)("%s %j user %i", (platform, env, userId, reason) => {
    expect(desktopObstacle({ platform, env, userId })).toMatch(reason);
  });

  test.each([
    ["linux", display, 1000],
    ["linux", { WAYLAND_DISPLAY: "wayland-0" }, 1000],
    ["win32", {}, undefined],
    ["darwin", {}, 501],
  ] as const)("nothing on %s %j user %s", (platform, env, userId) => {
    expect(desktopObstacle({ platform, env, userId })).toBeUndefined();
  });
});

describe("why a window did not come up", () => {
  test.each([
    [
      "electron: error while loading shared libraries: libgtk-3.so.0: cannot open shared object file",
      127,
      /libgtk-3.so.0 is missing/,
    ],
    ["FATAL: No usable sandbox! If you are running on Ubuntu 23.10+", 133, /no usable sandbox/],
    ["The SUID sandbox helper binary was found, but is not configured correctly.", 133, /no usable sandbox/],
    ["ERROR:ozone_platform_x11.cc Missing X server or $DISPLAY", 1, /display could not be opened/],
    ["", 3, /exit code 3/],
    ["", null, /in time/],
  ])("%j, exit code %s", (printed, code, reason) => {
    expect(windowFailure(printed, code)).toMatch(reason);
  });
});

describe("starting the window", () => {
  let folder: string;
  let binary: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "sillbook-window-"));
    binary = join(folder, "electron");
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  function fakeBinary(body: string): void {
    writeFileSync(binary, `#!${process.execPath}\n${body}`);
    chmodSync(binary, 0o755);
  }

  test("a window that was shown ends with the exit code of the program", async () => {
    fakeBinary(`console.log("sillbook: window-shown"); process.exitCode = 4;`);
    expect(await runDesktop(binary, [])).toEqual({ exitCode: 4 });
  });

  test("a program that ended for a reason any shell would meet is not tried again in another", async () => {
    fakeBinary(`console.log("sillbook: answered"); process.exitCode = 1;`);
    expect(await runDesktop(binary, [])).toEqual({ exitCode: 1 });
  });

  test("an early end gives the reason", async () => {
    fakeBinary(
      `console.error("error while loading shared libraries: libnss3.so: no such file"); process.exit(127);`,
    );
    expect(await runDesktop(binary, [])).toEqual({ reason: "the system library libnss3.so is missing" });
  });

  test("a binary that cannot be started gives a reason", async () => {
    expect(await runDesktop(join(folder, "missing"), [])).toEqual({
      reason: expect.stringMatching(/did not come up/),
    });
  });

  test("a window that never comes is given up", async () => {
    fakeBinary("setInterval(() => {}, 1000);");
    expect(await runDesktop(binary, [], { limitMilliseconds: 400 })).toEqual({
      reason: "the window did not come up in time",
    });
  });

  test("the sandbox is never switched off, and the binary never runs as plain Node", async () => {
    const seen = join(folder, "seen.json");
    fakeBinary(`
      const { ELECTRON_RUN_AS_NODE: asNode = null } = process.env;
      require("node:fs").writeFileSync(${JSON.stringify(seen)}, JSON.stringify({ args: process.argv.slice(2), asNode }));
      console.log("sillbook: window-shown");`);
    process.env.ELECTRON_RUN_AS_NODE = "1";
    try {
      await runDesktop(binary, ["--data", "x y"], { root: "/the/program" });
    } finally {
      delete process.env.ELECTRON_RUN_AS_NODE;
    }
    expect(JSON.parse(readFileSync(seen, "utf8"))).toEqual({
      args: ["/the/program", "--data", "x y"],
      asNode: null,
    });
  });
});
