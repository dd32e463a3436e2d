import { useState } from "react";
import type { SillbookError } from "#shared-lib/errors.ts";
import { exportLists, type ListInput, type ListName } from "#shared-lib/export/lists.ts";
import { listFileName, saveList, type TableForm } from "#shared-lib/export/save-list.ts";
import type { Ask } from "#shared-lib/import/bring-in-table.ts";
import { asSillbookError } from "../../as-sillbook-error.ts";
import { request } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { handOverFile } from "../../ui/hand-over-file.ts";
import "./export.css";

const ask: Ask = (operation, input) => request(operation, input);
const types: Readonly<Record<TableForm, string>> = {
  csv: "text/csv;charset=utf-8",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};
/** Fewer are there before anyone could read how far it is. */
const worthTelling = 2000;
const saving = "Saving";

interface SaveListProps<Name extends ListName> {
  readonly list: Name;
  /** What the screen asks for the list with; all of it is saved, also what is not drawn. */
  readonly input: ListInput<Name>;
  /** What is saved, for a reader: "Open callouts". Left out: the title of the list. */
  readonly what?: string;
}

/** In the head of a list: what it shows as a CSV or XLSX file. */
export function SaveList<Name extends ListName>({ list, input, what }: SaveListProps<Name>) {
  const [form, setForm] = useState<TableForm | null>(null);
  const [progress, setProgress] = useState(saving);
  const [error, setError] = useState<SillbookError>();
  const title = what ?? exportLists[list].title;
  const save = async (chosen: TableForm) => {
    if (form !== null) return;
    setForm(chosen);
    setProgress(saving);
    setError(undefined);
    try {
      const pieces: BlobPart[] = [];
      await saveList(ask, {
        list,
        input,
        form: chosen,
        writers: (await import("./table-writers.ts")).tableWriters,
        take: (piece) => void pieces.push(piece as BlobPart),
        progress: (rows, of) => setProgress(rows < worthTelling ? saving : progressWords(rows, of)),
      });
      handOverFile(new Blob(pieces, { type: types[chosen] }), listFileName(list, chosen, new Date()));
    } catch (reason) {
      setError(asSillbookError(reason));
    }
    setForm(null);
  };
  return (
    <span className="save-list">
      <span className="soft label" role="status">
        {form === null ? "Save as" : progress}
      </span>
      <Button kind="quiet" label={`CSV: save ${title}`} onPress={() => void save("csv")}>
        CSV
      </Button>
      <Button kind="quiet" label={`XLSX: save ${title}`} onPress={() => void save("xlsx")}>
        XLSX
      </Button>
      <ErrorNote error={error} />
    </span>
  );
}

function progressWords(rows: number, of: number | null): string {
  const done = rows.toLocaleString("en-GB");
  return of === null || rows >= of ? `${done} rows` : `${done} of ${of.toLocaleString("en-GB")} rows`;
}
