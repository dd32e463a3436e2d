import { type DateForm, possibleDateForms } from "./date-form.ts";
import {
  type FoundColumn,
  findHeaderRow,
  guessColumns,
  type ImportField,
  nameColumns,
} from "./import-columns.ts";

/** A row as the file has it. */
export interface TableRow {
  /** Line of the file where it begins, from 1. */
  readonly rowNumber: number;
  readonly cells: readonly string[];
}

export interface TableLook {
  /** Line of the file that names the columns. */
  readonly headerRow: number;
  readonly columns: readonly (FoundColumn & { readonly samples: readonly string[] })[];
  readonly guessed: Partial<Record<ImportField, string>>;
  /** How the dates of the guessed columns can be read. Several: a person has to say. */
  readonly dateForms: readonly DateForm[];
  /** The rows below the head that hold anything. */
  readonly rows: readonly TableRow[];
}

const samplesShown = 2;

/** What a table holds, as far as can be seen without a person. */
export function lookAtTable(all: readonly TableRow[], headerAt?: number): TableLook {
  const found = headerAt === undefined ? -1 : all.findIndex(({ rowNumber }) => rowNumber === headerAt);
  const headerIndex = found >= 0 ? found : findHeaderRow(all.map(({ cells }) => cells));
  const rows = all.slice(headerIndex + 1).filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  const widest = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const header = [...(all[headerIndex]?.cells ?? [])];
  while (header.length < widest) header.push("");
  const columns = nameColumns(header);
  const guessed = guessColumns(columns);
  return {
    headerRow: all[headerIndex]?.rowNumber ?? 1,
    columns: columns.map((column) => ({ ...column, samples: samplesOf(rows, column.index) })),
    guessed,
    dateForms: dateFormsOf(rows, columns, guessed),
    rows,
  };
}

/** The forms that read every date of the columns mapped to a moment. */
export function dateFormsOf(
  rows: readonly TableRow[],
  columns: readonly FoundColumn[],
  mapped: Partial<Record<string, string>>,
): DateForm[] {
  const cells = [mapped.receivedAt, mapped.backAt].flatMap((label) => {
    const column = label === undefined ? undefined : columns.find((one) => one.label === label);
    return column ? rows.map((row) => row.cells[column.index] ?? "") : [];
  });
  return possibleDateForms(cells);
}

function samplesOf(rows: readonly TableRow[], index: number): string[] {
  const samples = new Set<string>();
  for (const { cells } of rows) {
    const cell = (cells[index] ?? "").trim();
    if (cell) samples.add(cell.slice(0, 40));
    if (samples.size === samplesShown) break;
  }
  return [...samples];
}
