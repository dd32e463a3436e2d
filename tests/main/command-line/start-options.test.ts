import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { projectRoot } from "../../../main/command-line/project-root.mjs";
import { doorArguments, readStartOptions } from "../../../main/command-line/start-options.mjs";

describe("the options of npm start", () => {
  test("nothing is asked for: everything is left to the program", () => {
    expect(readStartOptions([])).toEqual({
      options: { demo: false, data: undefined, shell: undefined, port: undefined, open: true },
    });
  });

  test("each option is read", () => {
    const args = ["--demo", "--data", "my folder", "--shell", "web", "--port", "8080", "--no-open"];
    expect(readStartOptions(args)).toEqual({
      options: { demo: true, data: "my folder", shell: "web", port: 8080, open: false },
    });
  });

  test.each([
    [["--prot", "80"], /--prot/],
    [["something"], /something/],
    [["--shell", "terminal"], /"desktop" or "web", not "terminal"/],
    [["--port", "eighty"], /from 0 to 65535, not "eighty"/],
    [["--port", "65536"], /65536/],
    [["--port", "-1"], /--port/],
    [["--data"], /--data/],
    [["--data", ""], /name of a folder/],
    [["--demo=yes"], /--demo/],
  ])("%j is refused with a reason", (args, reason) => {
    expect(readStartOptions(args)).toEqual({ problem: expect.stringMatching(reason) });
  });

  test("what both doors are given reads back to the same options", () => {
    const read = readStartOptions(["--demo", "--data", "a b", "--port", "0", "--no-open"]);
    if (!("options" in read)) throw new Error(read.problem);
    expect(readStartOptions(doorArguments(read.options))).toEqual(read);
  });

  test("the command itself answers wrong options with a usage text and exit code 2", () => {
    const command = join(projectRoot, "main", "command-line", "start.mjs");
    const { status, stderr, stdout } = spawnSync(process.execPath, [command, "--wrong"], {
      encoding: "utf8",
    });
    expect(status).toBe(2);
    expect(stderr).toMatch(/--wrong/);
    expect(stderr).toMatch(/Usage: npm start/);
    expect(stdout).toBe("");
  });
});
