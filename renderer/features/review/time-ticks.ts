import { monthNames } from "#shared-lib/format.ts";

export interface TimeTick {
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly words: string;
}

const day = 24 * 60 * 60 * 1000;
const mostLines = 6;

/** At most six lines of a time axis: Mondays in a short time, else the first of months; years where they change. */
export function timeTicks(from: number, to: number): readonly TimeTick[] {
  if (!(to > from)) return [];
  return to - from <= 62 * day ? dayTicks(from, to) : monthTicks(from, to);
}

function dayTicks(from: number, to: number): readonly TimeTick[] {
  // Rounded, because a time in which the clocks change is an hour longer or shorter.
  const every = Math.max(1, Math.ceil(Math.round((to - from) / day) / mostLines));
  const ticks: TimeTick[] = [];
  const date = new Date(from);
  date.setHours(0, 0, 0, 0);
  while (date.getTime() <= to && ticks.length < mostLines) {
    if (date.getTime() >= from)
      ticks.push({ at: date.getTime(), words: `${date.getDate()} ${monthNames[date.getMonth()]}` });
    date.setDate(date.getDate() + every);
  }
  return ticks;
}

function monthTicks(from: number, to: number): readonly TimeTick[] {
  const first = new Date(from);
  const last = new Date(to);
  const months = (last.getFullYear() - first.getFullYear()) * 12 + last.getMonth() - first.getMonth();
  const every =
    [1, 2, 3, 6, 12, 24, 60].find((step) => months / step <= mostLines) ?? Math.ceil(months / mostLines);
  const ticks: TimeTick[] = [];
  const date = new Date(first.getFullYear(), 0, 1);
  while (date.getTime() <= to) {
    if (date.getTime() >= from) ticks.push({ at: date.getTime(), words: monthWords(date, every) });
    date.setMonth(date.getMonth() + every);
  }
  return ticks.slice(0, mostLines);
}

function monthWords(date: Date, every: number): string {
  const month = monthNames[date.getMonth()] ?? "";
  if (every >= 12) return String(date.getFullYear());
  return date.getMonth() < every ? `${month} ${date.getFullYear()}` : month;
}
