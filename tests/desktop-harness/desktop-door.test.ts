import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import { askOne } from "../end-to-end/support/run-ask.ts";
import { forkHarness, type HarnessShell, startHarness } from "../end-to-end/support/start-harness.ts";

// The built desktop door, run by the stand-in for Electron with a page of a real Chromium.

interface Record {
  readonly sandboxEnabled: boolean;
  readonly privileges: unknown;
  readonly windowOptions: readonly { readonly webPreferences: unknown; readonly show: boolean }[];
  readonly openedAddresses: readonly string[];
  readonly printed: readonly unknown[];
  readonly refusedNavigations: readonly string[];
  readonly refusedWindows: readonly string[];
  readonly shownCount: number;
  readonly focusedCount: number;
}

type Sillbook = {
  request(request: OperationRequest): Promise<Envelope>;
  openExternal(address: unknown): Promise<Envelope>;
  print(): Promise<Envelope>;
  onEvent(listener: (event: unknown) => void): () => void;
};
declare const window: { sillbook: Sillbook; open(address: string): unknown; heard: unknown[] };

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "sillbook-door-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe("the running window", () => {
  let shell: HarnessShell;
  let dataFolder: string;
  beforeAll(async () => {
    dataFolder = await mkdtemp(join(tmpdir(), "sillbook-door-"));
    shell = await startHarness({ folder: dataFolder });
  });
  afterAll(async () => {
    const exitCode = await shell.stop();
    await rm(dataFolder, { recursive: true, force: true });
    expect(exitCode).toBe(0);
  });
  const record = () => shell.control<Record>("record");

  test("is sandboxed, and its scheme is registered as secure", async () => {
    const { sandboxEnabled, privileges, windowOptions } = await record();
    expect(sandboxEnabled).toBe(true);
    expect(privileges).toMatchObject([{ scheme: "app", privileges: { standard: true, secure: true } }]);
    expect(windowOptions).toHaveLength(1);
    expect(windowOptions[0]).toMatchObject({
      show: false,
      webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, webviewTag: false },
    });
  });

  test("runs the page in a secure context, with four named functions and nothing of Electron or Node", async () => {
    const seen = await shell.page.evaluate(() => ({
      secure: isSecureContext,
      names: Object.keys(window.sillbook).sort(),
      kinds: [...new Set(Object.values(window.sillbook).map((member) => typeof member))],
      node: ["require", "process", "module", "Buffer", "ipcRenderer"].filter((name) => name in globalThis),
    }));
    expect(seen).toEqual({
      secure: true,
      names: ["onEvent", "openExternal", "print", "request"],
      kinds: ["function"],
      node: [],
    });
  });

  test("answers an operation", async () => {
    const envelope = await shell.page.evaluate(() =>
      window.sillbook.request({ operation: "device.state", input: {} }),
    );
    expect(envelope).toMatchObject({ ok: true, value: { dataFolder: dataFolder } });
  });

  test("answers what is no request with an envelope", async () => {
    const envelope = await shell.page.evaluate(() => window.sillbook.request(["x"] as never));
    expect(envelope).toMatchObject({ ok: false, error: { code: "input-invalid" } });
  });

  test("tells the page of a change that came through another door, until the page no longer listens", async () => {
    await shell.page.evaluate(() => {
      window.heard = [];
      const end = window.sillbook.onEvent((event) => {
        window.heard.push(event);
        end();
      });
    });
    const start = { companyName: "Gull Lifts", personName: "Ada Finch", role: "office" };
    expect(await askOne(dataFolder, "company.start", start)).toMatchObject({ code: 0 });
    await shell.page.waitForFunction(() => window.heard.length > 0);
    expect((await askOne(dataFolder, "site.add", { name: "Tern House" }, "Ada Finch")).code).toBe(0);
    await shell.page.evaluate(() => window.sillbook.request({ operation: "device.state", input: {} }));
    expect(await shell.page.evaluate(() => window.heard)).toMatchObject([{ kind: "changed" }]);
  });

  test.each(["media", "geolocation", "notifications", "clipboard-read", "hid"])(
    "denies %s",
    async (permission) => {
      expect(await shell.control("permission", permission)).toEqual({
        request: false,
        check: false,
        device: false,
      });
    },
  );

  test("cancels requests to the network", async () => {
    expect(await shell.control("cancelled", "https://example.org/")).toBe(true);
    expect(await shell.control("cancelled", "app://bundle/")).toBe(false);
  });

  test("stays on its own pages and opens no window", async () => {
    const before = shell.page.url();
    await shell.page.evaluate(() => {
      globalThis.location.assign("https://example.org/elsewhere");
    });
    await expect
      .poll(async () => (await record()).refusedNavigations)
      .toContain("https://example.org/elsewhere");
    await shell.page.evaluate(() => void window.open("https://example.org/window"));
    await shell.page.evaluate(() => void window.open("about:blank"));
    const refused = expect.poll(async () => (await record()).refusedWindows);
    await refused.toEqual(["https://example.org/window", "about:blank"]);
    expect(shell.page.url()).toBe(before);
  });

  test("opens web pages and mail outside, and nothing else", async () => {
    const open = (address: unknown) =>
      shell.page.evaluate((given) => window.sillbook.openExternal(given), address as string);
    expect((await open("https://example.org/")).ok).toBe(true);
    expect((await open("mailto:office@example.org")).ok).toBe(true);
    for (const address of ["file:///etc/passwd", "http://example.org", "javascript:1", "app://bundle/", 7]) {
      expect(await open(address)).toMatchObject({ ok: false, error: { code: "input-invalid" } });
    }
    expect((await record()).openedAddresses).toEqual(["https://example.org/", "mailto:office@example.org"]);
  });

  test("prints when the page asks, and from the menu", async () => {
    expect((await shell.page.evaluate(() => window.sillbook.print())).ok).toBe(true);
    await shell.control("click-menu", "&Print this page");
    expect((await record()).printed).toEqual([{ printBackground: true }, { printBackground: true }]);
  });

  test("comes to the front when the program is started again", async () => {
    const { shownCount, focusedCount } = await record();
    await shell.control("second-instance");
    expect(await record()).toMatchObject({ shownCount: shownCount + 1, focusedCount: focusedCount + 1 });
  });

  test("refuses values that JSON does not carry", async () => {
    const thrown = await shell.page.evaluate(async () => {
      const outcomes: string[] = [];
      for (const input of [new Map([[1, 2]]), new Date(0), new Uint8Array(2), 1n, Number.NaN]) {
        try {
          await window.sillbook.request({ operation: "device.state", input });
          outcomes.push("answered");
        } catch (error) {
          outcomes.push((error as Error).message);
        }
      }
      return outcomes;
    });
    expect(thrown).toHaveLength(5);
    for (const words of thrown) expect(words).toMatch(/Not JSON/);
  });

  test("complained about nothing but what these tests provoked", async () => {
    const { securityViolations, consoleErrors } = await shell.complaints();
    expect(securityViolations).toEqual([]);
    expect(consoleErrors).toEqual([]);
  });
});

