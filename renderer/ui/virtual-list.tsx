import { useVirtualizer } from "@tanstack/react-virtual";
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef } from "react";
import { movedIndex } from "./moved-index.ts";

export interface VirtualListProps<Item> {
  readonly label: string;
  readonly items: readonly Item[];
  readonly itemKey: (item: Item) => string;
  readonly renderItem: (item: Item, index: number) => ReactNode;
  /** Which one is chosen; -1 for none. Owned by the screen, so that a search box can walk the list too. */
  readonly current: number;
  readonly onCurrent: (index: number) => void;
  /** Enter, or a press on the row. */
  readonly onOpen: (item: Item, index: number) => void;
  /** Of the listbox; a search box names it in aria-controls, and `${id}-${current}` in aria-activedescendant. */
  readonly id?: string;
  readonly rowHeight?: number;
  readonly className?: string;
  /** False while a search box keeps the keyboard: the list is then no stop of the Tab key. */
  readonly takesFocus?: boolean;
}

/** A long list of rows without controls inside; each row is one target. The parent gives the height. */
export function VirtualList<Item>(props: VirtualListProps<Item>) {
  const { label, items, itemKey, renderItem, current, onCurrent, onOpen, rowHeight = 44 } = props;
  const ownId = useId();
  const id = props.id ?? ownId;
  const frame = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count: items.length,
    getScrollElement: () => frame.current,
    estimateSize: () => rowHeight,
    getItemKey: (index) => keyOf(items, itemKey, index),
    overscan: 8,
  });
  useEffect(() => {
    if (current >= 0) rows.scrollToIndex(current);
  }, [current, rows.scrollToIndex]);

  const onKeyDown = (event: KeyboardEvent) => {
    const chosen = items[current];
    if (event.key === "Enter" && chosen !== undefined) {
      event.preventDefault();
      onOpen(chosen, current);
      return;
    }
    const next = movedIndex(event.key, current, items.length, pageOf(frame.current, rowHeight));
    if (next === undefined) return;
    event.preventDefault();
    onCurrent(next);
  };
  return (
    <div
      ref={frame}
      id={id}
      role="listbox"
      aria-label={label}
      tabIndex={props.takesFocus === false ? -1 : 0}
      className={`virtual ${props.className ?? ""}`}
      onKeyDown={onKeyDown}
      {...(current >= 0 ? { "aria-activedescendant": `${id}-${current}` } : {})}
    >
      <div className="virtual-inside" style={{ height: rows.getTotalSize() }} role="presentation">
        {rows.getVirtualItems().map((row) => {
          const item = items[row.index];
          if (item === undefined) return null;
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the listbox has the keyboard and opens the chosen row.
            <div
              key={row.key}
              ref={rows.measureElement}
              data-index={row.index}
              id={`${id}-${row.index}`}
              role="option"
              tabIndex={-1}
              aria-selected={row.index === current}
              aria-setsize={items.length}
              aria-posinset={row.index + 1}
              className="virtual-row"
              style={{ transform: `translateY(${row.start}px)` }}
              onClick={() => {
                onCurrent(row.index);
                onOpen(item, row.index);
              }}
            >
              {renderItem(item, row.index)}
            </div>
          );
        })}
      </div>
    </div>
  );
}

export function keyOf<Item>(
  items: readonly Item[],
  itemKey: (item: Item) => string,
  index: number,
): string | number {
  const item = items[index];
  return item === undefined ? index : itemKey(item);
}

export function pageOf(frame: HTMLElement | null, rowHeight: number): number {
  return Math.max(1, Math.floor((frame?.clientHeight ?? 0) / rowHeight) - 1);
}
