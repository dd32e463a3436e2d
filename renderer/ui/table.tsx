import {
  type CellData,
  type ColumnDef,
  createSortedRowModel,
  type RowData,
  rowSortingFeature,
  type SortingState,
  tableFeatures,
  useTable,
} from "@tanstack/react-table";
import { type ReactNode, useMemo, useState } from "react";

const features = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel() });

export interface TableColumn<Row> {
  readonly id: string;
  readonly head: string;
  readonly cell: (row: Row) => ReactNode;
  /** Numbers stand right, text left. */
  readonly number?: boolean;
  /** What the column sorts by; left out: it does not sort. null comes last. */
  readonly sortBy?: (row: Row) => string | number | null;
  /** The order in words, beside the head while it sorts: "shortest wait first", "longest wait first". */
  readonly sortWords?: { readonly rising: string; readonly falling: string };
  /** Drops out below 70 rem. */
  readonly wideOnly?: boolean;
  /** The column that names the row: read out with each cell. */
  readonly rowHead?: boolean;
}

interface TableProps<Row> {
  /** What the table shows, for a reader. */
  readonly label: string;
  readonly columns: readonly TableColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  readonly startSort?: { readonly column: string; readonly falling: boolean };
  readonly rowClass?: (row: Row) => string;
  /** Shown instead of the table while there are no rows. */
  readonly empty?: ReactNode;
}

/** A plain table for up to some hundred rows. Longer ones: VirtualTable. */
export function Table<Row extends RowData>(props: TableProps<Row>) {
  const { label, columns, rows, rowKey, startSort, rowClass, empty } = props;
  const [sorting, setSorting] = useState<SortingState>(
    startSort === undefined ? [] : [{ id: startSort.column, desc: startSort.falling }],
  );
  const definitions = useMemo(() => columns.map(toDefinition), [columns]);
  const data = useMemo(() => [...rows], [rows]);
  const table = useTable({
    features,
    columns: definitions,
    data,
    getRowId: rowKey,
    state: { sorting },
    onSortingChange: setSorting,
    enableSortingRemoval: false,
  });
  if (rows.length === 0 && empty !== undefined) return empty;
  return (
    <table className="table" aria-label={label}>
      <thead>
        <tr>
          {columns.map((column) => (
            <Head
              key={column.id}
              column={column}
              sorted={sorting.find((one) => one.id === column.id)?.desc}
              onSort={(falling) => setSorting([{ id: column.id, desc: falling }])}
            />
          ))}
        </tr>
      </thead>
      <tbody>
        {table.getRowModel().rows.map((row) => (
          <tr key={row.id} className={rowClass?.(row.original) ?? ""}>
            {columns.map((column) => (
              <Cell key={column.id} column={column} row={row.original} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function toDefinition<Row extends RowData>(
  column: TableColumn<Row>,
): ColumnDef<typeof features, Row, CellData> {
  const { sortBy } = column;
  return {
    id: column.id,
    accessorFn: (row: Row) => sortBy?.(row) ?? undefined,
    header: column.head,
    enableSorting: sortBy !== undefined,
    sortUndefined: "last",
    sortFn: (a, b, id) => compare(a.getValue(id), b.getValue(id)),
  };
}

function compare(a: unknown, b: unknown): number {
  if (typeof a === "number" && typeof b === "number") return a - b;
  return String(a).localeCompare(String(b), "en", { numeric: true, sensitivity: "base" });
}

interface HeadProps<Row> {
  readonly column: TableColumn<Row>;
  /** undefined: not sorted by this column; else whether falling. */
  readonly sorted: boolean | undefined;
  readonly onSort: (falling: boolean) => void;
}

function Head<Row>({ column, sorted, onSort }: HeadProps<Row>) {
  const className = cellClass(column);
  if (column.sortBy === undefined) {
    return (
      <th scope="col" className={className}>
        {column.head}
      </th>
    );
  }
  const words = { rising: "rising", falling: "falling", ...column.sortWords };
  return (
    <th
      scope="col"
      className={className}
      {...(sorted === undefined ? {} : { "aria-sort": sorted ? "descending" : "ascending" })}
    >
      <button type="button" className="sort-word" onClick={() => onSort(sorted === false)}>
        {column.head}
        {sorted !== undefined && `, ${sorted ? words.falling : words.rising}`}
      </button>
    </th>
  );
}

function Cell<Row>({ column, row }: { readonly column: TableColumn<Row>; readonly row: Row }) {
  const className = cellClass(column);
  if (column.rowHead === true) {
    return (
      <th scope="row" className={`row-head ${className}`}>
        {column.cell(row)}
      </th>
    );
  }
  return <td className={className}>{column.cell(row)}</td>;
}

function cellClass<Row>(column: TableColumn<Row>): string {
  return [column.number === true ? "number" : "", column.wideOnly === true ? "wide-only" : ""]
    .join(" ")
    .trim();
}
