import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, onTestFinished, test, vi } from "vitest";
import {
  databaseHasVanished,
  dataFolderPaths,
  defaultDataFolder,
  openDataFolder,
  readRunning,
  removeRunning,
  writeRunning,
} from "../../../main/data/data-folder.ts";
import { temporaryFolder } from "./sqlite-disk/temporary-folder.ts";

/** The number of a process that has ended. */
function endedProcess(): number {
  return spawnSync(process.execPath, ["-e", ""]).pid;
}

function writeLock(folder: string, holder: object | string, name = "sillbook.lock"): void {
  fs.writeFileSync(path.join(folder, name), typeof holder === "string" ? holder : JSON.stringify(holder));
}

function readLock(folder: string): Record<string, unknown> {
  return JSON.parse(fs.readFileSync(path.join(folder, "sillbook.lock"), "utf8")) as Record<string, unknown>;
}

function deadHolder(facts: object = {}): object {
  return {
    pid: endedProcess(),
    host: os.hostname(),
    since: "2026-11-01T08:00:00.000Z",
    token: "old",
    ...facts,
  };
}

function open(folder: string): ReturnType<typeof openDataFolder> {
  const opened = openDataFolder(folder);
  onTestFinished(() => opened.close());
  return opened;
}

describe("a data folder", () => {
  test("is created for this user only, with its sub-folders", () => {
    const folder = path.join(temporaryFolder(), "deep", "Sillbook");
    const opened = open(folder);
    expect(fs.readdirSync(folder).sort()).toEqual(["attachments", "backups", "sillbook.lock"]);
    if (process.platform !== "win32") expect(fs.statSync(folder).mode & 0o777).toBe(0o700);
    expect(opened).toMatchObject({
      folder,
      database: path.join(folder, "sillbook.sqlite"),
      running: path.join(folder, "running.json"),
      log: path.join(folder, "sillbook.log"),
    });
  });

  test("cannot be opened where a file stands", () => {
    const file = path.join(temporaryFolder(), "file");
    fs.writeFileSync(file, "");
    expect(() => openDataFolder(file)).toThrow(expect.objectContaining({ code: "disk-failed" }));
    expect(() => openDataFolder(path.join(file, "below"))).toThrow(
      expect.objectContaining({ code: "disk-failed" }),
    );
  });

  test("without its database but with backups is noticed", () => {
    const opened = open(temporaryFolder());
    expect(databaseHasVanished(opened)).toBe(false);
    fs.writeFileSync(path.join(opened.backups, "sillbook-2026-11-24T10-42-00Z-daily.sqlite"), "");
    expect(databaseHasVanished(opened)).toBe(true);
    fs.writeFileSync(opened.database, "");
    expect(databaseHasVanished(opened)).toBe(false);
  });
});

