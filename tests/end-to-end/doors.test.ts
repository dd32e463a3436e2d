import { type ChildProcess, spawn } from "node:child_process";
import { chmodSync, existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { projectRoot } from "../../main/command-line/project-root.mjs";
import { programKinds } from "./support/program-kinds.ts";
import { ProgramProcess } from "./support/program-process.ts";
import { askOne, runAsk } from "./support/run-ask.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// One callout of work through all doors: what one door writes, every other one reads.

const company = { companyName: "Gull Lifts", personName: "Ada Finch", role: "office" };

let folder: string;
const started: ProgramProcess[] = [];
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "sillbook-doors-"));
});
afterEach(async () => {
  for (const program of started.splice(0)) await program.stop();
  await rm(folder, { recursive: true, force: true });
});

function follow(child: ChildProcess): ProgramProcess {
  const program = new ProgramProcess(child);
  started.push(program);
  return program;
}

/** The start command as a person types it, on a machine without a display. */
function npmStart(args: readonly string[], env: NodeJS.ProcessEnv = {}): ProgramProcess {
  const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, BROWSER: _browser, ...quiet } = process.env;
  const script = join(projectRoot, "main", "command-line", "start.mjs");
  return follow(
    spawn(process.execPath, [script, ...args], {
      env: { ...quiet, ...env },
      stdio: ["ignore", "pipe", "pipe"],
    }),
  );
}

async function openingAddress(program: ProgramProcess): Promise<string> {
  return (await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+\/open\?token=[0-9a-f]{64})\s/))[1] ?? "";
}

/** Asks from inside the page, as the screens do, whichever shell it runs in. */
function askInPage(program: Program, operation: string, input: unknown = {}): Promise<unknown> {
  return program.page.evaluate(
    async (request) => {
      const shell = (globalThis as { sillbook?: { request(asked: unknown): Promise<unknown> } }).sillbook;
      if (shell) return shell.request(request);
      const headers = { "content-type": "application/json" };
      const answer = await fetch("/request", { method: "POST", headers, body: JSON.stringify(request) });
      return answer.json();
    },
    { operation, input },
  );
}

describe.each(programKinds)("%s and the command line", (kind) => {
  test("read what the other wrote, while the program runs and when it is closed", async () => {
    const program = await startProgram(kind, { folder });
    expect(await askOne(folder, "company.start", company)).toMatchObject({ code: 0, envelope: { ok: true } });
    const added = await askOne(folder, "site.add", { name: "Kittiwake House" }, "Ada Finch");
    expect(added).toMatchObject({ code: 0, envelope: { ok: true } });
    const sites = { ok: true, value: { sites: [{ name: "Kittiwake House" }] } };
    expect(await askInPage(program, "site.list")).toMatchObject(sites);
    await program.close();
    expect((await askOne(folder, "site.list")).envelope).toMatchObject(sites);
  });

  test("give the same envelope for the same mistake", async () => {
    const program = await startProgram(kind, { folder });
    for (const [operation, input] of [
      ["site.find", { id: 7 }],
      ["no.such.operation", {}],
      ["site.add", { name: "Nobody writes" }],
    ] as const) {
      const { code, envelope } = await askOne(folder, operation, input);
      expect([code, envelope.ok]).toEqual([1, false]);
      expect(await askInPage(program, operation, input)).toEqual(envelope);
    }
    await program.close();
  });

  test("a change that came through the command line is told to the page", async () => {
    const program = await startProgram(kind, { folder });
    expect((await askOne(folder, "company.start", company)).code).toBe(0);
    await program.page.evaluate(async () => {
      const page = globalThis as unknown as {
        sillbook?: { onEvent(listener: (event: unknown) => void): void };
        heard: unknown[];
      };
      page.heard = [];
      if (page.sillbook) {
        page.sillbook.onEvent((event) => page.heard.push(event));
        return;
      }
      const source = new EventSource("/events");
      source.onmessage = (message) => page.heard.push(JSON.parse(message.data));
      await new Promise((resolve) => source.addEventListener("open", resolve));
    });
    const { envelope } = await askOne(folder, "site.add", { name: "Old Ropery Lofts" }, "Ada Finch");
    const id = envelope.ok ? (envelope.value as { id: string }).id : "";
    await program.page.waitForFunction(
      (wanted) => JSON.stringify((globalThis as unknown as { heard: unknown[] }).heard).includes(wanted),
      id,
    );
    await program.close();
  });

  // The desktop window hears from its first moment on; a browser's event stream takes a round trip to open.
  test.runIf(kind === "local-web")(
    "what was saved before the page could hear of it is seen all the same",
    async () => {
      const program = await startProgram(kind, { folder });
      const { page } = program;
      let open = (): void => {};
      const opened = new Promise<void>((resolve) => {
        open = resolve;
      });
      await page.route("**/events", async (route) => {
        await opened;
        await route.continue();
      });
      await page.reload();
      await page.getByRole("textbox", { name: /company/i }).waitFor();
      expect((await askOne(folder, "company.start", company)).code).toBe(0);
      expect(await page.getByRole("navigation", { name: "Screens" }).count()).toBe(0);
      open();
      await page.getByRole("navigation", { name: "Screens" }).waitFor();
      await program.close();
    },
  );

  test("the file that leads to the running program is for this user's eyes only, and goes with it", async () => {
    const program = await startProgram(kind, { folder });
    const file = join(folder, "running.json");
    expect(statSync(file).mode & 0o777).toBe(0o600);
    await program.close();
    expect(existsSync(file)).toBe(false);
  });

  test("a folder held by a program that cannot be reached is in use, and its process is named", async () => {
    const program = await startProgram(kind, { folder });
    const { pid } = JSON.parse(readFileSync(join(folder, "running.json"), "utf8")) as { pid: number };
    await rm(join(folder, "running.json"));
    const { code, envelope } = await askOne(folder, "site.list");
    expect(code).toBe(1);
    expect(envelope).toMatchObject({ ok: false, error: { code: "folder-in-use", details: { pid } } });
    await program.close();
  });
});

