// biome-ignore-all lint/a11y/useSemanticElements: rows that are drawn one by one are laid out as a grid of boxes, which table elements do not allow.
import type { CSSProperties, FocusEvent, KeyboardEvent, ReactNode } from "react";
import { useVirtualRows } from "./use-virtual-rows.ts";

export interface VirtualColumn<Row> {
  readonly id: string;
  readonly head: ReactNode;
  readonly cell: (row: Row) => ReactNode;
  /** A track of a CSS grid: "8rem", "minmax(0, 2fr)". No "auto": rows are laid out one by one. */
  readonly width: string;
  readonly number?: boolean;
}

export interface VirtualTableProps<Row> {
  readonly label: string;
  readonly columns: readonly VirtualColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string | number;
  readonly current: number;
  readonly onCurrent: (index: number) => void;
  /** Enter, or a press on the row outside its buttons. */
  readonly onOpen: (row: Row, index: number) => void;
  readonly rowClass?: (row: Row) => string;
  readonly rowHeight?: number;
  readonly className?: string;
}

/** A long table whose rows take the keyboard one at a time and may hold buttons. The parent gives the height. */
export function VirtualTable<Row>(props: VirtualTableProps<Row>) {
  const { columns, rows, current, onCurrent } = props;
  const { frame, virtual, walk } = useVirtualRows({
    items: rows,
    itemKey: props.rowKey,
    rowHeight: props.rowHeight,
    current,
    onOpen: props.onOpen,
    onMove: (index) => {
      onCurrent(index);
      virtual.scrollToIndex(index);
      // The row may be drawn only after the scroll; then it takes the focus.
      requestAnimationFrame(() => {
        frame.current?.querySelector<HTMLElement>(`[data-index="${index}"]`)?.focus({ preventScroll: true });
      });
    },
  });
  const onKeyDown = (event: KeyboardEvent) => {
    // A button inside a row keeps its own keys.
    if (event.target instanceof HTMLElement && event.target.dataset.index !== undefined) walk(event);
  };
  const drawn = virtual.getVirtualItems();
  const tabStop = drawn.some((place) => place.index === current) ? current : drawn[0]?.index;
  return (
    <div
      ref={frame}
      role="grid"
      aria-label={props.label}
      aria-rowcount={rows.length + 1}
      className={`virtual ${props.className ?? ""}`}
      style={{ "--columns": columns.map((column) => column.width).join(" ") } as CSSProperties}
      onKeyDown={onKeyDown}
    >
      <HeadRow columns={columns} />
      <div role="rowgroup" className="virtual-inside" style={{ height: virtual.getTotalSize() }}>
        {drawn.map((place) => {
          const row = rows[place.index];
          if (row === undefined) return null;
          return (
            <VirtualRow
              key={place.key}
              {...props}
              row={row}
              index={place.index}
              top={place.start}
              isTabStop={place.index === tabStop}
              measure={virtual.measureElement}
            />
          );
        })}
      </div>
    </div>
  );
}

function HeadRow<Row>({ columns }: { readonly columns: readonly VirtualColumn<Row>[] }) {
  return (
    <div role="row" aria-rowindex={1} tabIndex={-1} className="virtual-head virtual-cells">
      {columns.map((column) => (
        <div
          key={column.id}
          role="columnheader"
          tabIndex={-1}
          className={column.number === true ? "number" : ""}
        >
          {column.head}
        </div>
      ))}
    </div>
  );
}

interface VirtualRowProps<Row> extends VirtualTableProps<Row> {
  readonly row: Row;
  readonly index: number;
  readonly top: number;
  readonly isTabStop: boolean;
  readonly measure: (element: HTMLElement | null) => void;
}

function VirtualRow<Row>(props: VirtualRowProps<Row>) {
  const { row, index, columns, current, onCurrent, onOpen, rowClass } = props;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the grid has the keyboard and opens the row.
    <div
      ref={props.measure}
      role="row"
      data-index={index}
      aria-rowindex={index + 2}
      aria-selected={index === current}
      tabIndex={props.isTabStop ? 0 : -1}
      className={`virtual-row virtual-cells ${rowClass?.(row) ?? ""}`}
      style={{ transform: `translateY(${props.top}px)` }}
      onFocus={(event: FocusEvent) => {
        if (event.target === event.currentTarget) onCurrent(index);
      }}
      onClick={(event) => {
        if (event.target instanceof Element && event.target.closest("button,a,input") !== null) return;
        onCurrent(index);
        onOpen(row, index);
      }}
    >
      {columns.map((column) => (
        <div
          key={column.id}
          role="gridcell"
          tabIndex={-1}
          className={column.number === true ? "virtual-cell number" : "virtual-cell"}
        >
          {column.cell(row)}
        </div>
      ))}
    </div>
  );
}
