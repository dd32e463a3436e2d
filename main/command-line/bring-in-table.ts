import { writeFile } from "node:fs/promises";
import { stringify } from "csv-stringify/sync";
import {
  type ImportMapping,
  type ImportRow,
  importMappingSchema,
  type RefusedRow,
} from "#shared-lib/contract/import.ts";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { DateForm } from "#shared-lib/import/date-form.ts";
import { dateFormsOf, lookAtTable, type TableLook, type TableRow } from "#shared-lib/import/look-at-table.ts";
import { readImportRow } from "#shared-lib/import/read-import-row.ts";
import { readTableFile } from "./table-file.ts";

export type TableStep = "look" | "preview" | "bring-in";

interface TableWork {
  readonly file: string;
  readonly step: TableStep;
  /** JSON as a person wrote it; what it leaves out is guessed. */
  readonly mapping: unknown;
  readonly as: string | undefined;
  /** Where the refused rows go; null keeps them only in the program. */
  readonly refusedFile: string | null;
  readonly request: (request: OperationRequest) => Promise<Envelope>;
  /** Called after each part. */
  readonly progress?: (done: number, of: number) => void;
}

interface Mapped {
  readonly mapping: ImportMapping;
  /** How the dates of the mapped columns can be read. */
  readonly dateForms: readonly DateForm[];
  /** The same where nobody has settled which. */
  readonly openDateForms: readonly DateForm[];
}

const rowsAtOnce = 500;

interface Totals {
  added: number;
  duplicates: number;
  refused: number;
  newSites: number;
  newLifts: number;
}

/** Looks at a table of old records, says what bringing it in would do, or brings it in. Answers with an envelope's value. */
export async function bringInTable(work: TableWork): Promise<unknown> {
  const { rows: all, ...table } = await readTableFile(work.file);
  const headerAt = (work.mapping as { headerRow?: number } | null)?.headerRow;
  const look = lookAtTable(all, headerAt);
  const header = look.columns.map(({ label }) => label);
  const remembered = await ask(work, "import.remembered", { header });
  const mapped = mappingOf(work, look, remembered.mapping);
  const { mapping, dateForms } = mapped;
  const { rows, refused } = readRows(look, mapping);
  const found = {
    ...table,
    headerRow: look.headerRow,
    columns: look.columns,
    rowCount: look.rows.length,
    mapping,
  };
  if (work.step === "look") {
    return { ...found, dateForms, liftsToSettle: await liftsToSettle(work, rows, mapping) };
  }
  refuseOpenQuestions(look, mapped);
  if (work.step === "preview") return { ...found, ...(await preview(work, rows, refused, mapping)) };
  return bringIn(work, { header, mapping, rows, refused });
}

/**
 * What the person settled, else what was used for such a table before, else what the heads of the columns say. A form of
 * dates that was used before counts only while it reads this table.
 */
function mappingOf(work: TableWork, look: TableLook, remembered: ImportMapping | null): Mapped {
  const given = importMappingSchema.partial().safeParse(withoutHeaderRow(work.mapping));
  if (!given.success) {
    const [issue] = given.error.issues;
    throw new SillbookError(
      "input-invalid",
      `The mapping: ${issue?.path.join(".")}: ${issue?.message}. Nothing was changed.`,
    );
  }
  const settled = onlyGiven(work.mapping, given.data);
  const columns = settled.columns ?? remembered?.columns ?? look.guessed;
  const dateForms = dateFormsOf(look.rows, look.columns, columns);
  const before = remembered && dateForms.includes(remembered.dateForm) ? remembered.dateForm : undefined;
  const dateForm = settled.dateForm ?? before ?? dateForms[0] ?? "year first";
  const isOpen = dateForms.length > 1 && settled.dateForm === undefined && before === undefined;
  const mapping = importMappingSchema.parse({ ...remembered, ...settled, columns, dateForm });
  return { mapping, dateForms, openDateForms: isOpen ? dateForms : [] };
}

/** Zod fills in defaults: only what the person wrote settles anything. */
function onlyGiven(written: unknown, parsed: Partial<ImportMapping>): Partial<ImportMapping> {
  const names = new Set(Object.keys(typeof written === "object" && written !== null ? written : {}));
  return Object.fromEntries(Object.entries(parsed).filter(([name]) => names.has(name)));
}

function withoutHeaderRow(written: unknown): unknown {
  if (typeof written !== "object" || written === null) return {};
  const { headerRow: _headerRow, ...mapping } = written as { headerRow?: unknown };
  return mapping;
}

function refuseOpenQuestions(look: TableLook, { mapping, openDateForms }: Mapped): void {
  const labels = new Set(look.columns.map(({ label }) => label));
  for (const [field, label] of Object.entries(mapping.columns)) {
    if (label !== undefined && !labels.has(label))
      throw new SillbookError(
        "input-invalid",
        `The mapping of ${field}: the table has no column “${label}”.`,
      );
  }
  if (mapping.kind === "lifts") return;
  if (!mapping.columns.receivedAt || !mapping.columns.said)
    throw new SillbookError("input-invalid", "The mapping has to name the columns receivedAt and said.");
  if (openDateForms.length > 0)
    throw new SillbookError(
      "input-invalid",
      `The dates can be read in several ways (${openDateForms.join(", ")}). Say which in the mapping: "dateForm".`,
    );
}

