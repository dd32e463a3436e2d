import { createHash } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { anyEntity, type Envelope, type ProgramEvent } from "#shared-lib/contract/operation.ts";
import { DataSession, type SessionOptions } from "../../../main/data/data-session.ts";
import { checkFile, type FileCheck, type FileChecker } from "../../../main/data/file-check/check-file.ts";
import { openSqliteOnDisk } from "../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";

let folder = "";
let open: DataSession[] = [];

beforeEach(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-session-"));
  open = [];
});
afterEach(async () => {
  await Promise.all(open.map((session) => session.close()));
  fs.rmSync(folder, { recursive: true, force: true });
});

const database = (): string => path.join(folder, "sillbook.sqlite");

async function start(demonstration = false, options: Partial<SessionOptions> = {}): Promise<DataSession> {
  const session = await DataSession.open({
    folder,
    demonstration,
    programVersion: "test",
    emit: () => undefined,
    checkAnswers: true,
    ...options,
  });
  open.push(session);
  return session;
}

function stop(session: DataSession): void {
  session.close();
  open = open.filter((one) => one !== session);
}

async function value(
  session: DataSession,
  operation: string,
  input: unknown = {},
  as?: string,
): Promise<Record<string, unknown>> {
  const envelope: Envelope = await session.request({ operation, input, as });
  if (!envelope.ok) throw new Error(`${envelope.error.code}: ${envelope.error.message}`);
  return envelope.value as Record<string, unknown>;
}

async function code(session: DataSession, operation: string, input: unknown = {}): Promise<string> {
  const envelope = await session.request({ operation, input });
  return envelope.ok ? "accepted" : envelope.error.code;
}

/** A digest of the file's bytes, "none" where there is no file. */
function bytesOf(file: string): string {
  return fs.existsSync(file) ? createHash("sha256").update(fs.readFileSync(file)).digest("hex") : "none";
}

async function fillAndStop(): Promise<void> {
  const session = await start();
  await value(session, "company.start", {
    companyName: "Marram Lift Care",
    personName: "Orla Vance",
    role: "office",
  });
  await value(session, "site.add", { name: "Kittiwake House" }, "Orla Vance");
  stop(session);
}

describe("opening a data folder", () => {
  test("makes one ordinary SQLite file, a daily backup, and opens again", async () => {
    await fillAndStop();
    expect(fs.readFileSync(database()).subarray(0, 15).toString()).toBe("SQLite format 3");
    const session = await start();
    const { sites } = await value(session, "site.list");
    expect(sites).toMatchObject([{ name: "Kittiwake House" }]);
    const { backups } = await value(session, "backup.list");
    expect(backups).toMatchObject([{ kind: "daily" }]);
  });

  test("a second start on the same folder is refused and names the holder", async () => {
    await start();
    await expect(start()).rejects.toMatchObject({ code: "folder-in-use", details: { pid: process.pid } });
  });

  test("what the search knows is there after a restart", async () => {
    await fillAndStop();
    const session = await start();
    const found = await value(session, "search.find", { text: "doors reopen" });
    expect(JSON.stringify(found)).toContain("note");
  });

  test("the demonstration refuses a folder that holds a company's own data", async () => {
    await fillAndStop();
    await expect(start(true)).rejects.toMatchObject({ code: "folder-not-empty" });
    const session = await start();
    expect((await value(session, "site.list")).sites).toHaveLength(1);
  });
});

describe("a large database, read from while it is checked", () => {
  /** A check that waits until the test lets it go. */
  function heldCheck(answer: (file: string) => Promise<FileCheck>) {
    let release = (): void => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    const check: FileChecker = async (file) => {
      await held;
      return answer(file);
    };
    return { check, release: () => release() };
  }

  test("answers what reads at once; what writes waits for the check, in order", async () => {
    await fillAndStop();
    const { check, release } = heldCheck(checkFile);
    const session = await start(false, { check, checkedFirstUpTo: 0 });
    const finished: string[] = [];
    const writes = ["Saltpan Court", "Old Ropery Lofts"].map((name) =>
      value(session, "site.add", { name }, "Orla Vance").then(() => finished.push(name)),
    );
    expect((await value(session, "site.list")).sites).toHaveLength(1);
    expect(finished).toEqual([]);
    release();
    await Promise.all(writes);
    expect(finished).toEqual(["Saltpan Court", "Old Ropery Lofts"]);
    expect((await value(session, "site.list")).sites).toHaveLength(3);
  });

  test("found damaged: nothing was written, every window is told, and a backup brings the data back", async () => {
    await fillAndStop();
    const { check, release } = heldCheck(async () => ({ isGood: false, problems: ["page 7 is never used"] }));
    const events: ProgramEvent[] = [];
    const session = await start(false, {
      check,
      checkedFirstUpTo: 0,
      emit: (event) => events.push(event),
    });
    const before = bytesOf(database());
    const write = code(session, "draft.keep", { key: "x", value: 1 });
    expect(await code(session, "site.list")).toBe("accepted");
    release();
    expect(await write).toBe("store-damaged");
    expect(await code(session, "site.list")).toBe("store-damaged");
    expect(bytesOf(database())).toBe(before);
    expect(events).toMatchObject([{ kind: "changed", records: [{ entity: anyEntity }] }]);
  });

  test("a check that cannot be made in the background is made in the foreground", async () => {
    await fillAndStop();
    const session = await start(false, {
      check: () => Promise.reject(new Error("no thread")),
      checkedFirstUpTo: 0,
    });
    await value(session, "site.add", { name: "Saltpan Court" }, "Orla Vance");
    expect((await value(session, "site.list")).sites).toHaveLength(2);
    stop(session);
    overwrite(fs.statSync(database()).size - 4096, 4096);
    const damaged = await start(false, {
      check: () => Promise.reject(new Error("no thread")),
      checkedFirstUpTo: 0,
    });
    expect(await code(damaged, "draft.keep", { key: "x", value: 1 })).toBe("store-damaged");
  });

  test("closed during the check, nothing is left behind and the folder is free", async () => {
    await fillAndStop();
    for (const name of fs.readdirSync(path.join(folder, "backups")))
      fs.rmSync(path.join(folder, "backups", name));
    const check: FileChecker = (_file, signal) =>
      new Promise((_resolve, reject) => signal?.addEventListener("abort", () => reject(new Error("ended"))));
    const session = await start(false, { check });
    open = [];
    await session.close();
    expect(fs.readdirSync(path.join(folder, "backups"))).toEqual([]);
    await start();
  });
});

