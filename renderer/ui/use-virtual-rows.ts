import { useVirtualizer } from "@tanstack/react-virtual";
import { type KeyboardEvent, useCallback, useRef } from "react";
import { movedIndex } from "./moved-index.ts";

interface VirtualRowsOptions<Item> {
  readonly items: readonly Item[];
  readonly itemKey: (item: Item) => string | number;
  /** Least height of a row in CSS pixels; taller ones are measured. */
  readonly rowHeight: number | undefined;
  readonly current: number;
  readonly onMove: (index: number) => void;
  readonly onOpen: (item: Item, index: number) => void;
}

const leastRowHeight = 44;
const drawnBeyondView = 8;

/** What a long list and a long table share: which rows are drawn, and the keys that walk and open them. */
export function useVirtualRows<Item>(options: VirtualRowsOptions<Item>) {
  const { items, itemKey, rowHeight = leastRowHeight, current, onMove, onOpen } = options;
  const frame = useRef<HTMLDivElement>(null);
  const keyOf = useRef(itemKey);
  keyOf.current = itemKey;
  // The virtualizer lays out every row again, and there may be 100,000, whenever this function is another one.
  const getItemKey = useCallback(
    (index: number) => {
      const item = items[index];
      return item === undefined ? index : keyOf.current(item);
    },
    [items],
  );
  const virtual = useVirtualizer({
    count: items.length,
    getScrollElement: () => frame.current,
    estimateSize: () => rowHeight,
    getItemKey,
    overscan: drawnBeyondView,
  });
  const walk = (event: KeyboardEvent): void => {
    const chosen = items[current];
    if (event.key === "Enter" && chosen !== undefined) {
      event.preventDefault();
      onOpen(chosen, current);
      return;
    }
    const page = Math.max(1, Math.floor((frame.current?.clientHeight ?? 0) / rowHeight) - 1);
    const next = movedIndex(event.key, current, items.length, page);
    if (next === undefined) return;
    event.preventDefault();
    onMove(next);
  };
  return { frame, virtual, walk };
}
