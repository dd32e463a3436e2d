import type { DateForm } from "#shared-lib/import/date-form.ts";
import type { ImportField } from "#shared-lib/import/import-columns.ts";

/** What a column is about, as the screen says it, in the order in which it is asked. */
export const fieldWords: Readonly<Record<ImportField, string>> = {
  site: "Site",
  lift: "Lift",
  plateNumber: "Plate number",
  receivedAt: "Call received",
  receivedTime: "Time of the call",
  said: "Symptom",
  cause: "Cause",
  fix: "Fix",
  backAt: "Back in service",
  backTime: "Time back in service",
  group: "Fault group",
  street: "Street",
  town: "Town",
};

export const liftFields: readonly ImportField[] = ["site", "lift", "plateNumber", "street", "town"];

export const dateFormWords: Readonly<Record<DateForm, string>> = {
  "year first": "Year, month, day: 2025-04-03",
  "day first": "Day, month, year: 03/04/2025 is 3 April",
  "month first": "Month, day, year: 03/04/2025 is 4 March",
  "serial from 1900": "Days counted by a spreadsheet from 1900",
  "serial from 1904": "Days counted by a spreadsheet from 1904",
};

export const delimiterWords = { ",": "comma", ";": "semicolon", "\t": "tab" } as const;

/** "1 row", "2 rows". */
export function count(number: number, one: string, several = `${one}s`): string {
  return `${number.toLocaleString("en-GB")} ${number === 1 ? one : several}`;
}
