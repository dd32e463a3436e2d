/** What a column of an old table can be about, with the words people put at its head. */
export const importFields = {
  site: ["site", "building", "premises", "property", "location", "house", "customer site"],
  street: ["street", "address", "road"],
  town: ["town", "city", "place"],
  lift: ["lift", "elevator", "unit", "lift name", "lift no", "lift number", "elevator no", "car"],
  plateNumber: ["plate number", "plate", "serial number", "serial no", "serial", "works number", "lift id"],
  receivedAt: [
    "received",
    "call received",
    "reported",
    "date",
    "call date",
    "date reported",
    "date time",
    "logged",
    "opened",
    "report date",
  ],
  receivedTime: ["time", "call time", "time received", "time reported"],
  backAt: [
    "back in service",
    "completed",
    "closed",
    "finished",
    "resolved",
    "restored",
    "date closed",
    "end",
    "ended",
  ],
  backTime: ["time closed", "time completed", "end time", "time back"],
  said: [
    "symptom",
    "fault",
    "complaint",
    "reported fault",
    "problem",
    "description",
    "said",
    "what was said",
    "fault reported",
  ],
  cause: ["cause", "reason", "found", "diagnosis", "root cause"],
  fix: ["fix", "action", "work done", "remedy", "repair", "done", "resolution", "action taken"],
  group: ["fault group", "group", "category", "fault type", "type"],
} as const;
export type ImportField = keyof typeof importFields;
export const importFieldNames = Object.keys(importFields) as ImportField[];

export interface FoundColumn {
  /** Place in the row, from 0. */
  readonly index: number;
  /** The words at its head; a second column of the same name is "Date (2)", one without is "column 4". */
  readonly label: string;
}

const rowsLookedAt = 20;

/** Which row names the columns: the one with most known words, below a title too; else the first with most cells. */
export function findHeaderRow(rows: readonly (readonly string[])[]): number {
  const first = rows.slice(0, rowsLookedAt);
  const known = first.map((cells) => cells.filter((cell) => guessField(cell) !== null).length);
  const most = Math.max(0, ...known);
  if (most > 0) return known.indexOf(most);
  const filled = first.map((cells) => cells.filter((cell) => cell.trim() !== "").length);
  return Math.max(0, filled.indexOf(Math.max(0, ...filled)));
}

export function nameColumns(header: readonly string[]): FoundColumn[] {
  const seen = new Map<string, number>();
  return header.map((cell, index) => {
    const words = cell.replace(/\s+/g, " ").trim() || `column ${index + 1}`;
    const count = (seen.get(words.toLowerCase()) ?? 0) + 1;
    seen.set(words.toLowerCase(), count);
    return { index, label: count === 1 ? words : `${words} (${count})` };
  });
}

/** Proposes for each field the column whose head says it, each column once. */
export function guessColumns(columns: readonly FoundColumn[]): Partial<Record<ImportField, string>> {
  const guessed: Partial<Record<ImportField, string>> = {};
  for (const { label } of columns) {
    const field = guessField(label);
    if (field && guessed[field] === undefined) guessed[field] = label;
  }
  return guessed;
}

function guessField(head: string): ImportField | null {
  const words = head
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
  const exact = importFieldNames.find((field) => (importFields[field] as readonly string[]).includes(words));
  return exact ?? null;
}