describe("the lock of a data folder", () => {
  test("refuses a second opening and names the holder, until the first is closed", () => {
    const folder = temporaryFolder();
    const first = openDataFolder(folder);
    expect(() => openDataFolder(folder)).toThrow(
      expect.objectContaining({
        code: "folder-in-use",
        details: expect.objectContaining({
          pid: process.pid,
          host: os.hostname(),
          since: expect.any(String),
        }),
      }),
    );
    first.close();
    const second = openDataFolder(folder);
    second.close();
    expect(fs.readdirSync(folder).sort()).toEqual(["attachments", "backups"]);
  });

  test("of a dead process is taken over", () => {
    const folder = temporaryFolder();
    writeLock(folder, deadHolder());
    const opened = open(folder);
    expect(readLock(folder)).toMatchObject({ pid: process.pid });
    opened.close();
    expect(fs.readdirSync(folder).sort()).toEqual(["attachments", "backups"]);
  });

  test("whose takeover was itself interrupted is taken over", () => {
    const folder = temporaryFolder();
    writeLock(folder, deadHolder());
    writeLock(folder, deadHolder(), "sillbook.lock.takeover");
    writeLock(folder, deadHolder(), "sillbook.lock.takeover.takeover");
    open(folder);
    expect(readLock(folder)).toMatchObject({ pid: process.pid });
    expect(fs.readdirSync(folder).sort()).toEqual(["attachments", "backups", "sillbook.lock"]);
  });

  test("is not taken over while another process is taking it over", () => {
    const folder = temporaryFolder();
    writeLock(folder, deadHolder());
    writeLock(folder, { ...deadHolder(), pid: process.pid }, "sillbook.lock.takeover");
    expect(() => openDataFolder(folder)).toThrow(expect.objectContaining({ code: "folder-in-use" }));
    expect(readLock(folder)).toMatchObject({ token: "old" });
  });

  test("of another computer is refused, naming it and the file", () => {
    const folder = temporaryFolder();
    writeLock(folder, deadHolder({ host: "office-pc" }));
    expect(() => openDataFolder(folder)).toThrow(/office-pc.*sillbook\.lock/);
    expect(readLock(folder)).toMatchObject({ host: "office-pc" });
  });

  test.runIf(process.platform === "linux")("of a process whose number was used again is taken over", () => {
    const folder = temporaryFolder();
    writeLock(folder, { ...deadHolder(), pid: process.pid, processStart: "another boot:123" });
    open(folder);
    expect(readLock(folder)).toMatchObject({ pid: process.pid });
    expect(readLock(folder)).not.toMatchObject({ token: "old" });
  });

  test("that is being written is left alone; one that stayed unreadable is taken over", () => {
    const folder = temporaryFolder();
    writeLock(folder, '{"pid":');
    expect(() => openDataFolder(folder)).toThrow(expect.objectContaining({ code: "folder-in-use" }));
    const longAgo = new Date(Date.now() - 120_000);
    fs.utimesSync(path.join(folder, "sillbook.lock"), longAgo, longAgo);
    open(folder);
    expect(readLock(folder)).toMatchObject({ pid: process.pid });
  });

  test("is released only by its holder", () => {
    const folder = temporaryFolder();
    const opened = openDataFolder(folder);
    writeLock(folder, { ...deadHolder(), token: "of somebody else" });
    opened.close();
    expect(readLock(folder)).toMatchObject({ token: "of somebody else" });
  });
});

describe("a second opening in the middle of the takeover of a stale lock", () => {
  const calls = ["linkSync", "readFileSync", "renameSync", "rmSync", "openSync", "statSync"] as const;

  /** Opens the folder and, just before the chosen file system call of that, opens it a second time. */
  function openTwice(
    folder: string,
    before: number,
  ): { readonly won: number; readonly interrupted: boolean } {
    const attempts: (() => void)[] = [];
    let won = 0;
    const attempt = () => {
      try {
        const opened = openDataFolder(folder);
        attempts.push(() => opened.close());
        won += 1;
      } catch (error) {
        expect(error).toMatchObject({ code: "folder-in-use" });
      }
    };
    let count = 0;
    let interrupted = false;
    const spies = calls.map((name) => {
      const original = fs[name] as (...values: unknown[]) => unknown;
      return vi.spyOn(fs, name).mockImplementation(((...values: unknown[]) => {
        if (!interrupted && count++ === before) {
          interrupted = true;
          attempt();
        }
        return original(...values);
      }) as never);
    });
    try {
      attempt();
    } finally {
      for (const spy of spies) spy.mockRestore();
    }
    for (const close of attempts) close();
    return { won, interrupted };
  }

  test("at whatever moment leaves exactly one holder", () => {
    let moments = 0;
    for (let before = 0; ; before += 1) {
      const folder = temporaryFolder();
      fs.mkdirSync(path.join(folder, "backups"));
      fs.mkdirSync(path.join(folder, "attachments"));
      writeLock(folder, deadHolder());
      const { won, interrupted } = openTwice(folder, before);
      if (!interrupted) break;
      moments += 1;
      expect({ before, won }).toEqual({ before, won: 1 });
    }
    expect(moments).toBeGreaterThan(8);
  });
});

