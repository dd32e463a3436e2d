import {
  type ImportMapping,
  type ImportRow,
  importMappingSchema,
  type RefusedRow,
} from "../contract/import.ts";
import type { InputOf, OperationName, OutputOf } from "../contract/operations.ts";
import { SillbookError } from "../errors.ts";
import type { DateForm } from "./date-form.ts";
import { dateFormsOf, type TableLook, type TableRow } from "./look-at-table.ts";
import { readImportRow } from "./read-import-row.ts";

/** Asks the program: the same for a page and for the command line. Throws SillbookError. */
export type Ask = <Name extends OperationName>(
  operation: Name,
  input: InputOf<Name>,
) => Promise<OutputOf<Name>>;

export interface Mapped {
  readonly mapping: ImportMapping;
  /** How the dates of the mapped columns can be read. */
  readonly dateForms: readonly DateForm[];
  /** The same where nobody has settled which. */
  readonly openDateForms: readonly DateForm[];
}

export interface ReadRows {
  readonly rows: readonly { readonly row: ImportRow; readonly cells: readonly string[] }[];
  readonly refused: readonly RefusedRow[];
}

export interface ImportTotals {
  added: number;
  duplicates: number;
  refused: number;
  newSites: number;
  newLifts: number;
}

export interface LiftToSettle {
  /** As the table names it: the key of the decision in the mapping. */
  readonly words: string;
  readonly couldBe: readonly { readonly id: string; readonly title: string }[];
}

const rowsAtOnce = 500;

export function headerOf(look: TableLook): string[] {
  return look.columns.map(({ label }) => label);
}

/**
 * What a person settled, else what was used for such a table before, else what the heads of the columns say. A form of
 * dates that was used before counts only while it reads this table.
 * @param given what the person settled; other fields are left out
 */
export function mapTable(
  look: TableLook,
  given: Partial<ImportMapping>,
  remembered: ImportMapping | null,
): Mapped {
  const columns = given.columns ?? remembered?.columns ?? look.guessed;
  const dateForms = dateFormsOf(look.rows, look.columns, columns);
  const before = remembered && dateForms.includes(remembered.dateForm) ? remembered.dateForm : undefined;
  const dateForm = given.dateForm ?? before ?? dateForms[0] ?? "year first";
  const isOpen = dateForms.length > 1 && given.dateForm === undefined && before === undefined;
  const mapping = importMappingSchema.parse({ ...remembered, ...given, columns, dateForm });
  return { mapping, dateForms, openDateForms: isOpen ? dateForms : [] };
}

/** The question that has to be answered before anything can be brought in, or null. */
export function openQuestion(look: TableLook, { mapping, openDateForms }: Mapped): string | null {
  const labels = new Set(headerOf(look));
  for (const [field, label] of Object.entries(mapping.columns)) {
    if (label !== undefined && !labels.has(label))
      return `The mapping of ${field}: the table has no column “${label}”.`;
  }
  if (mapping.kind === "lifts") return null;
  if (!mapping.columns.receivedAt) return "Which column says when the call came (receivedAt)?";
  if (!mapping.columns.said) return "Which column holds the symptom (said)?";
  return openDateForms.length > 0
    ? `The dates can be read in several ways (${openDateForms.join(", ")}). Say which (dateForm).`
    : null;
}

export function readRows(look: TableLook, mapping: ImportMapping): ReadRows {
  const rows: { row: ImportRow; cells: TableRow["cells"] }[] = [];
  const refused: RefusedRow[] = [];
  for (const { rowNumber, cells } of look.rows) {
    const read = readImportRow(cells, rowNumber, look.columns, mapping);
    if ("row" in read) rows.push({ row: read.row, cells });
    else refused.push({ rowNumber, reason: read.refused, cells: [...cells] });
  }
  return { rows, refused };
}

/** Lifts of the table that are on the books under no such name and that nobody has settled. */
export async function findLiftsToSettle(
  ask: Ask,
  { rows }: ReadRows,
  mapping: ImportMapping,
): Promise<LiftToSettle[]> {
  const distinct = new Map(
    rows.map(({ row }) => [`${row.site}/${row.lift}/${row.plateNumber}`.toLowerCase(), row]),
  );
  const open: LiftToSettle[] = [];
  for (const part of partsOf([...distinct.values()])) {
    const lifts = part.map(({ site, lift, plateNumber }) => ({ site, lift, plateNumber }));
    const matched = await ask("import.matchLifts", { lifts });
    open.push(...matched.lifts.filter(({ liftId, words }) => liftId === null && !mapping.lifts[words]));
  }
  return open;
}

