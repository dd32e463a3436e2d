import { spawnSync } from "node:child_process";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { KnownEvents } from "./stand-in/events.mjs";
import { refuseOtherThanJson } from "./stand-in/plain-json.mjs";
import { refuseTheRest, refuseUnknown } from "./stand-in/refuse.mjs";

describe("the stand-in for Electron refuses", () => {
  test("a member it does not implement, read or set", () => {
    const shell = refuseTheRest("shell", { openExternal: () => "opened" });
    expect(shell.openExternal()).toBe("opened");
    expect(() => Reflect.get(shell, "beep")).toThrow("does not implement shell.beep");
    expect(() => Reflect.set(shell, "openExternal", null)).toThrow("shell.openExternal");
  });

  test("an event it does not know", () => {
    const events = new KnownEvents("app", ["will-quit"]);
    events.on("will-quit", () => {});
    expect(() => events.on("gpu-info-update", () => {})).toThrow("gpu-info-update");
    expect(() => events.once("ready", () => {})).toThrow("ready");
  });

  test("an option it does not know", () => {
    expect(() => refuseUnknown("the window option", ["width"], ["width", "vibrancy"])).toThrow("vibrancy");
  });

  test.each([
    ["app", 0, ""],
    ["clipboard", 1, "does not provide an export named 'clipboard'"],
  ])("an import it does not export: %s", (name, exitCode, words) => {
    const registration = new URL("./register-stand-in.mjs", import.meta.url).href;
    const program = `import { ${name} } from "electron"; if (!${name}) throw new Error("empty");`;
    const args = ["--import", registration, "--input-type=module", "--eval", program];
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: "utf8" });
    expect(status).toBe(exitCode);
    expect(stderr).toContain(words);
  });
});

describe("values between page and program", () => {
  test("whatever JSON carries goes through", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        refuseOtherThanJson(value);
      }),
    );
    expect(() => refuseOtherThanJson({ as: undefined })).not.toThrow();
  });

  class Callout {
    id = 1;
  }
  test.each([
    ["a map", new Map()],
    ["a set", new Set()],
    ["a date", new Date(0)],
    ["bytes", new Uint8Array(1)],
    ["a buffer", new ArrayBuffer(1)],
    ["not a number", Number.NaN],
    ["infinity", Number.POSITIVE_INFINITY],
    ["a big integer", 1n],
    ["undefined", undefined],
    ["a function", () => {}],
    ["a symbol", Symbol("x")],
    ["an error", new Error("x")],
    ["an object of a class", new Callout()],
  ])("%s is refused, however deep it lies", (_name, value) => {
    expect(() => refuseOtherThanJson(value)).toThrow(/Not JSON/);
    expect(() => refuseOtherThanJson([value])).toThrow("value[0]");
    if (value !== undefined) expect(() => refuseOtherThanJson({ a: [{ b: value }] })).toThrow("value.a[0].b");
  });
});
