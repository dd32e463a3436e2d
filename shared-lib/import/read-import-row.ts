import type { ImportMapping, ImportRow } from "../contract/import.ts";
import { type FaultGroup, faultGroups } from "../words.ts";
import { momentOf, readDate, readTime } from "./date-form.ts";
import type { FoundColumn, ImportField } from "./import-columns.ts";

export type ReadRow = { readonly row: ImportRow } | { readonly refused: string };

const longest = {
  site: 300,
  street: 300,
  town: 300,
  lift: 300,
  plateNumber: 300,
  said: 4000,
  cause: 4000,
  fix: 4000,
};

/** One row of the table as a record to be brought in, or the sentence that says why it cannot be. */
export function readImportRow(
  cells: readonly string[],
  rowNumber: number,
  columns: readonly FoundColumn[],
  mapping: ImportMapping,
): ReadRow {
  const cell = (field: ImportField): string => {
    const label = mapping.columns[field];
    const column = columns.find((one) => one.label === label);
    return column ? (cells[column.index] ?? "").trim() : "";
  };
  for (const [field, most] of Object.entries(longest)) {
    if (cell(field as ImportField).length > most)
      return { refused: `${mapping.columns[field as ImportField]}: longer than ${most} characters` };
  }
  const place = {
    site: cell("site"),
    street: cell("street"),
    town: cell("town"),
    lift: cell("lift"),
    plateNumber: cell("plateNumber"),
  };
  if (!place.plateNumber && !(place.site && place.lift))
    return { refused: "which lift: neither site and lift nor a plate number" };
  if (mapping.kind === "lifts") return { row: { ...place, ...withoutCallout, rowNumber } };
  const said = cell("said");
  if (!said) return { refused: "no symptom" };
  const receivedAt = readMoment(cell("receivedAt"), cell("receivedTime"), mapping);
  if (!receivedAt)
    return { refused: momentRefusal(mapping.columns.receivedAt, cell("receivedAt"), cell("receivedTime")) };
  const back = cell("backAt");
  const backInServiceAt = back ? readMoment(back, cell("backTime"), mapping) : null;
  if (back && !backInServiceAt)
    return { refused: momentRefusal(mapping.columns.backAt, back, cell("backTime")) };
  const group = groupOf(cell("group"), mapping);
  return {
    row: {
      ...place,
      rowNumber,
      said,
      receivedAt,
      backInServiceAt,
      group,
      cause: cell("cause"),
      fix: cell("fix"),
    },
  };
}

const withoutCallout = {
  said: "",
  receivedAt: null,
  backInServiceAt: null,
  group: "not yet known",
  cause: "",
  fix: "",
} as const;

function readMoment(date: string, time: string, { dateForm }: ImportMapping): string | null {
  const written = readDate(date, dateForm);
  if (!written) return null;
  const minutes = time === "" ? null : readTime(time);
  if (time !== "" && minutes === null && written.hour === null) return null;
  return momentOf(written, minutes);
}

function momentRefusal(label: string | undefined, date: string, time: string): string {
  if (!label) return "no column says when the call came";
  return date === ""
    ? `${label}: empty`
    : `${label}: “${`${date} ${time}`.trim()}” is no date in the chosen form`;
}

function groupOf(words: string, mapping: ImportMapping): FaultGroup {
  const settled = mapping.groups[words];
  if (settled) return settled;
  return faultGroups.find((group) => group === words.toLowerCase()) ?? "not yet known";
}
