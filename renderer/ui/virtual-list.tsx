import { type ReactNode, useEffect, useId } from "react";
import { useVirtualRows } from "./use-virtual-rows.ts";

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
  const { items, current, onCurrent, onOpen } = props;
  const ownId = useId();
  const id = props.id ?? ownId;
  const { frame, virtual, walk } = useVirtualRows({
    items,
    itemKey: props.itemKey,
    rowHeight: props.rowHeight,
    current,
    onMove: onCurrent,
    onOpen,
  });
  const { scrollToIndex } = virtual;
  useEffect(() => {
    if (current >= 0) scrollToIndex(current);
  }, [current, scrollToIndex]);

  return (
    <div
      ref={frame}
      id={id}
      role="listbox"
      aria-label={props.label}
      tabIndex={props.takesFocus === false ? -1 : 0}
      className={`virtual ${props.className ?? ""}`}
      onKeyDown={walk}
      {...(current >= 0 ? { "aria-activedescendant": `${id}-${current}` } : {})}
    >
      <div className="virtual-inside" style={{ height: virtual.getTotalSize() }} role="presentation">
        {virtual.getVirtualItems().map((place) => {
          const item = items[place.index];
          if (item === undefined) return null;
          return (
            <Option
              key={place.key}
              id={`${id}-${place.index}`}
              index={place.index}
              count={items.length}
              chosen={place.index === current}
              top={place.start}
              measure={virtual.measureElement}
              onPress={() => {
                onCurrent(place.index);
                onOpen(item, place.index);
              }}
            >
              {props.renderItem(item, place.index)}
            </Option>
          );
        })}
      </div>
    </div>
  );
}

interface OptionProps {
  readonly id: string;
  readonly index: number;
  readonly count: number;
  readonly chosen: boolean;
  readonly top: number;
  readonly measure: (element: HTMLElement | null) => void;
  readonly onPress: () => void;
  readonly children: ReactNode;
}

function Option({ id, index, count, chosen, top, measure, onPress, children }: OptionProps) {
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the listbox has the keyboard and opens the chosen row.
    <div
      ref={measure}
      data-index={index}
      id={id}
      role="option"
      tabIndex={-1}
      aria-selected={chosen}
      aria-setsize={count}
      aria-posinset={index + 1}
      className="virtual-row"
      style={{ transform: `translateY(${top}px)` }}
      onClick={onPress}
    >
      {children}
    </div>
  );
}
