import fs from "node:fs";
import path from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import {
  checkBackup,
  copyDatabase,
  listBackups,
  makeBackup,
  restoreBackup,
} from "../../../main/data/backups.ts";
import { type DataFolder, openDataFolder } from "../../../main/data/data-folder.ts";
import { FaultPlan } from "../../../main/data/sqlite-disk/disk-faults.ts";
import { openSqliteOnDisk } from "../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import type { SqliteFile } from "../../../main/data/sqlite-disk/sqlite-file.ts";
import { temporaryFolder } from "./sqlite-disk/temporary-folder.ts";

const manyNotes = Array.from({ length: 300 }, (_, row) => `${row} ${"x".repeat(300)}`);
const now = new Date("2026-11-24T10:42:00Z");

interface Store {
  readonly folder: DataFolder;
  readonly database: SqliteFile;
}

async function newStore(notes: readonly string[] = ["first"]): Promise<Store> {
  const folder = openDataFolder(temporaryFolder());
  const database = await openSqliteOnDisk(folder.database);
  onTestFinished(() => {
    database.close();
    folder.close();
  });
  database.exec(
    "CREATE TABLE note (text TEXT NOT NULL) STRICT; CREATE VIRTUAL TABLE note_text USING fts4(text)",
  );
  add(database, ...notes);
  return { folder, database };
}

function add(database: SqliteFile, ...notes: readonly string[]): void {
  database.transaction(() => {
    for (const text of notes) {
      database.run("INSERT INTO note (text) VALUES (:text)", { text });
      database.run("INSERT INTO note_text (text) VALUES (:text)", { text });
    }
  });
}

async function notesIn(file: string): Promise<string[]> {
  const opened = await openSqliteOnDisk(file, { readOnly: true });
  try {
    return opened.all<{ text: string }>("SELECT text FROM note").map((row) => row.text);
  } finally {
    opened.close();
  }
}

function inBackups(folder: DataFolder): string[] {
  return fs.readdirSync(folder.backups).sort();
}

