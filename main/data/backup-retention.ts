export type BackupKind = "daily" | "before-migration" | "by-hand" | "before-restore";

/** A backup in the data folder. `name` is its file name, `madeAt` ISO 8601 UTC to the second, `bytes` its size. */
export interface Backup {
  readonly name: string;
  readonly madeAt: string;
  readonly kind: BackupKind;
  readonly bytes: number;
}

const namePattern =
  /^sillbook-(\d{4}-\d{2}-\d{2})T(\d{2})-(\d{2})-(\d{2})Z-(daily|before-migration|by-hand|before-restore)(?:-(\d+))?\.sqlite$/;

const dayMilliseconds = 86_400_000;
const daysKept = 7;
const weeksKept = 4;
const othersKept = 10;

/** The file name, for example `sillbook-2026-11-24T10-42-00Z-daily.sqlite`; `copy` counts from 2 within one second. */
export function backupName(madeAt: Date, kind: BackupKind, copy = 1): string {
  // Colons are not allowed in file names everywhere.
  const time = `${madeAt.toISOString().slice(0, 19).replaceAll(":", "-")}Z`;
  return `sillbook-${time}-${kind}${copy > 1 ? `-${copy}` : ""}.sqlite`;
}

/** What a file name says; undefined where it is not the name of a backup. */
export function readBackupName(
  name: string,
): { readonly madeAt: string; readonly kind: BackupKind } | undefined {
  const found = namePattern.exec(name);
  if (!found) return undefined;
  const [, day, hour, minute, second, kind] = found;
  const madeAt = `${day}T${hour}:${minute}:${second}Z`;
  return Number.isNaN(Date.parse(madeAt)) ? undefined : { madeAt, kind: kind as BackupKind };
}

/** Newest first; several of one second in the order in which they were made. */
export function newestFirst(backups: readonly Backup[]): Backup[] {
  const copy = (backup: Backup) => Number(namePattern.exec(backup.name)?.[6] ?? 1);
  return [...backups].sort((a, b) => b.madeAt.localeCompare(a.madeAt) || copy(b) - copy(a));
}

/**
 * The backups that may be removed. Of the daily ones stay the newest of each of the last 7 days and of each of the last
 * 4 weeks (Monday to Sunday, UTC), and always the newest of all; of every other kind the newest 10.
 */
export function backupsToRemove(backups: readonly Backup[], now: Date): Backup[] {
  const sorted = newestFirst(backups);
  const kept = new Set<Backup>();
  const daily = sorted.filter((backup) => backup.kind === "daily");
  keepNewestOfEach(daily, dayOf, dayOf(now) - daysKept, kept);
  keepNewestOfEach(daily, weekOf, weekOf(now) - weeksKept, kept);
  if (daily[0]) kept.add(daily[0]);
  for (const kind of ["before-migration", "by-hand", "before-restore"] as const) {
    for (const backup of sorted.filter((other) => other.kind === kind).slice(0, othersKept)) kept.add(backup);
  }
  return sorted.filter((backup) => !kept.has(backup));
}

/** Whether the day (UTC) has no daily backup yet. */
export function dailyBackupIsDue(backups: readonly Backup[], now: Date): boolean {
  return !backups.some((backup) => backup.kind === "daily" && dayOf(new Date(backup.madeAt)) === dayOf(now));
}

function keepNewestOfEach(
  sorted: readonly Backup[],
  periodOf: (moment: Date) => number,
  tooOld: number,
  kept: Set<Backup>,
): void {
  const seen = new Set<number>();
  for (const backup of sorted) {
    const period = periodOf(new Date(backup.madeAt));
    if (period <= tooOld || seen.has(period)) continue;
    seen.add(period);
    kept.add(backup);
  }
}

function dayOf(moment: Date): number {
  return Math.floor(moment.getTime() / dayMilliseconds);
}

// Day 0 of the count was a Thursday.
function weekOf(moment: Date): number {
  return Math.floor((dayOf(moment) + 3) / 7);
}
