/**
 * How numbers and times are written everywhere: real minus sign, decimal point, unit after a no-break space, months
 * as words. Moments are ISO 8601 strings or Dates and are shown in the local time of the machine.
 */
export type Moment = string | Date;

/** Keeps a number and its unit on one line. */
export const noBreakSpace = "\u00a0";
export const minusSign = "\u2212";

export const monthNames = [
  "Jan",
  "Feb",
  "Mar",
  "Apr",
  "May",
  "Jun",
  "Jul",
  "Aug",
  "Sep",
  "Oct",
  "Nov",
  "Dec",
] as const;

function toDate(moment: Moment): Date {
  const date = typeof moment === "string" ? new Date(moment) : moment;
  if (Number.isNaN(date.getTime())) throw new RangeError(`Not a moment: ${String(moment)}`);
  return date;
}

const twoDigits = (value: number): string => String(value).padStart(2, "0");

/** "08:52" */
export function formatTime(moment: Moment): string {
  const date = toDate(moment);
  return `${twoDigits(date.getHours())}:${twoDigits(date.getMinutes())}`;
}

/** "17 Nov" */
export function formatDay(moment: Moment): string {
  const date = toDate(moment);
  return `${date.getDate()}${noBreakSpace}${monthNames[date.getMonth()]}`;
}

/** "17 Nov 2026" */
export function formatDate(moment: Moment): string {
  return `${formatDay(moment)}${noBreakSpace}${toDate(moment).getFullYear()}`;
}

/** "17 Nov 2026, 08:52" */
export function formatDayAndTime(moment: Moment): string {
  return `${formatDate(moment)}, ${formatTime(moment)}`;
}

/** The shortest that is clear from `now`: "08:52" today, "16 Nov, 08:52" this year, else with the year. */
export function formatSince(moment: Moment, now: Moment): string {
  const date = toDate(moment);
  const today = toDate(now);
  const sameYear = date.getFullYear() === today.getFullYear();
  if (sameYear && formatDay(date) === formatDay(today)) return formatTime(date);
  return sameYear ? `${formatDay(date)}, ${formatTime(date)}` : formatDayAndTime(date);
}

/** A day as stored, "2026-11-17", without any time zone: "17 Nov 2026". */
export function formatStoredDay(day: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day);
  const month = monthNames[Number(parts?.[2]) - 1];
  if (parts === null || month === undefined) throw new RangeError(`Not a day: ${day}`);
  return `${Number(parts[3])}${noBreakSpace}${month}${noBreakSpace}${parts[1]}`;
}

const minute = 60_000;
const hour = 60 * minute;
const day = 24 * hour;

/** How long something waits, in whole minutes, rounded down: "6 min", "1 h 50", "2 d 4 h". Below zero: "0 min". */
export function formatWait(milliseconds: number): string {
  const wait = Math.max(0, milliseconds);
  if (wait < hour) return `${Math.floor(wait / minute)}${noBreakSpace}min`;
  if (wait < day) {
    const minutes = Math.floor((wait % hour) / minute);
    return `${Math.floor(wait / hour)}${noBreakSpace}h${noBreakSpace}${twoDigits(minutes)}`;
  }
  const hours = Math.floor((wait % day) / hour);
  return `${Math.floor(wait / day)}${noBreakSpace}d${noBreakSpace}${hours}${noBreakSpace}h`;
}

/** "3.0", "−17": a fixed number of decimals, never "−0". */
export function formatNumber(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) throw new RangeError(`Not a finite number: ${value}`);
  const digits = Math.abs(value).toFixed(decimals);
  const isZero = Number(digits) === 0;
  return value < 0 && !isZero ? `${minusSign}${digits}` : digits;
}

/** With its sign always: "+8.80", "−1.30", "±0.00". For levels and deviations. */
export function formatSigned(value: number, decimals = 0): string {
  const digits = formatNumber(value, decimals);
  if (Number(digits.replace(minusSign, "-")) === 0) return `±${digits}`;
  return value > 0 ? `+${digits}` : digits;
}

/** A landing's level in metres: "+8.80", "±0.00" at the reference landing. */
export function formatLevel(metres: number): string {
  return formatSigned(metres, 2);
}

/** "17 mm", "0.30 m/s": number, no-break space, unit. */
export function formatQuantity(value: number, unit: string, decimals = 0): string {
  return `${formatNumber(value, decimals)}${noBreakSpace}${unit}`;
}

/** "±5 mm" */
export function formatTolerance(value: number, unit: string, decimals = 0): string {
  return `±${formatNumber(Math.abs(value), decimals)}${noBreakSpace}${unit}`;
}

/** "3 of 9": fractions of few are never percentages. */
export function formatFraction(part: number, whole: number): string {
  return `${formatNumber(part)}${noBreakSpace}of${noBreakSpace}${formatNumber(whole)}`;
}