describe("making a backup", () => {
  test("copies everything that was committed, under a dated name", async () => {
    const { folder, database } = await newStore(["first", "second"]);
    const { backup } = await makeBackup(folder, database, "daily", { now });
    add(database, "later");
    expect(backup).toEqual({
      name: "sillbook-2026-11-24T10-42-00Z-daily.sqlite",
      kind: "daily",
      madeAt: "2026-11-24T10:42:00Z",
      bytes: fs.statSync(path.join(folder.backups, backup.name)).size,
    });
    expect(await notesIn(path.join(folder.backups, backup.name))).toEqual(["first", "second"]);
    expect(listBackups(folder)).toEqual([backup]);
    expect(inBackups(folder)).toEqual([backup.name]);
    expect(await checkBackup(folder, backup.name)).toEqual({ isGood: true, problems: [] });
  });

  test("twice in one second keeps both", async () => {
    const { folder, database } = await newStore();
    const one = await makeBackup(folder, database, "by-hand", { now });
    const two = await makeBackup(folder, database, "by-hand", { now });
    expect(listBackups(folder).map((backup) => backup.name)).toEqual([two.backup.name, one.backup.name]);
  });

  test("removes older ones only when the new one is good", async () => {
    const { folder, database } = await newStore();
    const old = await makeBackup(folder, database, "daily", { now: new Date("2026-11-24T01:00:00Z") });
    const faults = new FaultPlan();
    faults.add({ call: "write", code: "ENOSPC", partialBytes: 4096 });
    await expect(makeBackup(folder, database, "daily", { now, faults })).rejects.toThrow();
    expect(inBackups(folder)).toEqual([old.backup.name]);
    const made = await makeBackup(folder, database, "daily", { now });
    expect(made.removed).toEqual([old.backup.name]);
    expect(inBackups(folder)).toEqual([made.backup.name]);
  });

  test.each([
    ["open", "EACCES", "disk-denied"],
    ["write", "ENOSPC", "disk-full"],
    ["write", "EIO", "disk-failed"],
    ["sync", "EIO", "disk-failed"],
    ["rename", "ENOSPC", "disk-full"],
  ] as const)("leaves no half file when %s fails with %s", async (call, code, reason) => {
    const { folder, database } = await newStore();
    const faults = new FaultPlan();
    faults.add({ call, code, partialBytes: 1000 });
    await expect(makeBackup(folder, database, "by-hand", { now, faults })).rejects.toMatchObject({
      code: "backup-failed",
      details: { reason },
    });
    expect(faults.struck).toBe(1);
    expect(inBackups(folder)).toEqual([]);
    add(database, "still saved");
    faults.clear();
    const { backup } = await makeBackup(folder, database, "by-hand", { now, faults });
    expect(await notesIn(path.join(folder.backups, backup.name))).toEqual(["first", "still saved"]);
  });

  test("is refused inside a transaction", async () => {
    const { folder, database } = await newStore();
    const attempts: Promise<unknown>[] = [];
    database.transaction(() => attempts.push(makeBackup(folder, database, "by-hand", { now })));
    await expect(attempts[0]).rejects.toThrow(/transaction/);
    database.exec("PRAGMA cache_size = 2; BEGIN IMMEDIATE");
    for (let row = 0; row < 200; row += 1) {
      database.run("INSERT INTO note (text) VALUES (?)", ["open ".repeat(200)]);
    }
    await expect(makeBackup(folder, database, "by-hand", { now })).rejects.toThrow(/transaction/);
    database.exec("ROLLBACK");
    await makeBackup(folder, database, "by-hand", { now });
  });

  test("of a database that became damaged is refused and takes no good one away", async () => {
    const { folder, database } = await newStore(manyNotes);
    const good = await makeBackup(folder, database, "daily", { now: new Date("2026-11-24T01:00:00Z") });
    scribble(folder.database);
    await expect(makeBackup(folder, database, "daily", { now })).rejects.toMatchObject({
      code: "backup-failed",
      details: { reason: "store-damaged" },
    });
    expect(inBackups(folder)).toEqual([good.backup.name]);
  });

  test("elsewhere never overwrites a file", async () => {
    const { database } = await newStore();
    const target = path.join(temporaryFolder(), "copy.sqlite");
    const bytes = await copyDatabase(database, target);
    expect(fs.statSync(target).size).toBe(bytes);
    expect(await notesIn(target)).toEqual(["first"]);
    fs.writeFileSync(target, "mine");
    await expect(copyDatabase(database, target)).rejects.toMatchObject({ code: "backup-failed" });
    expect(fs.readFileSync(target, "utf8")).toBe("mine");
  });
});

describe("checking a backup", () => {
  test("finds damage and changes nothing", async () => {
    const { folder, database } = await newStore(manyNotes);
    const { backup } = await makeBackup(folder, database, "by-hand", { now });
    const file = path.join(folder.backups, backup.name);
    for (const damage of [
      scribble,
      (name: string) => fs.truncateSync(name, 5000),
      (name: string) => fs.truncateSync(name),
    ]) {
      damage(file);
      const before = fs.readFileSync(file);
      const check = await checkBackup(folder, backup.name);
      expect(check.isGood).toBe(false);
      expect(check.problems.length).toBeGreaterThan(0);
      expect(fs.readFileSync(file).equals(before)).toBe(true);
    }
  });

  test("takes only names of backups", async () => {
    const { folder } = await newStore();
    for (const name of ["../sillbook.sqlite", "none", ""]) {
      await expect(checkBackup(folder, name)).rejects.toMatchObject({ code: "not-found" });
    }
  });
});

