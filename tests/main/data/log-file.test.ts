import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { openLogFile } from "../../../main/data/log-file.ts";
import { temporaryFolder } from "./sqlite-disk/temporary-folder.ts";

function lines(file: string): Record<string, unknown>[] {
  return fs
    .readFileSync(file, "utf8")
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Record<string, unknown>);
}

test("each entry is one line of JSON with time, level, message and facts", () => {
  const file = path.join(temporaryFolder(), "sillbook.log");
  const log = openLogFile(file);
  log.write("information", "started", { port: 8123 });
  log.write("error", "two\nlines", { error: new TypeError("no such lift", { cause: new Error("lost") }) });
  const [first, second] = lines(file);
  expect(first).toMatchObject({ level: "information", message: "started", facts: { port: 8123 } });
  expect(Number.isNaN(Date.parse(String(first?.at)))).toBe(false);
  expect(second).toMatchObject({
    message: "two\nlines",
    facts: { error: { name: "TypeError", message: "no such lift", cause: { message: "lost" } } },
  });
});

test("files stay within their size and only the newest are kept, in order", () => {
  const folder = temporaryFolder();
  const file = path.join(folder, "sillbook.log");
  const log = openLogFile(file, { maximumBytes: 1000, files: 3 });
  for (let number = 0; number < 100; number += 1) log.write("information", `entry ${number}`);
  expect(fs.readdirSync(folder).sort()).toEqual(["sillbook.log", "sillbook.log.1", "sillbook.log.2"]);
  const kept = [`${file}.2`, `${file}.1`, file].flatMap((name) => {
    expect(fs.statSync(name).size).toBeLessThanOrEqual(1000);
    return lines(name).map((line) => Number(String(line.message).slice("entry ".length)));
  });
  expect(kept.at(-1)).toBe(99);
  expect(kept).toEqual(kept.map((_, index) => (kept[0] ?? 0) + index));
});

test("a single file is begun anew", () => {
  const file = path.join(temporaryFolder(), "sillbook.log");
  const log = openLogFile(file, { maximumBytes: 300, files: 1 });
  for (let number = 0; number < 20; number += 1) log.write("information", `entry ${number}`);
  expect(fs.statSync(file).size).toBeLessThanOrEqual(300);
  expect(lines(file).at(-1)).toMatchObject({ message: "entry 19" });
});

test("facts that JSON cannot hold are told as well as possible", () => {
  const file = path.join(temporaryFolder(), "sillbook.log");
  const log = openLogFile(file);
  const self: Record<string, unknown> = { name: "ring", twice: [1n] };
  self.self = self;
  const failure = new Error("loops");
  failure.cause = failure;
  const shared = { same: true };
  log.write("warning", "odd facts", { self, first: shared, second: shared });
  log.write("warning", "odd error", { failure });
  const [first, second] = lines(file);
  expect(first?.facts).toEqual({
    self: { name: "ring", twice: ["1"], self: "(refers to itself)" },
    first: { same: true },
    second: { same: true },
  });
  expect(second).toMatchObject({ facts: { failure: { message: "loops", cause: "(refers to itself)" } } });
});

test("an entry larger than a file keeps the start of its message", () => {
  const file = path.join(temporaryFolder(), "sillbook.log");
  openLogFile(file, { maximumBytes: 2000 }).write("warning", "long".repeat(5000), { more: "facts" });
  expect(lines(file)).toMatchObject([{ message: "long".repeat(250), facts: { shortened: true } }]);
});

test("what cannot be written is counted, and nothing is thrown", () => {
  const folder = temporaryFolder();
  const file = path.join(folder, "none", "sillbook.log");
  const log = openLogFile(file);
  log.write("error", "first");
  log.write("error", "second", {
    get broken() {
      throw new Error("cannot be read");
    },
  });
  fs.mkdirSync(path.dirname(file));
  log.write("error", "third");
  log.write("error", "fourth");
  expect(lines(file)).toMatchObject([{ message: "third", lost: 2 }, { message: "fourth" }]);
  expect(lines(file)[1]).not.toHaveProperty("lost");
});