describe("ask", () => {
  test("takes over a folder whose program was killed", async () => {
    const first = npmStart(["--data", folder, "--shell", "web", "--port", "0", "--no-open"]);
    await openingAddress(first);
    const { pid } = JSON.parse(readFileSync(join(folder, "running.json"), "utf8")) as { pid: number };
    process.kill(pid, "SIGKILL");
    await first.ended();
    expect(existsSync(join(folder, "running.json"))).toBe(true);
    expect(await askOne(folder, "device.state")).toMatchObject({ code: 0, envelope: { ok: true } });
  });

  test("--lines answers each line in one process, in order, and later lines see earlier ones", async () => {
    const lines = [
      { operation: "company.start", input: company },
      { operation: "site.add", input: { name: "Saltpan Court" } },
      { operation: "site.add", input: { name: 5 } },
      { operation: "site.list" },
    ].map((line) => JSON.stringify(line));
    lines.splice(2, 0, "{ not JSON");
    const { code, stdout } = await runAsk(
      ["--data", folder, "--as", "Ada Finch", "--lines"],
      lines.join("\n"),
    );
    const answers = stdout
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(code).toBe(1);
    expect(answers).toMatchObject([
      { ok: true },
      { ok: true },
      { ok: false, error: { code: "input-invalid", details: { line: 3 } } },
      { ok: false, error: { code: "input-invalid" } },
      { ok: true, value: { sites: [{ name: "Saltpan Court" }] } },
    ]);
  });

  test("--lines answers a line before the next one is written", async () => {
    const child = spawn(process.execPath, [
      join(projectRoot, "out", "main", "ask.js"),
      "--data",
      folder,
      "--lines",
    ]);
    const program = follow(child);
    child.stdin.write('{"operation":"device.state"}\n');
    await program.waitFor(/"dataFolder".*\n/);
    child.stdin.end('{"operation":"person.list"}\n');
    await program.waitFor(/"people".*\n/);
    expect(await program.ended()).toBe(0);
  });

  test("prints nothing but the list for operations, and needs no data folder for it", async () => {
    const { code, stdout, stderr } = await runAsk(["operations"]);
    expect([code, stderr]).toEqual([0, ""]);
    const list = JSON.parse(stdout) as { operation: string }[];
    expect(list.map((entry) => entry.operation)).toContain("callout.log");
  });

  test("reads its input from a file, and says what is wrong with one", async () => {
    const file = join(folder, "input.json");
    const data = join(folder, "data");
    writeFileSync(file, JSON.stringify(company));
    expect((await runAsk(["--data", data, "company.start", file])).code).toBe(0);
    writeFileSync(file, "{");
    const broken = await runAsk(["--data", data, "company.start", file]);
    expect([broken.code, JSON.parse(broken.stdout).error.code]).toEqual([1, "input-invalid"]);
    const missing = await runAsk(["--data", data, "company.start", join(folder, "missing.json")]);
    expect([missing.code, JSON.parse(missing.stdout).error.code]).toEqual([1, "input-invalid"]);
  });

  test("a mistyped data folder is said not to be there and is not made", async () => {
    const mistyped = join(folder, "dtaa");
    const { code, stdout } = await runAsk(["--data", mistyped, "site.list"]);
    expect(code).toBe(1);
    expect(JSON.parse(stdout).error).toMatchObject({ code: "not-found", details: { path: mistyped } });
    expect(existsSync(mistyped)).toBe(false);
  });

  test("a command that is not understood gets the usage and exit code 2, and opens nothing", async () => {
    const { code, stdout, stderr } = await runAsk(["--data", join(folder, "data"), "--wrong"]);
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/Usage: npm run --silent ask/);
    expect(existsSync(join(folder, "data"))).toBe(false);
  });
});