describe("starting and ending", () => {
  test("the program refuses to run with its sandbox switched off", async () => {
    const userData = join(folder, "electron");
    const program = forkHarness({ folder: join(folder, "data"), extraArguments: ["--no-sandbox"] }, userData);
    expect(await program.ended()).toBe(1);
    expect(program.printed).toMatch(/does not run with its sandbox switched off/);
    expect(program.printed).toMatch(/^sillbook: answered$/m);
    expect(await readdir(folder)).not.toContain("data");
  });

  test("a second start on the folder brings the first window to the front and ends", async () => {
    const userData = join(folder, "electron");
    const data = join(folder, "data");
    const shell = await startHarness({ folder: data, userData });
    const second = forkHarness({ folder: data }, userData);
    expect(await second.ended()).toBe(0);
    expect(second.printed).toMatch(/already running/);
    await expect.poll(async () => (await shell.control<Record>("record")).focusedCount).toBe(1);
    expect(await shell.stop()).toBe(0);
  });

  test("a folder that another shell of this program holds is shown there, though Electron knows nothing of it", async () => {
    const data = join(folder, "data");
    const shell = await startHarness({ folder: data, userData: join(folder, "first") });
    const second = forkHarness({ folder: data }, join(folder, "second"));
    expect(await second.ended()).toBe(0);
    expect(second.printed).toMatch(/already running; its window was brought to the front/);
    expect((await shell.control<Record>("record")).focusedCount).toBe(1);
    expect(await shell.stop()).toBe(0);
  });

  test("closing the window ends the program in order: the data is closed, and the window's place is kept", async () => {
    const userData = join(folder, "electron");
    const data = join(folder, "data");
    const shell = await startHarness({ folder: data, userData });
    expect(await readdir(data)).toContain("running.json");
    await shell.page.close();
    expect(await shell.stop()).toBe(0);
    const left = await readdir(data);
    expect(left).not.toContain("running.json");
    expect(left).not.toContain("sillbook.lock");
    const [windowFolder] = await readdir(userData);
    const state = JSON.parse(await readFile(join(userData, windowFolder ?? "", "window-state.json"), "utf8"));
    expect(state).toMatchObject({ width: 1280, height: 800, maximized: false });
  });
});
