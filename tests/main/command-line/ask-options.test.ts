import { resolve } from "node:path";
import { expect, test } from "vitest";
import { readAskCommand } from "../../../main/command-line/ask-options.ts";

const folder = resolve("books");

test.each([
  [["operations"], { kind: "list" }],
  [["--data", "books", "--lines"], { kind: "lines", folder, as: undefined }],
  [["--lines", "--data", "books", "--as", "Ada"], { kind: "lines", folder, as: "Ada" }],
  [
    ["--data", "books", "site.list"],
    { kind: "one", folder, as: undefined, operation: "site.list", input: undefined },
  ],
  [
    ["--data", "books", "--as", "Ada", "site.add", "-"],
    { kind: "one", folder, as: "Ada", operation: "site.add", input: "-" },
  ],
  [
    ["--data", "books", "site.add", "site.json"],
    { kind: "one", folder, as: undefined, operation: "site.add", input: "site.json" },
  ],
])("%j is understood", (args, command) => {
  expect(readAskCommand(args)).toEqual(command);
});

test.each([
  [[], /Which operation/],
  [["--data", ""], /name of a folder/],
  [["--lines", "site.list"], /standard input/],
  [["site.list", "a.json", "b.json"], /b\.json/],
  [["operations", "x"], /no input/],
  [["--dta", "x", "site.list"], /--dta/],
])("%j is refused with a reason", (args, reason) => {
  expect(readAskCommand(args)).toEqual({ problem: expect.stringMatching(reason) });
});

test("without a folder it is the usual one", () => {
  const command = readAskCommand(["site.list"]);
  expect(command).toMatchObject({ kind: "one", folder: expect.stringMatching(/Sillbook$/) });
});
