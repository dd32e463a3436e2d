/** How dates are written in a column. Serial numbers are days since the epoch of a spreadsheet (ECMA-376-1:2016 18.17.4.1). */
export const dateForms = [
  "year first",
  "day first",
  "month first",
  "serial from 1900",
  "serial from 1904",
] as const;
export type DateForm = (typeof dateForms)[number];

/** A moment on the clock of the place where it was written down. `hour` is null where only the day is known. */
export interface WrittenMoment {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number | null;
  readonly minute: number;
}

const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,]+(.+))?$/;
const dayOrMonthFirst = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})(?:[T ,]+(.+))?$/;
const namedMonth = /^(\d{1,2})[-/. ]*([a-z]{3,9})\.?[-/., ]*(\d{4}|\d{2})(?:[T ,]+(.+))?$/i;
const timeForm = /^(\d{1,2})[:.h](\d{2})(?::\d{2}(?:\.\d+)?)?\s*(am|pm|a\.m\.|p\.m\.)?\s*(?:z|utc)?$/i;
const serialForm = /^\d{1,6}(?:[.,]\d+)?$/;
const months = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ");
const minutesOfDay = 24 * 60;
const dayMilliseconds = 86_400_000;
/** Serial numbers for the years 1950 to 2099: a year written alone or a running number is none. */
const serialDays = { from: 18_264, to: 73_050 };

/** A cell read in one form, or null where it does not fit that form or is no day of the calendar. */
export function readDate(cell: string, form: DateForm): WrittenMoment | null {
  const text = cell.trim();
  if (form === "serial from 1900" || form === "serial from 1904") return readSerial(text, form);
  const named = namedMonth.exec(text);
  if (named) return readNamed(named);
  const full = yearFirst.exec(text);
  if (full) return moment(Number(full[1]), Number(full[2]), Number(full[3]), full[4]);
  const short = form === "year first" ? null : dayOrMonthFirst.exec(text);
  if (!short) return null;
  const [, first, second, year, time] = short;
  const [day, month] = form === "day first" ? [first, second] : [second, first];
  return moment(fullYear(Number(year)), Number(month), Number(day), time);
}

/** A time of day such as "8:05", "08:05:30" or "8.05 pm", in minutes since midnight; null where it is none. */
export function readTime(cell: string): number | null {
  const read = timeForm.exec(cell.trim());
  if (!read) return null;
  let hour = Number(read[1]);
  const minute = Number(read[2]);
  const half = read[3]?.toLowerCase().replaceAll(".", "");
  if (half && (hour < 1 || hour > 12)) return null;
  if (half) hour = (hour % 12) + (half === "pm" ? 12 : 0);
  return hour < 24 && minute < 60 ? hour * 60 + minute : null;
}

/**
 * The forms that read most cells of a column, at least half of those that are filled; some may hold a slip of the pen.
 * Several: somebody has to say which; none: it is no column of dates.
 */
export function possibleDateForms(cells: readonly string[]): DateForm[] {
  const filled = cells.filter((cell) => cell.trim() !== "");
  const counts = dateForms.map((form) => filled.filter((cell) => readDate(cell, form) !== null).length);
  const most = Math.max(...counts);
  if (most === 0 || most < filled.length / 2) return [];
  const fits = dateForms.filter((_form, index) => counts[index] === most);
  // Where the year stands first in every cell the other forms read the same: there is nothing to ask.
  return fits.includes("year first") ? ["year first"] : fits;
}

function readSerial(text: string, form: DateForm): WrittenMoment | null {
  if (!serialForm.test(text)) return null;
  const serial = Number(text.replace(",", "."));
  if (serial < serialDays.from || serial >= serialDays.to) return null;
  const epoch = form === "serial from 1900" ? Date.UTC(1899, 11, 30) : Date.UTC(1904, 0, 1);
  const minutes = Math.round(serial * minutesOfDay);
  const day = new Date(epoch + Math.floor(minutes / minutesOfDay) * dayMilliseconds);
  const rest = minutes % minutesOfDay;
  return {
    year: day.getUTCFullYear(),
    month: day.getUTCMonth() + 1,
    day: day.getUTCDate(),
    hour: Number.isInteger(serial) ? null : Math.floor(rest / 60),
    minute: Number.isInteger(serial) ? 0 : rest % 60,
  };
}

function readNamed(read: RegExpExecArray): WrittenMoment | null {
  const month = months.indexOf((read[2] ?? "").slice(0, 3).toLowerCase()) + 1;
  return month === 0 ? null : moment(fullYear(Number(read[3])), month, Number(read[1]), read[4]);
}

function fullYear(year: number): number {
  return year >= 100 ? year : year < 70 ? 2000 + year : 1900 + year;
}

function moment(year: number, month: number, day: number, time: string | undefined): WrittenMoment | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day || year < 1900) return null;
  if (time === undefined || time.trim() === "") return { year, month, day, hour: null, minute: 0 };
  const minutes = readTime(time);
  return minutes === null ? null : { year, month, day, hour: Math.floor(minutes / 60), minute: minutes % 60 };
}

/** Noon, so that no time zone moves a day without a time to its neighbour. */
const hourOfBareDay = 12;

/** The moment on this machine's clock, as ISO 8601 UTC; `time` (minutes since midnight) from a column of its own. */
export function momentOf(written: WrittenMoment, time: number | null): string {
  const hour = written.hour ?? (time === null ? hourOfBareDay : Math.floor(time / 60));
  const minute = written.hour === null && time !== null ? time % 60 : written.minute;
  return new Date(written.year, written.month - 1, written.day, hour, minute).toISOString();
}
