import fs from "node:fs";
import path from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { type DiskFault, FaultPlan, type FaultyCall } from "../../../../main/data/sqlite-disk/disk-faults.ts";
import { openSqliteOnDisk } from "../../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import type { SqliteFile } from "../../../../main/data/sqlite-disk/sqlite-file.ts";
import { temporaryFolder } from "./temporary-folder.ts";

const codes = [
  { code: "ENOSPC", said: "disk-full" },
  { code: "EDQUOT", said: "disk-full" },
  { code: "EACCES", said: "disk-denied" },
  { code: "EROFS", said: "disk-denied" },
  { code: "EIO", said: "disk-failed" },
] as const;
const places: { call: FaultyCall; pathEnd: string }[] = [
  { call: "write", pathEnd: "sillbook.sqlite" },
  { call: "write", pathEnd: "sillbook.sqlite-journal" },
  { call: "sync", pathEnd: "sillbook.sqlite" },
  { call: "sync", pathEnd: "sillbook.sqlite-journal" },
];

async function storeWithFaults(): Promise<{ file: string; store: SqliteFile; faults: FaultPlan }> {
  const file = path.join(temporaryFolder(), "sillbook.sqlite");
  const faults = new FaultPlan();
  const store = await openSqliteOnDisk(file, { faults });
  onTestFinished(() => {
    faults.clear();
    store.close();
  });
  store.exec(`
    CREATE TABLE note (id INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT;
    CREATE VIRTUAL TABLE note_text USING fts4(text);
  `);
  return { file, store, faults };
}

function save(store: SqliteFile, words: string, rows = 5): void {
  store.transaction(() => {
    for (let row = 0; row < rows; row += 1) {
      const text = `${words} ${row} ${"brake ".repeat(150)}`;
      store.run("INSERT INTO note (text) VALUES (:text)", { text });
      store.run("INSERT INTO note_text (text) VALUES (:text)", { text });
    }
    store.run("UPDATE note SET text = text || ' again' WHERE id = 1");
  });
}

function content(store: SqliteFile): string {
  return JSON.stringify(store.all("SELECT id, text FROM note ORDER BY id"));
}

function requireSound(store: SqliteFile): void {
  expect(store.all("PRAGMA integrity_check")).toEqual([{ integrity_check: "ok" }]);
  store.run("INSERT INTO note_text (note_text) VALUES ('integrity-check')");
  expect(store.get("SELECT count(*) AS count FROM note_text")).toEqual(
    store.get("SELECT count(*) AS count FROM note"),
  );
}

/** What the disk holds for anybody who opens the files as they are now. */
async function contentOnDisk(file: string): Promise<string> {
  const copy = path.join(temporaryFolder(), "sillbook.sqlite");
  for (const end of ["", "-journal"]) {
    if (fs.existsSync(file + end)) fs.copyFileSync(file + end, copy + end);
  }
  const opened = await openSqliteOnDisk(copy, { whenMissing: "refuse" });
  try {
    requireSound(opened);
    return content(opened);
  } finally {
    opened.close();
  }
}

describe.each(places)("a disk that fails at $call of $pathEnd", ({ call, pathEnd }) => {
  test.each(codes)("with $code: not saved, $said, and nothing earlier is lost", async ({ code, said }) => {
    const { file, store, faults } = await storeWithFaults();
    save(store, "saved before");
    const before = content(store);
    let struck = 0;
    for (const after of [0, 1, 2, 4]) {
      for (const times of [1, Number.POSITIVE_INFINITY]) {
        faults.add({ call, code, pathEnd, after, times });
        const strikes = faults.struck;
        const refused = attempt(() => save(store, "during the failure"));
        if (faults.struck === strikes) {
          faults.clear();
          break;
        }
        struck += 1;
        expect(refused).toMatchObject({ code: said });
        faults.clear();
        expect(content(store)).toBe(before);
        expect(await contentOnDisk(file)).toBe(before);
      }
      if (content(store) !== before) break;
    }
    expect(struck).toBeGreaterThanOrEqual(2);
    save(store, "saved afterwards");
    requireSound(store);
    const afterwards = content(store);
    expect(afterwards).toContain("saved afterwards");
    expect(await contentOnDisk(file)).toBe(afterwards);
  });
});

