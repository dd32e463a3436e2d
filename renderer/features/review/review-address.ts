import { type FaultGroup, faultGroups } from "#shared-lib/words.ts";

export const lastTimes = ["30 days", "quarter", "year"] as const;
export type LastTime = (typeof lastTimes)[number];

/** What the address of Review says: a time that goes with the calendar, or two days, and what is left out. */
export interface ReviewAddress {
  /** Counts where `from` and `until` are not both given. */
  readonly last: LastTime;
  /** First and last day, as in 2026-11-24; null together. */
  readonly from: string | null;
  readonly until: string | null;
  readonly site: string | null;
  readonly group: FaultGroup | null;
}

/** Days as stored; both belong to the period. */
export interface PeriodDays {
  readonly from: string;
  readonly until: string;
}

const idPattern = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const dayPattern = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Anything can stand in an address: what fits nothing is left out. A day alone counts with today, or one year before. */
export function readReviewAddress(search: Readonly<Record<string, unknown>>, today: string): ReviewAddress {
  const days = readDays(readDay(search.from), readDay(search.until), today);
  return {
    last: lastTimes.find((one) => one === search.last) ?? "year",
    from: days?.from ?? null,
    until: days?.until ?? null,
    site: typeof search.site === "string" && idPattern.test(search.site) ? search.site : null,
    group: faultGroups.find((group) => group === search.group) ?? null,
  };
}

/** The shortest address that says the same. */
export function writeReviewAddress(address: ReviewAddress): Record<string, string> {
  const { last, from, until, site, group } = address;
  return {
    ...(from !== null && until !== null ? { from, until } : last === "year" ? {} : { last }),
    ...(site === null ? {} : { site }),
    ...(group === null ? {} : { group }),
  };
}

export function daysOf({ last, from, until }: ReviewAddress, today: string): PeriodDays {
  if (from !== null && until !== null) return { from, until };
  return { from: firstDayOf(last, today), until: today };
}

/** From the beginning of the first day up to the end of the last, in the local time of the machine. */
export function momentsOf({ from, until }: PeriodDays): { readonly from: string; readonly until: string } {
  return { from: localMidnight(from).toISOString(), until: localMidnight(dayAfter(until, 1)).toISOString() };
}

/** The day of a moment in the local time of the machine. */
export function storedDay(date: Date): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${String(date.getFullYear()).padStart(4, "0")}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

export function localMidnight(day: string): Date {
  return new Date(`${day}T00:00:00`);
}

function readDays(from: string | null, until: string | null, today: string): PeriodDays | null {
  if (from === null && until === null) return null;
  const last = until ?? (from !== null && from > today ? from : today);
  const first = from ?? firstDayOf("year", last);
  return first <= last ? { from: first, until: last } : { from: last, until: first };
}

function readDay(value: unknown): string | null {
  const parts = typeof value === "string" ? dayPattern.exec(value) : null;
  if (parts === null) return null;
  const date = localMidnight(parts[0]);
  // 31 November is read as 1 December by some engines.
  return Number.isNaN(date.getTime()) || storedDay(date) !== parts[0] ? null : parts[0];
}

/** One year that ends with 17 Nov begins with 18 Nov of the year before. */
function firstDayOf(last: LastTime, lastDay: string): string {
  if (last === "30 days") return dayAfter(lastDay, -29);
  return dayAfter(monthsBefore(lastDay, last === "quarter" ? 3 : 12), 1);
}

function dayAfter(day: string, days: number): string {
  const date = localMidnight(day);
  date.setDate(date.getDate() + days);
  return storedDay(date);
}

/** The same day of an earlier month, or that month's last day where it is shorter. */
function monthsBefore(day: string, months: number): string {
  const date = localMidnight(day);
  const dayOfMonth = date.getDate();
  date.setDate(1);
  date.setMonth(date.getMonth() - months);
  const lastDay = new Date(date.getFullYear(), date.getMonth() + 1, 0).getDate();
  date.setDate(Math.min(dayOfMonth, lastDay));
  return storedDay(date);
}
