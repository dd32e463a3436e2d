import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { oneAtATime } from "../../../main/command-line/one-at-a-time.mjs";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "sillbook-lock-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("two pieces of work under one name never overlap, and both are done", async () => {
  const log: string[] = [];
  const work = async (name: string): Promise<string> => {
    log.push(`${name} begins`);
    await new Promise((resume) => setImmediate(resume));
    log.push(`${name} ends`);
    return name;
  };
  const run = (name: string) => oneAtATime("build", () => work(name), folder);
  expect(await Promise.all([run("one"), run("two")])).toEqual(["one", "two"]);
  expect(log).toEqual(["one begins", "one ends", "two begins", "two ends"]);
});

test("work that throws leaves the way free", async () => {
  const broken = oneAtATime("build", () => Promise.reject(new Error("broken")), folder);
  await expect(broken).rejects.toThrow("broken");
  expect(await oneAtATime("build", async () => "done", folder)).toBe("done");
});

test("the lock of a process that died is taken over", async () => {
  const { pid } = spawnSync(process.execPath, ["--version"]);
  writeFileSync(join(folder, "build.lock"), String(pid));
  expect(await oneAtATime("build", async () => "done", folder)).toBe("done");
  expect(existsSync(join(folder, "build.lock"))).toBe(false);
});