describe("npm start", () => {
  test("without a display says why in one line, starts the local web shell, and ends in order", async () => {
    const program = npmStart(["--data", folder, "--port", "0", "--no-open"]);
    const address = await openingAddress(program);
    const why = program.printed.split("\n").filter((line) => line.includes("No desktop window"));
    expect(why).toEqual([
      "No desktop window: there is no display here. Starting the local web shell instead.",
    ]);
    expect((await fetch(address, { redirect: "manual" })).status).toBe(303);
    expect(await program.stop()).toBe(0);
    expect(existsSync(join(folder, "running.json"))).toBe(false);
  });

  test.each(["the command", "everything in the terminal"])(
    "Ctrl-C that reaches %s ends it in order",
    async (who) => {
      const script = join(projectRoot, "main", "command-line", "start.mjs");
      const args = [script, "--data", folder, "--shell", "web", "--port", "0", "--no-open"];
      // A process group of its own, as a terminal gives each command.
      const child = spawn(process.execPath, args, { detached: true, stdio: ["ignore", "pipe", "pipe"] });
      const program = follow(child);
      await openingAddress(program);
      const { pid = 0 } = child;
      process.kill(who === "the command" ? pid : -pid, "SIGINT");
      expect(await program.ended()).toBe(0);
      expect(existsSync(join(folder, "running.json"))).toBe(false);
      expect(existsSync(join(folder, "sillbook.lock"))).toBe(false);
    },
  );

  test("a second start on the folder opens the running program with a fresh address, and ends", async () => {
    const first = npmStart(["--data", folder, "--shell", "web", "--port", "0", "--no-open"]);
    const firstAddress = await openingAddress(first);
    const second = npmStart(["--data", folder, "--shell", "web", "--no-open"]);
    const secondAddress = await openingAddress(second);
    expect(await second.ended()).toBe(0);
    expect(second.printed).toMatch(/already running/);
    expect(new URL(secondAddress).origin).toBe(new URL(firstAddress).origin);
    expect(secondAddress).not.toBe(firstAddress);
    for (const address of [secondAddress, firstAddress]) {
      expect((await fetch(address, { redirect: "manual" })).status).toBe(303);
    }
    expect(await first.stop()).toBe(0);
  });

  test("opens the default browser, unless told not to", async () => {
    const browser = join(folder, "browser");
    const opened = join(folder, "opened");
    writeFileSync(
      browser,
      `#!${process.execPath}\nrequire("node:fs").writeFileSync(${JSON.stringify(opened)}, process.argv[2]);`,
    );
    chmodSync(browser, 0o755);
    const data = join(folder, "data");
    const env = { BROWSER: browser };
    const silent = npmStart(["--data", data, "--shell", "web", "--port", "0", "--no-open"], env);
    await openingAddress(silent);
    await silent.stop();
    expect(existsSync(opened)).toBe(false);
    const program = npmStart(["--data", data, "--shell", "web", "--port", "0"], env);
    const address = await openingAddress(program);
    await expect.poll(() => (existsSync(opened) ? readFileSync(opened, "utf8") : "")).toBe(address);
    await program.stop();
  });

  test("a port that is taken is named", async () => {
    const first = npmStart(["--data", join(folder, "one"), "--shell", "web", "--port", "0", "--no-open"]);
    const { port } = new URL(await openingAddress(first));
    const second = npmStart(["--data", join(folder, "two"), "--shell", "web", "--port", port, "--no-open"]);
    expect(await second.ended()).toBe(1);
    expect(second.printed).toMatch(new RegExp(`^Port ${port} is taken`, "m"));
    expect(second.printed).not.toMatch(/^ +at /m);
    expect(existsSync(join(folder, "two", "running.json"))).toBe(false);
  });

  test("the demonstration company does not go into a folder that holds other data", async () => {
    expect((await askOne(folder, "company.start", company)).code).toBe(0);
    const program = npmStart(["--demo", "--data", folder, "--shell", "web", "--port", "0", "--no-open"]);
    expect(await program.ended()).toBe(1);
    expect(program.printed).toMatch(/needs a folder of its own/);
    expect((await askOne(folder, "device.state")).envelope).toMatchObject({
      value: { demonstration: false },
    });
  });
});