describe("a disk that fails", () => {
  test("in the middle of a write leaves the old state", async () => {
    const { file, store, faults } = await storeWithFaults();
    save(store, "saved before");
    const before = content(store);
    for (const pathEnd of ["sillbook.sqlite", "sillbook.sqlite-journal"]) {
      for (const partialBytes of [1, 512, 1000]) {
        faults.add({ call: "write", code: "ENOSPC", pathEnd, after: 1, partialBytes });
        expect(attempt(() => save(store, "during the failure"))).toMatchObject({ code: "disk-full" });
        faults.clear();
        expect(await contentOnDisk(file)).toBe(before);
      }
    }
    save(store, "saved afterwards");
    expect(await contentOnDisk(file)).toBe(content(store));
  });

  test("also while rolling back is recovered from the journal at the next opening", async () => {
    const { file, store, faults } = await storeWithFaults();
    save(store, "saved before");
    const before = content(store);
    faults.add({ call: "write", code: "EIO", pathEnd: "sillbook.sqlite", after: 20 });
    faults.add({ call: "truncate", code: "EIO" });
    faults.add({ call: "sync", code: "EIO", pathEnd: "sillbook.sqlite" });
    expect(attempt(() => save(store, "half written", 30))).toMatchObject({ code: "disk-failed" });
    expect(fs.statSync(`${file}-journal`).size).toBeGreaterThan(512);
    expect(fs.readFileSync(file).includes("half written")).toBe(true);
    expect(await contentOnDisk(file)).toBe(before);
    faults.clear();
    expect(content(store)).toBe(before);
  });

  test("while a transaction is larger than the memory leaves the old state", async () => {
    const { file, store, faults } = await storeWithFaults();
    store.exec("PRAGMA cache_size = 10");
    save(store, "saved before");
    const before = content(store);
    faults.add({ call: "write", code: "ENOSPC", pathEnd: "sillbook.sqlite", after: 20 });
    expect(attempt(() => save(store, "too much", 400))).toMatchObject({ code: "disk-full" });
    faults.clear();
    expect(content(store)).toBe(before);
    expect(await contentOnDisk(file)).toBe(before);
  });

  test("to cut back a long journal has still saved", async () => {
    const { file, store, faults } = await storeWithFaults();
    save(store, "saved before");
    store.exec("PRAGMA journal_size_limit = 4096");
    faults.add({ call: "truncate", code: "EIO", pathEnd: "-journal" });
    save(store, "many rows", 30);
    store.run("UPDATE note SET text = 'all of them'");
    expect(faults.struck).toBeGreaterThan(0);
    expect(fs.statSync(`${file}-journal`).size).toBeGreaterThan(4096);
    expect(await contentOnDisk(file)).toBe(content(store));
    faults.clear();
    save(store, "saved afterwards");
    expect(fs.statSync(`${file}-journal`).size).toBe(4096);
    expect(await contentOnDisk(file)).toBe(content(store));
  });

  test("does not let the rest of a transaction through alone when its work goes on", async () => {
    const { file, store, faults } = await storeWithFaults();
    store.exec("PRAGMA cache_size = 10");
    save(store, "saved before");
    const before = content(store);
    const refused = attempt(() =>
      store.transaction(() => {
        faults.add({ call: "write", code: "ENOSPC", times: 1 });
        for (let row = 0; row < 400; row += 1) {
          attempt(() => store.run("INSERT INTO note (text) VALUES (:text)", { text: "rope ".repeat(200) }));
        }
        expect(faults.struck).toBe(1);
      }),
    );
    expect(refused).toMatchObject({ code: "disk-full" });
    expect(content(store)).toBe(before);
    expect(await contentOnDisk(file)).toBe(before);
  });

  test.each(codes)("to open with $code says $said and creates nothing", async ({ code, said }) => {
    const { file, store } = await storeWithFaults();
    save(store, "saved before");
    const before = content(store);
    store.close();
    const faults = new FaultPlan();
    faults.add({ call: "open", code } satisfies DiskFault);
    await expect(openSqliteOnDisk(file, { faults })).rejects.toMatchObject({ code: said });
    expect(await contentOnDisk(file)).toBe(before);
    const fresh = path.join(temporaryFolder(), "sillbook.sqlite");
    await expect(openSqliteOnDisk(fresh, { faults })).rejects.toMatchObject({ code: said });
    expect(fs.existsSync(fresh)).toBe(false);
  });

  test("to open the journal refuses the save and says why", async () => {
    const { file, store } = await storeWithFaults();
    save(store, "saved before");
    const before = content(store);
    store.close();
    const faults = new FaultPlan();
    const again = await openSqliteOnDisk(file, { faults });
    onTestFinished(() => again.close());
    faults.add({ call: "open", code: "EACCES", pathEnd: "-journal" });
    expect(attempt(() => save(again, "during the failure"))).toMatchObject({ code: "disk-denied" });
    expect(faults.struck).toBeGreaterThan(0);
    faults.clear();
    expect(content(again)).toBe(before);
    save(again, "saved afterwards");
    expect(await contentOnDisk(file)).toBe(content(again));
  });

  test("to read says so", async () => {
    const { file, store } = await storeWithFaults();
    save(store, "saved before");
    store.close();
    const faults = new FaultPlan();
    const again = await openSqliteOnDisk(file, { faults });
    onTestFinished(() => again.close());
    faults.add({ call: "read", code: "EIO" });
    expect(attempt(() => content(again))).toMatchObject({ code: "disk-failed" });
    faults.clear();
    expect(content(again)).toContain("saved before");
  });

  test("while a database is created leaves none under its name", async () => {
    for (const call of ["write", "sync"] as const) {
      const file = path.join(temporaryFolder(), "sillbook.sqlite");
      const faults = new FaultPlan();
      faults.add({ call, code: "ENOSPC" });
      await expect(openSqliteOnDisk(file, { faults })).rejects.toMatchObject({ code: "disk-full" });
      expect(fs.existsSync(file)).toBe(false);
      faults.clear();
      const store = await openSqliteOnDisk(file, { faults });
      store.close();
    }
  });
});

function attempt(work: () => unknown): unknown {
  try {
    work();
    return "saved";
  } catch (error) {
    return error;
  }
}