describe("many processes at a stale lock", () => {
  const here = import.meta.dirname;
  const racers = 8;
  const rounds = 6;
  let bundleFolder: string;

  beforeAll(async () => {
    bundleFolder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-race-"));
    await build({
      configFile: false,
      logLevel: "error",
      build: {
        ssr: path.join(here, "../../../main/data/data-folder.ts"),
        outDir: bundleFolder,
        rollupOptions: { output: { entryFileNames: "data-folder.mjs" } },
      },
    });
  });
  afterAll(() => fs.rmSync(bundleFolder, { recursive: true, force: true }));

  // Each racer waits for a byte, tries once, tells the result and holds on until its input ends.
  const racer = `
    import fs from "node:fs";
    const { openDataFolder } = await import(process.argv[1]);
    fs.writeSync(1, "waiting\\n");
    fs.readSync(0, Buffer.alloc(1));
    try { openDataFolder(process.argv[2]); fs.writeSync(1, "won\\n"); }
    catch (error) { fs.writeSync(1, error.code + "\\n"); }
    while (fs.readSync(0, Buffer.alloc(1)) > 0);
  `;

  async function said(child: ChildProcess, count: number): Promise<string[]> {
    let text = "";
    for await (const data of child.stdout?.iterator({ destroyOnReturn: false }) ?? []) {
      text += String(data);
      if (text.split("\n").length > count) break;
    }
    return text.trimEnd().split("\n");
  }

  test("exactly one wins", async () => {
    for (let round = 0; round < rounds; round += 1) {
      const folder = temporaryFolder();
      writeLock(folder, deadHolder());
      const module = path.join(bundleFolder, "data-folder.mjs");
      const children = Array.from({ length: racers }, () =>
        spawn(process.execPath, ["--input-type=module", "-e", racer, module, folder], {
          stdio: ["pipe", "pipe", "inherit"],
        }),
      );
      await Promise.all(children.map((child) => said(child, 1)));
      for (const child of children) child.stdin?.write("g");
      const results = (await Promise.all(children.map((child) => said(child, 1)))).flat();
      const ended = children.map((child) => once(child, "close"));
      for (const child of children) {
        child.stdout?.resume();
        child.stdin?.end();
      }
      await Promise.all(ended);
      expect(results.filter((result) => result === "won")).toHaveLength(1);
      expect(results.filter((result) => result === "folder-in-use")).toHaveLength(racers - 1);
    }
  });
});

describe("the file that says how to reach the running program", () => {
  const running = { address: "http://127.0.0.1:4711", key: "secret", pid: process.pid };

  test("is written whole, for this user only, read back and removed", () => {
    const folder = temporaryFolder();
    expect(readRunning(folder)).toBeUndefined();
    writeRunning(folder, running);
    expect(readRunning(folder)).toEqual(running);
    if (process.platform !== "win32") {
      expect(fs.statSync(dataFolderPaths(folder).running).mode & 0o777).toBe(0o600);
    }
    writeRunning(folder, { ...running, key: "another" });
    expect(readRunning(folder)).toMatchObject({ key: "another" });
    removeRunning(folder);
    removeRunning(folder);
    expect(fs.readdirSync(folder)).toEqual([]);
  });

  test("of a dead program, or one that makes no sense, does not count", () => {
    const folder = temporaryFolder();
    writeRunning(folder, { ...running, pid: endedProcess() });
    expect(readRunning(folder)).toBeUndefined();
    for (const content of ["", "{", "null", '{"address":1}']) {
      fs.writeFileSync(dataFolderPaths(folder).running, content);
      expect(readRunning(folder)).toBeUndefined();
    }
  });

  test("that cannot be written leaves no draft", () => {
    const folder = temporaryFolder();
    fs.mkdirSync(path.join(folder, "running.json"));
    expect(() => writeRunning(folder, running)).toThrow(expect.objectContaining({ code: "disk-failed" }));
    expect(fs.readdirSync(folder)).toEqual(["running.json"]);
  });
});

test("the usual place of the data follows the habits of each system", () => {
  expect(defaultDataFolder("win32", { APPDATA: "C:\\Users\\ann\\AppData\\Roaming" }, "C:\\Users\\ann")).toBe(
    "C:\\Users\\ann\\AppData\\Roaming\\Sillbook",
  );
  expect(defaultDataFolder("win32", {}, "C:\\Users\\ann")).toBe("C:\\Users\\ann\\AppData\\Roaming\\Sillbook");
  expect(defaultDataFolder("darwin", {}, "/Users/ann")).toBe(
    "/Users/ann/Library/Application Support/Sillbook",
  );
  expect(defaultDataFolder("linux", {}, "/home/ann")).toBe("/home/ann/.local/share/Sillbook");
  expect(defaultDataFolder("linux", { XDG_DATA_HOME: "/data" }, "/home/ann")).toBe("/data/Sillbook");
  expect(defaultDataFolder("linux", { XDG_DATA_HOME: "relative" }, "/home/ann")).toBe(
    "/home/ann/.local/share/Sillbook",
  );
});