function readRows(
  look: TableLook,
  mapping: ImportMapping,
): { rows: { row: ImportRow; cells: TableRow["cells"] }[]; refused: RefusedRow[] } {
  const rows: { row: ImportRow; cells: TableRow["cells"] }[] = [];
  const refused: RefusedRow[] = [];
  for (const { rowNumber, cells } of look.rows) {
    const read = readImportRow(cells, rowNumber, look.columns, mapping);
    if ("row" in read) rows.push({ row: read.row, cells });
    else refused.push({ rowNumber, reason: read.refused, cells: [...cells] });
  }
  return { rows, refused };
}

async function liftsToSettle(work: TableWork, rows: readonly { row: ImportRow }[], mapping: ImportMapping) {
  const distinct = new Map(
    rows.map(({ row }) => [`${row.site}/${row.lift}/${row.plateNumber}`.toLowerCase(), row]),
  );
  const open: OutputOf<"import.matchLifts">["lifts"] = [];
  for (const part of partsOf([...distinct.values()], rowsAtOnce)) {
    const lifts = part.map(({ site, lift, plateNumber }) => ({ site, lift, plateNumber }));
    const matched = await ask(work, "import.matchLifts", { lifts });
    open.push(...matched.lifts.filter(({ liftId, words }) => liftId === null && !mapping.lifts[words]));
  }
  return open.map(({ words, couldBe }) => ({
    words,
    couldBe: couldBe.map(({ id, title }) => ({ liftId: id, title })),
  }));
}

async function preview(
  work: TableWork,
  rows: readonly { row: ImportRow }[],
  refused: readonly RefusedRow[],
  { kind, lifts, addLifts }: ImportMapping,
) {
  const totals: Totals = { added: 0, duplicates: 0, refused: refused.length, newSites: 0, newLifts: 0 };
  const reasons: { rowNumber: number; reason: string }[] = refused.map(({ rowNumber, reason }) => ({
    rowNumber,
    reason,
  }));
  for (const part of partsOf(rows, rowsAtOnce)) {
    const counts = await ask(work, "import.preview", {
      kind,
      lifts,
      addLifts,
      rows: part.map(({ row }) => row),
    });
    addUp(totals, counts);
    reasons.push(...counts.refused);
  }
  return { ...totals, reasons: reasons.slice(0, 100) };
}

async function bringIn(
  work: TableWork,
  read: {
    readonly header: readonly string[];
    readonly mapping: ImportMapping;
    readonly rows: readonly { row: ImportRow; cells: TableRow["cells"] }[];
    readonly refused: readonly RefusedRow[];
  },
) {
  const { header, mapping, rows, refused } = read;
  const name = work.file.split(/[\\/]/).at(-1) ?? work.file;
  const { importId } = await ask(work, "import.begin", { name, header: [...header], mapping });
  const totals: Totals = { added: 0, duplicates: 0, refused: refused.length, newSites: 0, newLifts: 0 };
  const settling = { importId, kind: mapping.kind, lifts: mapping.lifts, addLifts: mapping.addLifts };
  for (const part of partsOf(refused, rowsAtOnce))
    await ask(work, "import.bringIn", { ...settling, rows: [], refused: [...part] });
  let done = refused.length;
  for (const part of partsOf(rows, rowsAtOnce)) {
    addUp(
      totals,
      await ask(work, "import.bringIn", {
        ...settling,
        rows: part.map(({ row }) => row),
        cells: part.map(({ cells }) => [...cells]),
      }),
    );
    done += part.length;
    work.progress?.(done, rows.length + refused.length);
  }
  const refusedFile =
    totals.refused > 0 && work.refusedFile ? await writeRefused(work, importId, header) : null;
  return { importId, ...totals, refusedFile };
}

function addUp(totals: Totals, counts: OutputOf<"import.bringIn">): void {
  totals.added += counts.added;
  totals.duplicates += counts.duplicates;
  totals.refused += counts.refused.length;
  totals.newSites += counts.newSites;
  totals.newLifts += counts.newLifts;
}

/** The refused rows under the heads they came with, so that they can be corrected and brought again, and why in a last column. */
async function writeRefused(work: TableWork, importId: string, header: readonly string[]): Promise<string> {
  const rows: string[][] = [[...header, "Refused because"]];
  for (let after = 0; ; ) {
    const part = await ask(work, "import.refused", { importId, after });
    if (part.rows.length === 0) break;
    for (const { cells, reason } of part.rows)
      rows.push([...header.map((_label, index) => cells[index] ?? ""), reason]);
    after = part.rows.at(-1)?.rowNumber ?? after;
  }
  // A spreadsheet takes a cell that begins with one of these signs for a formula: an apostrophe makes it text.
  await writeFile(work.refusedFile as string, stringify(rows, { bom: true, escape_formulas: true }));
  return work.refusedFile as string;
}

function* partsOf<Item>(items: readonly Item[], atOnce: number): Generator<readonly Item[]> {
  for (let from = 0; from < items.length; from += atOnce) yield items.slice(from, from + atOnce);
}

async function ask<Name extends OperationName>(
  work: TableWork,
  operation: Name,
  input: InputOf<Name>,
): Promise<OutputOf<Name>> {
  const envelope = await work.request({ operation, input, as: work.as });
  if (envelope.ok) return envelope.value as OutputOf<Name>;
  throw new SillbookError(envelope.error.code, envelope.error.message, envelope.error.details);
}
