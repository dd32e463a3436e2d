import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Backup,
  type BackupKind,
  backupName,
  backupsToRemove,
  dailyBackupIsDue,
  newestFirst,
  readBackupName,
} from "../../../main/data/backup-retention.ts";

const now = new Date("2026-11-24T10:42:00Z");
const kinds: readonly BackupKind[] = ["daily", "before-migration", "by-hand", "before-restore"];

function backup(moment: string, kind: BackupKind = "daily", copy = 1): Backup {
  const madeAt = new Date(moment);
  const name = backupName(madeAt, kind, copy);
  return { name, kind, bytes: 1, madeAt: `${madeAt.toISOString().slice(0, 19)}Z` };
}

const anyBackup = fc
  .record({
    minutesAgo: fc.integer({ min: -3000, max: 60 * 24 * 90 }),
    kind: fc.constantFrom(...kinds),
    copy: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ minutesAgo, kind, copy }) =>
    backup(new Date(now.getTime() - minutesAgo * 60_000).toISOString(), kind, copy),
  );
const anyBackups = fc.uniqueArray(anyBackup, { selector: (made) => made.name, maxLength: 120 });

describe("the name of a backup", () => {
  test("says when it was made and why", () => {
    expect(backupName(now, "daily")).toBe("sillbook-2026-11-24T10-42-00Z-daily.sqlite");
    expect(readBackupName("sillbook-2026-11-24T10-42-00Z-before-migration-2.sqlite")).toEqual({
      madeAt: "2026-11-24T10:42:00Z",
      kind: "before-migration",
    });
  });

  test.each([
    "sillbook.sqlite",
    "sillbook-2026-11-24T10-42-00Z-daily.sqlite.part",
    "sillbook-2026-13-44T10-42-00Z-daily.sqlite",
    "sillbook-2026-11-24T10-42-00Z-weekly.sqlite",
    "damaged-2026-11-24T10-42-00Z.sqlite",
    "../sillbook-2026-11-24T10-42-00Z-daily.sqlite",
  ])("is not %s", (name) => {
    expect(readBackupName(name)).toBeUndefined();
  });
});

describe("the backups that may be removed", () => {
  test("leave the newest of each of seven days and four weeks", () => {
    const made = [
      "2026-11-24T10:00:00Z", // Tuesday, today
      "2026-11-24T08:00:00Z", // older one of today
      "2026-11-23T08:00:00Z",
      "2026-11-22T08:00:00Z", // Sunday: newest of the week before
      "2026-11-20T08:00:00Z",
      "2026-11-18T08:00:00Z", // seventh day
      "2026-11-17T08:00:00Z", // eighth day
      "2026-11-15T08:00:00Z", // Sunday: newest of two weeks before
      "2026-11-14T08:00:00Z",
      "2026-11-08T08:00:00Z", // newest of three weeks before
      "2026-11-01T08:00:00Z", // four weeks before: too old
    ].map((moment) => backup(moment));
    expect(backupsToRemove(made, now).map((old) => old.madeAt)).toEqual([
      "2026-11-24T08:00:00Z",
      "2026-11-17T08:00:00Z",
      "2026-11-14T08:00:00Z",
      "2026-11-01T08:00:00Z",
    ]);
  });

  test("never include the last one, however old", () => {
    expect(
      backupsToRemove([backup("2024-01-01T00:00:00Z"), backup("2023-01-01T00:00:00Z")], now),
    ).toHaveLength(1);
    fc.assert(
      fc.property(anyBackups, (made) => {
        const removed = new Set(backupsToRemove(made, now));
        for (const kind of kinds) {
          const newest = newestFirst(made).find((other) => other.kind === kind);
          if (newest) expect(removed.has(newest)).toBe(false);
        }
      }),
      { seed: 20261124 },
    );
  });

  test("leave no day of the last seven and no week of the last four without one that had one", () => {
    const day = (made: Backup) => made.madeAt.slice(0, 10);
    const daysAgo = (made: Backup) =>
      Math.round((Date.parse("2026-11-24") - Date.parse(day(made))) / 86_400_000);
    // 2026-11-24 is a Tuesday, so weeks begin 1, 8, 15 and 22 days ago.
    const weeksAgo = (made: Backup) => Math.floor((daysAgo(made) + 5) / 7);
    fc.assert(
      fc.property(anyBackups, (made) => {
        const daily = made.filter((other) => other.kind === "daily");
        const removed = new Set(backupsToRemove(made, now));
        const kept = daily.filter((other) => !removed.has(other));
        for (const other of daily) {
          if (daysAgo(other) < 7) expect(kept.map(day)).toContain(day(other));
          if (weeksAgo(other) < 4) expect(kept.map(weeksAgo)).toContain(weeksAgo(other));
        }
        expect(kept.filter((other) => daysAgo(other) >= 0).length).toBeLessThanOrEqual(7 + 4 + 1);
      }),
      { seed: 20261124 },
    );
  });

  test("leave the newest ten of every other kind", () => {
    const made = Array.from({ length: 13 }, (_, index) =>
      backup(`2025-01-${String(index + 10)}T00:00:00Z`, "by-hand"),
    );
    expect(backupsToRemove(made, now).map((old) => old.madeAt.slice(8, 10))).toEqual(["12", "11", "10"]);
  });

  test("of one second are in the order in which they were made", () => {
    const moment = "2026-11-24T10:00:00Z";
    const made = [backup(moment, "daily", 2), backup(moment, "daily", 10), backup(moment)];
    expect(newestFirst(made).map((other) => other.name)).toEqual([
      backupName(new Date(moment), "daily", 10),
      backupName(new Date(moment), "daily", 2),
      backupName(new Date(moment), "daily"),
    ]);
  });
});

test("a daily backup is due once a day", () => {
  expect(dailyBackupIsDue([], now)).toBe(true);
  expect(dailyBackupIsDue([backup("2026-11-23T23:59:59Z")], now)).toBe(true);
  expect(dailyBackupIsDue([backup("2026-11-24T00:00:00Z")], now)).toBe(false);
  expect(dailyBackupIsDue([backup("2026-11-24T00:00:00Z", "by-hand")], now)).toBe(true);
});