export async function previewTable(
  ask: Ask,
  { rows, refused }: ReadRows,
  { kind, lifts, addLifts }: ImportMapping,
): Promise<
  ImportTotals & { readonly reasons: readonly { readonly rowNumber: number; readonly reason: string }[] }
> {
  const totals = noTotals(refused.length);
  const reasons = refused.map(({ rowNumber, reason }) => ({ rowNumber, reason }));
  for (const part of partsOf(rows)) {
    const counts = await ask("import.preview", { kind, lifts, addLifts, rows: part.map(({ row }) => row) });
    addUp(totals, counts);
    reasons.push(...counts.refused);
  }
  return { ...totals, reasons: reasons.sort((one, other) => one.rowNumber - other.rowNumber) };
}

export interface BringIn {
  readonly name: string;
  readonly header: readonly string[];
  readonly mapping: ImportMapping;
  readonly read: ReadRows;
  /** Called after each part. */
  readonly progress?: (done: number, of: number) => void;
  /** True ends it: what was brought in so far is taken back, so that nothing half done is left. */
  readonly isCancelled?: () => boolean;
}

/** Brings a table in, a part at a time; each part is on the disk when the next begins. Null where it was cancelled. */
export async function bringInTable(
  ask: Ask,
  { name, header, mapping, read, progress, isCancelled }: BringIn,
): Promise<(ImportTotals & { readonly importId: string }) | null> {
  const { importId } = await ask("import.begin", { name, header: [...header], mapping });
  const totals = noTotals(read.refused.length);
  const settling = { importId, kind: mapping.kind, lifts: mapping.lifts, addLifts: mapping.addLifts };
  for (const part of partsOf(read.refused))
    await ask("import.bringIn", { ...settling, rows: [], refused: [...part] });
  const of = read.rows.length + read.refused.length;
  let done = read.refused.length;
  for (const part of partsOf(read.rows)) {
    if (isCancelled?.()) {
      await takeBackImport(ask, importId);
      return null;
    }
    const rows = part.map(({ row }) => row);
    addUp(
      totals,
      await ask("import.bringIn", { ...settling, rows, cells: part.map(({ cells }) => [...cells]) }),
    );
    done += part.length;
    progress?.(done, of);
  }
  return { importId, ...totals };
}

/** Takes an import back as a whole. Returns how many records stay because somebody has worked with them since. */
export async function takeBackImport(
  ask: Ask,
  importId: string,
  progress?: (left: number) => void,
): Promise<number> {
  for (;;) {
    const { left, kept } = await ask("import.undo", { importId });
    progress?.(left);
    if (left === 0) return kept;
  }
}

/** The refused rows under the heads they came with, and why in a last column, to be corrected and brought again. */
export async function refusedTable(ask: Ask, importId: string): Promise<string[][]> {
  const table: string[][] = [];
  for (let after = 0; ; ) {
    const { header, rows } = await ask("import.refused", { importId, after });
    if (table.length === 0) table.push([...header, "Refused because"]);
    if (rows.length === 0) return table;
    for (const { cells, reason } of rows)
      table.push([...header.map((_label, at) => cells[at] ?? ""), reason]);
    after = rows.at(-1)?.rowNumber ?? after;
  }
}

function noTotals(refused: number): ImportTotals {
  return { added: 0, duplicates: 0, refused, newSites: 0, newLifts: 0 };
}

function addUp(totals: ImportTotals, counts: OutputOf<"import.bringIn">): void {
  totals.added += counts.added;
  totals.duplicates += counts.duplicates;
  totals.refused += counts.refused.length;
  totals.newSites += counts.newSites;
  totals.newLifts += counts.newLifts;
}

function* partsOf<Item>(items: readonly Item[]): Generator<readonly Item[]> {
  for (let from = 0; from < items.length; from += rowsAtOnce) yield items.slice(from, from + rowsAtOnce);
}

/** What a person wrote as JSON; fields that are left out stay open. @throws SillbookError input-invalid */
export function parseGivenMapping(written: unknown): Partial<ImportMapping> {
  if (typeof written !== "object" || written === null) return {};
  const parsed = importMappingSchema.partial().safeParse(written);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    throw new SillbookError(
      "input-invalid",
      `The mapping: ${issue?.path.join(".")}: ${issue?.message}. Nothing was changed.`,
    );
  }
  // Zod fills in defaults: only what was written settles anything.
  return Object.fromEntries(Object.entries(parsed.data).filter(([name]) => name in written));
}
