import { formatDay, monthNames } from "./format.ts";

/** A typed moment: what it means as UTC ISO 8601, or one sentence why it means none. */
export type TimeReading =
  | { readonly kind: "empty" }
  | { readonly kind: "moment"; readonly at: string }
  | { readonly kind: "unclear"; readonly problem: string };

interface TimeOfDay {
  readonly hours: number;
  readonly minutes: number;
}

interface Day {
  readonly year: number;
  /** 0 to 11 */
  readonly month: number;
  readonly day: number;
}

const weekdays = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];
const millisecondsPerMinute = 60_000;
/** A clock that is a little ahead must not turn "just now" into yesterday. */
const aheadMinutes = 5;

/**
 * Reads a moment as people type it, in the local time of the machine: "09:05", "9.05", "0905", "now", "10 min ago",
 * "2 h ago", "yesterday 14:10", "Mon 9:05", "17 Nov 09:05", "17 Nov 2025 09:05", "2026-11-17 09:05", "17.11. 09:05".
 * Where a day or year is left out, `direction` decides: "past" takes the newest such moment that is not still to
 * come, "future" the next one. A day without a time is asked back.
 */
export function readTime(text: string, now: Date, direction: "past" | "future" = "past"): TimeReading {
  const words = text.trim().toLowerCase().replaceAll(",", " ").replace(/\s+/g, " ").replace(/\bat /, "");
  if (words === "") return { kind: "empty" };
  const relative = readRelative(words, now);
  if (relative !== undefined) return moment(relative);

  const cut = /^(?:(.*\S)\s+)?(\d{1,2}[:.]\d{2}|\d{4})$/.exec(words);
  const time = cut?.[2] === undefined || endsWithYear(cut[1], cut[2]) ? undefined : readTimeOfDay(cut[2]);
  if (cut === null || time === undefined) return unclear(text, words, now, direction);
  const dayWords = cut[1];
  if (dayWords === undefined) return momentOf(nearestDay(now, time, direction), time);
  const day = readDay(dayWords, now, time, direction);
  return day === undefined ? notUnderstood(text) : momentOf(day, time);
}

/** "17 Nov 2025" ends with a year, "yesterday 2025" with a time of day. */
function endsWithYear(dayWords: string | undefined, digits: string): boolean {
  return dayWords !== undefined && /\d/.test(dayWords) && /^\d{4}$/.test(digits);
}

function moment(date: Date): TimeReading {
  return { kind: "moment", at: date.toISOString() };
}

function notUnderstood(text: string): TimeReading {
  return {
    kind: "unclear",
    problem: `“${text.trim()}” is not understood as a time. Write 09:05, yesterday 14:10 or 17 Nov 09:05.`,
  };
}

/** A day alone needs its time; anything else is not understood. */
function unclear(text: string, words: string, now: Date, direction: "past" | "future"): TimeReading {
  const day = readDay(words, now, { hours: 12, minutes: 0 }, direction);
  if (day === undefined) return notUnderstood(text);
  const shown = formatDay(new Date(day.year, day.month, day.day));
  return { kind: "unclear", problem: `At what time on ${shown}? Write ${shown} 09:05.` };
}

function readRelative(words: string, now: Date): Date | undefined {
  if (words === "now") return now;
  const ago = /^(?:(\d{1,3}) ?h(?:ours?)?)? ?(?:(\d{1,4}) ?(?:m|min|minutes?))? ago$/.exec(words);
  if (ago === null || (ago[1] === undefined && ago[2] === undefined)) return undefined;
  const minutes = Number(ago[1] ?? 0) * 60 + Number(ago[2] ?? 0);
  return new Date(now.getTime() - minutes * millisecondsPerMinute);
}

function readTimeOfDay(words: string): TimeOfDay | undefined {
  const parts = /^(\d{1,2})[:.]?(\d{2})$/.exec(words);
  const hours = Number(parts?.[1]);
  const minutes = Number(parts?.[2]);
  return hours <= 23 && minutes <= 59 ? { hours, minutes } : undefined;
}

