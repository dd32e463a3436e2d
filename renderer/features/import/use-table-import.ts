import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { ImportMapping } from "#shared-lib/contract/import.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import {
  type Ask,
  bringInTable,
  findLiftsToSettle,
  headerOf,
  type ImportTotals,
  type LiftToSettle,
  type Mapped,
  mapTable,
  openQuestion,
  previewTable,
  readRows,
} from "#shared-lib/import/bring-in-table.ts";
import { lookAtTable, type TableLook } from "#shared-lib/import/look-at-table.ts";
import type { TableFile } from "#shared-lib/import/table-file.ts";
import { asSillbookError } from "../../as-sillbook-error.ts";
import { request } from "../../shell-client.ts";
import { readChosenFile } from "./table-readers.ts";

const ask: Ask = (operation, input) => request(operation, input);

interface ChosenTable {
  readonly name: string;
  readonly table: TableFile;
  readonly remembered: ImportMapping | null;
}

export type Preview = Awaited<ReturnType<typeof previewTable>>;
export interface Checked {
  readonly preview: Preview;
  readonly liftsToSettle: readonly LiftToSettle[];
}
export type Finished = ImportTotals & { readonly importId: string };

/** One table on its way into the records: chosen, settled with a person, checked, brought in. */
export function useTableImport() {
  const [error, setError] = useState<SillbookError>();
  const settling = useSettledTable(setError);
  const { chosen, look, mapped, question } = settling;
  const checked = useChecked(look, mapped, question, setError);
  const bringing = useBringingIn(settling, setError);
  const choose = useCallback(
    async (file: File) => {
      setError(undefined);
      bringing.begin();
      await settling.choose(file);
    },
    [bringing.begin, settling.choose],
  );
  return { ...settling, ...bringing, chosen, checked, error, choose };
}

export type TableImport = ReturnType<typeof useTableImport>;
type OnError = (error: SillbookError) => void;

/** The table that was chosen, and what is settled about it so far. */
function useSettledTable(onError: OnError) {
  const [chosen, setChosen] = useState<ChosenTable | null>(null);
  const [given, setGiven] = useState<Partial<ImportMapping>>({});
  const look = useMemo(() => (chosen ? lookAtTable(chosen.table.rows) : null), [chosen]);
  const mapped = useMemo(
    () => (look ? mapTable(look, given, chosen?.remembered ?? null) : null),
    [look, given, chosen?.remembered],
  );
  const choose = useCallback(
    async (file: File) => {
      setGiven({});
      setChosen(null);
      try {
        const table = await readChosenFile(file);
        const header = headerOf(lookAtTable(table.rows));
        const { mapping } = await ask("import.remembered", { header });
        setChosen({ name: file.name, table, remembered: mapping });
      } catch (reason) {
        onError(asSillbookError(reason));
      }
    },
    [onError],
  );
  const settle = useCallback((answer: Partial<ImportMapping>) => {
    setGiven((before) => ({ ...before, ...answer }));
  }, []);
  const letGo = useCallback(() => setChosen(null), []);
  const question = look && mapped ? openQuestion(look, mapped) : null;
  return { chosen, look, mapped, question, choose, settle, letGo };
}

/** What bringing it in would do. It follows every answer; one that was overtaken is ignored. */
function useChecked(
  look: TableLook | null,
  mapped: Mapped | null,
  question: string | null,
  onError: OnError,
): Checked | null {
  const [checked, setChecked] = useState<Checked | null>(null);
  useEffect(() => {
    setChecked(null);
    if (!look || !mapped || question !== null) return;
    let overtaken = false;
    const read = readRows(look, mapped.mapping);
    Promise.all([previewTable(ask, read, mapped.mapping), findLiftsToSettle(ask, read, mapped.mapping)]).then(
      ([preview, liftsToSettle]) => {
        if (!overtaken) setChecked({ preview, liftsToSettle });
      },
      (reason: unknown) => {
        if (!overtaken) onError(asSillbookError(reason));
      },
    );
    return () => {
      overtaken = true;
    };
  }, [look, mapped, question, onError]);
  return checked;
}

function useBringingIn(
  { chosen, look, mapped, letGo }: ReturnType<typeof useSettledTable>,
  onError: OnError,
) {
  const [progress, setProgress] = useState<{ readonly done: number; readonly of: number } | null>(null);
  const [finished, setFinished] = useState<Finished | null>(null);
  const [wasCancelled, setWasCancelled] = useState(false);
  const cancelled = useRef(false);
  const begin = useCallback(() => {
    setFinished(null);
    setWasCancelled(false);
  }, []);
  const bringIn = useCallback(async () => {
    if (!chosen || !look || !mapped) return;
    cancelled.current = false;
    setProgress({ done: 0, of: look.rows.length });
    try {
      const done = await bringInTable(ask, {
        name: chosen.name,
        header: headerOf(look),
        mapping: mapped.mapping,
        read: readRows(look, mapped.mapping),
        progress: (rows, of) => setProgress({ done: rows, of }),
        isCancelled: () => cancelled.current,
      });
      letGo();
      setFinished(done);
      setWasCancelled(done === null);
    } catch (reason) {
      onError(asSillbookError(reason));
    } finally {
      setProgress(null);
    }
  }, [chosen, look, mapped, letGo, onError]);
  const cancel = useCallback(() => {
    cancelled.current = true;
  }, []);
  return { progress, finished, wasCancelled, begin, bringIn, cancel };
}
