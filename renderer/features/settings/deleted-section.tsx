import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";

type Deleted = OutputOf<"history.deleted">["records"][number];

export function DeletedSection() {
  const list = useRead("history.deleted", {});
  const restore = useWrite("record.restore");
  const columns: TableColumn<Deleted>[] = [
    { id: "what", head: "What", rowHead: true, cell: (record) => `${record.title} (${record.entity})` },
    {
      id: "when",
      head: "Deleted",
      cell: (record) => `${formatDayAndTime(record.at)}${record.by ? `, ${record.by.name}` : ""}`,
    },
    {
      id: "restore",
      head: "Bring back",
      cell: (record) => (
        <Button
          kind="quiet"
          label={`Restore ${record.title}`}
          onPress={() => void restore.run({ entity: record.entity, id: record.id, version: record.version })}
        >
          Restore
        </Button>
      ),
    },
  ];
  return (
    <section className="stack">
      <RuledTitle>Deleted records</RuledTitle>
      <Table
        label="Deleted records"
        columns={columns}
        rows={list.value?.records ?? []}
        rowKey={(record) => record.id}
        empty={
          <p className="soft">
            Nothing has been deleted. A deleted record stays here and can be brought back.
          </p>
        }
      />
      <ErrorNote error={restore.error ?? list.error} />
    </section>
  );
}
