import { writeFile } from "node:fs/promises";
import { basename } from "node:path";
import { stringify } from "csv-stringify/sync";
import type { Envelope, OperationRequest } from "#shared-lib/contract/operation.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { guardCell } from "#shared-lib/export/cell-guard.ts";
import {
  type Ask,
  bringInTable,
  findLiftsToSettle,
  headerOf,
  mapTable,
  openQuestion,
  parseGivenMapping,
  previewTable,
  readRows,
  refusedTable,
} from "#shared-lib/import/bring-in-table.ts";
import { lookAtTable } from "#shared-lib/import/look-at-table.ts";
import { readTableFile } from "./table-file.ts";

export type TableStep = "look" | "preview" | "bring-in";

interface TableWork {
  readonly file: string;
  readonly step: TableStep;
  /** JSON as a person wrote it; what it leaves out is guessed. `headerRow` names the line of the column heads. */
  readonly mapping: unknown;
  readonly as: string | undefined;
  /** Where the refused rows go; null keeps them only in the program. */
  readonly refusedFile: string | null;
  readonly request: (request: OperationRequest) => Promise<Envelope>;
  readonly progress?: (done: number, of: number) => void;
}

const reasonsShown = 100;

/**
 * Looks at a table of old records, says what bringing it in would do, or brings it in. Answers with an envelope's value.
 * @throws SillbookError
 */
export async function workOnTable(work: TableWork): Promise<unknown> {
  const ask = asker(work);
  const { rows: all, ...table } = await readTableFile(work.file);
  const { headerRow, ...written } = (work.mapping ?? {}) as { readonly headerRow?: number };
  const look = lookAtTable(all, headerRow);
  const header = headerOf(look);
  const remembered = await ask("import.remembered", { header });
  const mapped = mapTable(look, parseGivenMapping(written), remembered.mapping);
  const { mapping, dateForms } = mapped;
  const read = readRows(look, mapping);
  const found = {
    ...table,
    headerRow: look.headerRow,
    columns: look.columns,
    rowCount: look.rows.length,
    mapping,
  };
  if (work.step === "look")
    return { ...found, dateForms, liftsToSettle: await findLiftsToSettle(ask, read, mapping) };
  const question = openQuestion(look, mapped);
  if (question) throw new SillbookError("input-invalid", question);
  if (work.step === "preview") {
    const { reasons, ...totals } = await previewTable(ask, read, mapping);
    return { ...found, ...totals, reasons: reasons.slice(0, reasonsShown) };
  }
  const { progress } = work;
  const done = await bringInTable(ask, {
    name: basename(work.file),
    header,
    mapping,
    read,
    ...(progress ? { progress } : {}),
  });
  const refusedFile = done && done.refused > 0 && work.refusedFile ? work.refusedFile : null;
  if (done && refusedFile) await writeFile(refusedFile, refusedCsv(await refusedTable(ask, done.importId)));
  return { ...done, refusedFile };
}

function refusedCsv(table: readonly (readonly string[])[]): string {
  return stringify(
    table.map((row) => row.map(guardCell)),
    { bom: true },
  );
}

/** Throws the SillbookError of a failed envelope. */
export function asker({ request, as }: Pick<TableWork, "request" | "as">): Ask {
  return async (operation, input) => {
    const envelope = await request({ operation, input, as });
    if (envelope.ok) return envelope.value as OutputOf<typeof operation>;
    throw new SillbookError(envelope.error.code, envelope.error.message, envelope.error.details);
  };
}
