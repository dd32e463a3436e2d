import { useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { formatDate, formatTime } from "#shared-lib/format.ts";
import { refusedTable, takeBackImport } from "#shared-lib/import/bring-in-table.ts";
import { asSillbookError } from "../../as-sillbook-error.ts";
import { request } from "../../shell-client.ts";
import { Button } from "../../ui/button.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { useRead } from "../../use-read.ts";
import { count } from "./import-words.ts";
import { saveTable } from "./table-readers.ts";

type Import = OutputOf<"import.list">["imports"][number];

/** What was brought in so far; each can be taken back as a whole. */
export function ImportsPart() {
  const list = useRead("import.list", {});
  const [chosen, setChosen] = useState<Import | null>(null);
  const [error, setError] = useState<SillbookError>();
  const [kept, setKept] = useState<number | null>(null);
  const imports = list.value?.imports ?? [];

  async function saveRefused({ importId, name }: Import): Promise<void> {
    try {
      saveTable(await refusedTable(request, importId), `${name.replace(/\.[^.]*$/, "")} refused.csv`);
    } catch (reason) {
      setError(asSillbookError(reason));
    }
  }

  async function takeBack({ importId }: Import): Promise<void> {
    setChosen(null);
    try {
      setKept(await takeBackImport(request, importId));
    } catch (reason) {
      setError(asSillbookError(reason));
    }
    list.reload();
  }

  return (
    <section className="stack">
      <RuledTitle count={imports.length}>Brought in so far</RuledTitle>
      <ErrorNote error={error ?? list.error} />
      {kept !== null && <p role="status">{keptWords(kept)}</p>}
      <Table
        label="Tables brought in"
        rows={imports}
        rowKey={({ importId }) => importId}
        empty={<p>Nothing yet.</p>}
        columns={importColumns(setChosen, (one) => void saveRefused(one))}
      />
      {chosen !== null && (
        <Dialog
          title={`Take back ${chosen.name}?`}
          open
          onClose={() => setChosen(null)}
          actions={
            <>
              <Button kind="first" onPress={() => void takeBack(chosen)}>
                Take it back
              </Button>
              <Button onPress={() => setChosen(null)}>Leave it</Button>
            </>
          }
        >
          <p>
            Everything this table added is deleted:{" "}
            {count(chosen.added, "callout or lift", "callouts and lifts")}. What somebody has worked with
            since stays. History keeps what was.
          </p>
        </Dialog>
      )}
    </section>
  );
}

function keptWords(kept: number): string {
  return kept === 0
    ? "Taken back."
    : `Taken back, but for ${count(kept, "record")} that somebody has worked with since or that others stand on.`;
}

function importColumns(
  onTakeBack: (one: Import) => void,
  onSaveRefused: (one: Import) => void,
): TableColumn<Import>[] {
  return [
    { id: "name", head: "Table", rowHead: true, cell: ({ name }) => name },
    {
      id: "when",
      head: "Brought in",
      cell: ({ at, personName }) => `${formatDate(at)}, ${formatTime(at)}, ${personName}`,
    },
    { id: "added", head: "Added", number: true, cell: ({ added }) => added },
    {
      id: "refused",
      head: "Refused",
      cell: (one) =>
        one.refused === 0 ? (
          "none"
        ) : (
          <Button
            kind="quiet"
            onPress={() => onSaveRefused(one)}
            label={`Save ${count(one.refused, "refused row")} of ${one.name}`}
          >
            Save {count(one.refused, "row")}
          </Button>
        ),
    },
    {
      id: "undo",
      head: "Take back",
      cell: (one) =>
        one.undone || one.added === 0 ? (
          one.undone ? (
            "taken back"
          ) : (
            ""
          )
        ) : (
          <Button kind="quiet" onPress={() => onTakeBack(one)} label={`Take back ${one.name}`}>
            Take back
          </Button>
        ),
    },
  ];
}