describe("a database that cannot be opened", () => {
  test.each([
    [
      "half a file",
      () => fs.truncateSync(database(), Math.floor(fs.statSync(database()).size / 2 / 512) * 512),
      "store-damaged",
    ],
    ["a page of noise", () => overwrite(3 * 4096, 4096), "store-damaged"],
    [
      "another kind of file",
      () => fs.writeFileSync(database(), "a list of phone numbers\n".repeat(300)),
      "store-foreign",
    ],
    ["a missing file beside its backups", () => fs.rmSync(database()), "store-damaged"],
  ])(
    "%s: nothing is opened or replaced, and a backup brings the data back",
    async (_name, harm, expected) => {
      await fillAndStop();
      const first = await start();
      await value(first, "backup.make");
      stop(first);
      harm();
      const before = bytesOf(database());
      const session = await start();
      expect(await code(session, "site.list")).toBe(expected);
      expect(await code(session, "draft.keep", { key: "x", value: 1 })).toBe(expected);
      expect(bytesOf(database())).toBe(before);
      const { backups } = (await value(session, "backup.list")) as {
        backups: { name: string; kind: string }[];
      };
      const newest = backups.find((backup) => backup.kind === "by-hand");
      await value(session, "backup.restore", { name: newest?.name });
      expect((await value(session, "site.list")).sites).toMatchObject([{ name: "Kittiwake House" }]);
    },
  );

  test("a database of a newer program is left alone", async () => {
    await fillAndStop();
    const file = await openSqliteOnDisk(database());
    file.run("INSERT INTO migration (number, name, checksum, appliedAt) VALUES (999, 'later', 'x', 'y')");
    file.close();
    const session = await start();
    expect(await code(session, "site.list")).toBe("store-newer");
  });

  test("a database whose migration has another checksum is left alone", async () => {
    await fillAndStop();
    const file = await openSqliteOnDisk(database());
    file.run("UPDATE migration SET checksum = 'other' WHERE number = 1");
    file.close();
    const session = await start();
    expect(await code(session, "site.list")).toBe("store-foreign");
  });
});

describe("backups from the screen", () => {
  test("restore puts back what was, and keeps what was in place", async () => {
    await fillAndStop();
    const session = await start();
    const { backup } = (await value(session, "backup.make")) as { backup: { name: string } };
    await value(session, "site.add", { name: "Saltpan Court" }, "Orla Vance");
    const { keptAs } = await value(session, "backup.restore", { name: backup.name });
    expect((await value(session, "site.list")).sites).toHaveLength(1);
    await value(session, "backup.restore", { name: keptAs });
    expect((await value(session, "site.list")).sites).toHaveLength(2);
    expect(await code(session, "backup.restore", { name: "../../etc/passwd" })).toBe("not-found");
    expect((await value(session, "site.list")).sites).toHaveLength(2);
  });

  test("a copy for other tools is a whole database", async () => {
    await fillAndStop();
    const session = await start();
    const { file } = (await value(session, "store.copy")) as { file: string };
    const copy = await openSqliteOnDisk(file, { readOnly: true });
    expect(copy.get("PRAGMA integrity_check")).toEqual({ integrity_check: "ok" });
    copy.close();
  });
});

function overwrite(at: number, length: number): void {
  const handle = fs.openSync(database(), "r+");
  fs.writeSync(handle, Buffer.alloc(length, 0xa5), 0, length, at);
  fs.closeSync(handle);
}
