import fs from "node:fs";
import path from "node:path";
import { describe, expect, test, vi } from "vitest";
import { FaultPlan } from "../../../../main/data/sqlite-disk/disk-faults.ts";
import { openSqliteOnDisk } from "../../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import { proveDisk } from "../../../../main/data/sqlite-disk/self-test.ts";
import { temporaryFolder } from "./temporary-folder.ts";

describe("the start-up test of the disk", () => {
  test("passes on a good disk and leaves nothing behind", async () => {
    const folder = temporaryFolder();
    await expect(proveDisk(folder)).resolves.toBeUndefined();
    expect(fs.readdirSync(folder)).toEqual([]);
  });

  test("calls the real flush of the system for each commit", async () => {
    const flush = vi.spyOn(fs, "fdatasyncSync");
    try {
      const store = await openSqliteOnDisk(path.join(temporaryFolder(), "sillbook.sqlite"));
      store.exec("CREATE TABLE note (text TEXT) STRICT");
      const before = flush.mock.calls.length;
      const counted = store.syncCount;
      store.run("INSERT INTO note (text) VALUES ('x')");
      expect(flush.mock.calls.length - before).toBeGreaterThanOrEqual(3);
      expect(store.syncCount - counted).toBe(flush.mock.calls.length - before);
      store.close();
    } finally {
      flush.mockRestore();
    }
  });

  test("refuses when what was committed is not in the real file", async () => {
    const folder = temporaryFolder();
    const elsewhere = temporaryFolder();
    const proof = proveDisk(folder, (file, options) =>
      openSqliteOnDisk(path.join(elsewhere, path.basename(file)), options),
    );
    await expect(proof).rejects.toMatchObject({
      code: "disk-failed",
      details: { step: expect.stringContaining("not in the file") },
    });
  });

  test("refuses when commits are not flushed", async () => {
    const proof = proveDisk(temporaryFolder(), async (file, options) => {
      const opened = await openSqliteOnDisk(file, options);
      opened.exec("PRAGMA synchronous = OFF");
      return opened;
    });
    await expect(proof).rejects.toMatchObject({
      code: "disk-failed",
      details: { step: expect.stringContaining("did not flush") },
    });
  });

  test("refuses when the data cannot be read again", async () => {
    const folder = temporaryFolder();
    let openings = 0;
    const proof = proveDisk(folder, async (file, options) => {
      openings += 1;
      if (openings === 2) fs.copyFileSync(path.join(folder, "old.sqlite"), file);
      else {
        const old = await openSqliteOnDisk(path.join(folder, "old.sqlite"));
        old.exec("CREATE TABLE proof (mark TEXT NOT NULL) STRICT; INSERT INTO proof VALUES ('of yesterday')");
        old.close();
      }
      return openSqliteOnDisk(file, options);
    });
    await expect(proof).rejects.toMatchObject({
      code: "disk-failed",
      details: { step: expect.stringContaining("opening again") },
    });
  });

  test.each([
    ["ENOSPC", "disk-full"],
    ["EACCES", "disk-denied"],
    ["EIO", "disk-failed"],
  ])("reports %s as %s", async (code, said) => {
    const faults = new FaultPlan();
    faults.add({ call: "write", code });
    const proof = proveDisk(temporaryFolder(), (file, options) =>
      openSqliteOnDisk(file, { ...options, faults }),
    );
    await expect(proof).rejects.toMatchObject({ code: said });
  });
});