function readDay(words: string, now: Date, time: TimeOfDay, direction: "past" | "future"): Day | undefined {
  if (words === "today") return dayOf(now, 0);
  if (words === "yesterday") return dayOf(now, -1);
  if (words === "tomorrow") return dayOf(now, 1);
  const weekday = words.length < 3 ? -1 : weekdays.findIndex((name) => name.startsWith(words));
  if (weekday >= 0) {
    return nearestWeekday(now, weekday, time, direction);
  }
  const written = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(words);
  if (written !== null) return realDay(Number(written[1]), Number(written[2]) - 1, Number(written[3]));
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})?$/.exec(words);
  if (dotted !== null) {
    return dayOfYear(Number(dotted[1]), Number(dotted[2]) - 1, dotted[3], now, time, direction);
  }
  const named =
    /^(\d{1,2}) ([a-z]{3,9})\.?(?: (\d{4}))?$/.exec(words) ??
    swapped(/^([a-z]{3,9}) (\d{1,2})(?: (\d{4}))?$/.exec(words));
  if (named === null) return undefined;
  const month = monthNames.findIndex((name) => name.toLowerCase() === named[2]?.slice(0, 3));
  return month < 0 ? undefined : dayOfYear(Number(named[1]), month, named[3], now, time, direction);
}

function swapped(parts: RegExpExecArray | null): (string | undefined)[] | null {
  return parts === null ? null : [parts[0], parts[2], parts[1], parts[3]];
}

function dayOf(date: Date, offset: number): Day {
  const moved = new Date(date.getFullYear(), date.getMonth(), date.getDate() + offset, 12);
  return { year: moved.getFullYear(), month: moved.getMonth(), day: moved.getDate() };
}

/** 31 Feb is no day. */
function realDay(year: number, month: number, day: number): Day | undefined {
  const date = new Date(year, month, day, 12);
  const same = date.getFullYear() === year && date.getMonth() === month && date.getDate() === day;
  return same ? { year, month, day } : undefined;
}

function dateOf(day: Day, time: TimeOfDay): Date {
  return new Date(day.year, day.month, day.day, time.hours, time.minutes);
}

function isPast(date: Date, now: Date): boolean {
  return date.getTime() <= now.getTime() + aheadMinutes * millisecondsPerMinute;
}

function nearestDay(now: Date, time: TimeOfDay, direction: "past" | "future"): Day {
  const today = dayOf(now, 0);
  const past = isPast(dateOf(today, time), now);
  if (direction === "past") return past ? today : dayOf(now, -1);
  return dateOf(today, time).getTime() >= now.getTime() ? today : dayOf(now, 1);
}

function nearestWeekday(now: Date, weekday: number, time: TimeOfDay, direction: "past" | "future"): Day {
  const start = nearestDay(now, time, direction);
  const startWeekday = new Date(start.year, start.month, start.day, 12).getDay();
  const offset =
    direction === "past" ? -((startWeekday - weekday + 7) % 7) : (weekday - startWeekday + 7) % 7;
  return dayOf(new Date(start.year, start.month, start.day, 12), offset);
}

function dayOfYear(
  day: number,
  month: number,
  year: string | undefined,
  now: Date,
  time: TimeOfDay,
  direction: "past" | "future",
): Day | undefined {
  if (year !== undefined) return realDay(Number(year), month, day);
  // 29 Feb may be up to eight years away.
  for (let step = 0; step <= 8; step += 1) {
    const tried = now.getFullYear() + (direction === "past" ? -step : step);
    const found = realDay(tried, month, day);
    if (found === undefined) continue;
    const date = dateOf(found, time);
    if (direction === "past" ? isPast(date, now) : date.getTime() >= now.getTime()) return found;
  }
  return undefined;
}

function momentOf(day: Day, time: TimeOfDay): TimeReading {
  const date = dateOf(day, time);
  if (date.getHours() !== time.hours || date.getMinutes() !== time.minutes) {
    const shown = formatDay(date);
    return {
      kind: "unclear",
      problem: `There is no such time on ${shown}: the clocks went forward. Write the time after.`,
    };
  }
  return moment(date);
}
