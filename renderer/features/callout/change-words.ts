import { formatDayAndTime, formatStoredDay } from "#shared-lib/format.ts";

/** Names of stored fields as people say them; a field that is not here is only bookkeeping and is not shown. */
const fieldWords: { readonly [field: string]: string } = {
  said: "What the caller says",
  faultGroup: "Fault group",
  inside: "Anyone inside",
  insideCount: "How many inside",
  insideCondition: "How they are",
  caller: "Caller",
  callBack: "Call back on",
  displayReading: "Display reading",
  liftId: "Lift",
  liftWords: "Lift in the caller’s words",
  landingId: "Landing",
  engineerId: "With",
  receivedAt: "Received",
  ending: "How it ended",
  endingReason: "Reason",
  awaits: "Awaits",
  returnVisitOn: "Return visit on",
  endedAt: "Ended",
};

export interface ChangedField {
  readonly field: string;
  readonly before: unknown;
  readonly after: unknown;
}

export interface ShownChange {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

/** The changes a person can read; ids become names, and a record that has no name here is called so. */
export function shownChanges(
  fields: readonly ChangedField[],
  nameOf: (id: string) => string | undefined,
): readonly ShownChange[] {
  return fields.flatMap(({ field, before, after }) => {
    const name = fieldWords[field];
    if (name === undefined) return [];
    const shown = { name, before: valueWords(before, nameOf), after: valueWords(after, nameOf) };
    return shown.before === shown.after ? [] : [shown];
  });
}

function valueWords(value: unknown, nameOf: (id: string) => string | undefined): string {
  if (value === null || value === undefined || value === "") return "empty";
  if (typeof value === "boolean") return value ? "yes" : "no";
  const text = String(value);
  if (/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(text)) return nameOf(text) ?? "another record";
  if (/^\d{4}-\d{2}-\d{2}T/.test(text)) return formatDayAndTime(text);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return formatStoredDay(text);
  return text;
}