describe("restoring a backup", () => {
  async function storeWithBackup(): Promise<Store & { name: string }> {
    const store = await newStore(["old"]);
    const { backup } = await makeBackup(store.folder, store.database, "daily", { now });
    add(store.database, "new");
    return { ...store, name: backup.name };
  }

  test("puts it in place and keeps what was there as a backup", async () => {
    const { folder, database, name } = await storeWithBackup();
    database.close();
    const restored = await restoreBackup(folder, name, { now });
    expect(restored).toEqual({
      restored: name,
      keptAs: "sillbook-2026-11-24T10-42-00Z-before-restore.sqlite",
      wasDamaged: false,
    });
    expect(await notesIn(folder.database)).toEqual(["old"]);
    expect(await notesIn(path.join(folder.backups, restored.keptAs ?? ""))).toEqual(["old", "new"]);
    expect(fs.readdirSync(folder.folder).sort()).toEqual([
      "attachments",
      "backups",
      "sillbook.lock",
      "sillbook.sqlite",
    ]);
    const again = await openSqliteOnDisk(folder.database);
    add(again, "after");
    again.close();
    expect(await notesIn(path.join(folder.backups, name))).toEqual(["old"]);
  });

  test("works where the database is missing", async () => {
    const { folder, database, name } = await storeWithBackup();
    database.close();
    fs.rmSync(folder.database);
    expect(await restoreBackup(folder, name, { now })).toMatchObject({
      keptAs: undefined,
      wasDamaged: false,
    });
    expect(await notesIn(folder.database)).toEqual(["old"]);
  });

  test.each<[string, (file: string) => void]>([
    ["random bytes", scribble],
    ["a text", (file) => fs.writeFileSync(file, "shopping list")],
    ["nothing", (file) => fs.truncateSync(file)],
    [
      "a folder",
      (file) => {
        fs.rmSync(file);
        fs.mkdirSync(file);
      },
    ],
  ])("keeps a damaged database as it is (%s)", async (_case, damage) => {
    const { folder, database, name } = await storeWithBackup();
    add(database, ...manyNotes);
    database.close();
    damage(folder.database);
    const isFile = fs.statSync(folder.database).isFile();
    const before = isFile ? fs.readFileSync(folder.database) : undefined;
    const restored = await restoreBackup(folder, name, { now });
    expect(restored).toMatchObject({ keptAs: "damaged-2026-11-24T10-42-00Z.sqlite", wasDamaged: true });
    expect(await notesIn(folder.database)).toEqual(["old"]);
    const kept = path.join(folder.backups, restored.keptAs ?? "");
    if (before) expect(fs.readFileSync(kept).equals(before)).toBe(true);
    else expect(fs.statSync(kept).isDirectory()).toBe(true);
  });

  test("does not play an old journal into the restored database, and keeps it with a damaged one", async () => {
    const { folder, database, name } = await storeWithBackup();
    database.close();
    fs.truncateSync(folder.database);
    fs.writeFileSync(`${folder.database}-journal`, "journal of the damaged one");
    const restored = await restoreBackup(folder, name, { now });
    expect(fs.existsSync(`${folder.database}-journal`)).toBe(false);
    expect(fs.readFileSync(path.join(folder.backups, `${restored.keptAs}-journal`), "utf8")).toBe(
      "journal of the damaged one",
    );
    expect(await notesIn(folder.database)).toEqual(["old"]);
  });

  test("of a damaged backup is refused and leaves the database alone", async () => {
    const { folder, database, name } = await storeWithBackup();
    database.close();
    fs.truncateSync(path.join(folder.backups, name), 5000);
    await expect(restoreBackup(folder, name, { now })).rejects.toMatchObject({ code: "backup-failed" });
    expect(await notesIn(folder.database)).toEqual(["old", "new"]);
    expect(inBackups(folder)).toEqual([name]);
  });

  test.each([
    { call: "write", after: 0 },
    { call: "write", after: 1 },
    { call: "sync", after: 0 },
    { call: "sync", after: 1 },
    { call: "rename", after: 0 },
    { call: "rename", after: 1 },
    { call: "rename", after: 2 },
  ] as const)("on a full disk ($call, after $after) leaves the database alone", async ({ call, after }) => {
    const { folder, database, name } = await storeWithBackup();
    database.close();
    const faults = new FaultPlan();
    faults.add({ call, code: "ENOSPC", after, partialBytes: 4096 });
    await expect(restoreBackup(folder, name, { now, faults })).rejects.toThrow();
    expect(faults.struck).toBe(1);
    expect(await notesIn(folder.database)).toEqual(["old", "new"]);
    expect(fs.readdirSync(folder.folder).filter((file) => file.includes(".restore"))).toEqual([]);
    for (const backup of listBackups(folder)) {
      expect((await checkBackup(folder, backup.name)).isGood).toBe(true);
    }
  });
});

/** Damage in the middle of the file that opening alone does not notice. */
function scribble(file: string): void {
  const content = fs.readFileSync(file);
  content.fill(0x5a, Math.floor(content.length / 8192) * 4096);
  fs.writeFileSync(file, content);
}
