import { formatDate } from "#shared-lib/format.ts";
import { Button } from "../../ui/button.tsx";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { Table, type TableColumn } from "../../ui/table.tsx";
import type { EarlierRow, EarlierTable } from "./earlier-results.ts";
import { markOf } from "./verdict-view.tsx";

interface EarlierViewProps {
  readonly title: string;
  readonly table: EarlierTable;
  /** The row that is drawn in construction blue. */
  readonly drawnId: string | null;
  readonly onDraw: (id: string | null) => void;
  /** Marking of a landing; undefined where results of one landing are listed. */
  readonly landingOf?: ((id: string | null) => string) | undefined;
}

function measured(row: EarlierRow): string {
  return row.by === "" ? formatDate(row.at) : `${formatDate(row.at)}, ${row.by}`;
}

/** Earlier results with their verdicts, and below each number what has changed until now. */
export function EarlierView({ title, table, drawnId, onDraw, landingOf }: EarlierViewProps) {
  const columns: TableColumn<EarlierRow>[] = [
    { id: "measured", head: "Measured", cell: measured },
    ...(landingOf === undefined
      ? []
      : [{ id: "landing", head: "Landing", cell: (row: EarlierRow) => landingOf(row.landingId) }]),
    ...table.columns.map(
      ({ key, label }): TableColumn<EarlierRow> => ({
        id: `value ${key}`,
        head: label,
        number: true,
        cell: (row) => <Cell row={row} column={key} />,
      }),
    ),
    {
      id: "verdict",
      head: "Verdict",
      cell: (row) => (
        <Mark kind={markOf(row.holds)} word={row.word.toLowerCase()} pencil={row.holds === false} />
      ),
    },
    {
      id: "drawn",
      head: "In the drawing",
      cell: (row) => <DrawnWord row={row} drawnId={drawnId} onDraw={onDraw} />,
    },
  ];
  return (
    <section className="bench-earlier">
      <RuledTitle>{title}</RuledTitle>
      <div className="scroll-frame">
        <Table
          label={title}
          columns={columns}
          rows={table.rows}
          rowKey={(row) => row.id}
          rowClass={(row) => (row.id === drawnId ? "row-drawn" : "")}
        />
      </div>
    </section>
  );
}

function Cell({ row, column }: { readonly row: EarlierRow; readonly column: string }) {
  const cell = row.cells[column];
  if (cell === undefined) return <span className="soft">not known</span>;
  return (
    <>
      {cell.shown}
      {cell.change !== "" && !row.same && <span className="bench-change">now {cell.change}</span>}
    </>
  );
}

function DrawnWord({
  row,
  drawnId,
  onDraw,
}: { readonly row: EarlierRow } & Pick<EarlierViewProps, "drawnId" | "onDraw">) {
  if (row.same) return <span className="soft">as on the screen</span>;
  const isDrawn = row.id === drawnId;
  return (
    <Button
      kind="quiet"
      label={`${isDrawn ? "Take out" : "Draw"} the result of ${measured(row)}`}
      onPress={() => onDraw(isDrawn ? null : row.id)}
    >
      {isDrawn ? "Take out" : "Draw"}
    </Button>
  );
}
