import { type KeyboardEvent, type ReactNode, useLayoutEffect, useRef } from "react";
import { Button } from "../../ui/button.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { changed, moved, newKey, type TextLine, without } from "./note-form.ts";

interface EntryListProps<Item extends { readonly key: string }> {
  /** "Cause": names the entries for the buttons. */
  readonly one: string;
  readonly items: readonly Item[];
  readonly onItems: (items: readonly Item[]) => void;
  readonly children: (item: Item, index: number) => ReactNode;
  readonly addWord: string;
  readonly make: () => Item;
  readonly most: number;
  /** One line each: the buttons stand beside it. */
  readonly flat?: boolean;
}

/** Entries in their order; Alt with an arrow key moves the one that has the keyboard, and the keyboard goes along. */
export function EntryList<Item extends { readonly key: string }>(props: EntryListProps<Item>) {
  const { one, items, onItems, flat = false } = props;
  const list = useRef<HTMLDivElement>(null);
  const keeper = useRef<HTMLElement | null>(null);
  const wanted = useRef<string | null>(null);
  useLayoutEffect(() => {
    // A moved entry is taken out of the page and put in again, and loses the keyboard by that.
    if (keeper.current?.isConnected === true) keeper.current.focus();
    keeper.current = null;
    if (wanted.current === null) return;
    const entry = list.current?.querySelector(`[data-key="${CSS.escape(wanted.current)}"]`);
    entry?.querySelector<HTMLElement>("input, textarea, button")?.focus();
    wanted.current = null;
  });
  const move = (index: number, step: 1 | -1) => {
    const next = moved(items, index, step);
    if (next === items) return;
    keeper.current = document.activeElement as HTMLElement | null;
    onItems(next);
  };
  const press = (event: KeyboardEvent, index: number) => {
    if (!event.altKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    move(index, event.key === "ArrowUp" ? -1 : 1);
  };
  return (
    <div className="stack" ref={list}>
      {items.map((item, index) => (
        <fieldset
          key={item.key}
          data-key={item.key}
          className={flat ? "note-entry note-entry-flat" : "note-entry"}
          aria-label={`${one} ${index + 1}`}
          onKeyDown={(event) => press(event, index)}
        >
          <div className="note-entry-fields">{props.children(item, index)}</div>
          <div className="note-entry-acts">
            <Button
              kind="quiet"
              disabled={index === 0}
              onPress={() => move(index, -1)}
              label={`Up: ${one.toLowerCase()} ${index + 1}`}
            >
              Up
            </Button>
            <Button
              kind="quiet"
              disabled={index === items.length - 1}
              onPress={() => move(index, 1)}
              label={`Down: ${one.toLowerCase()} ${index + 1}`}
            >
              Down
            </Button>
            <Button
              kind="quiet"
              onPress={() => onItems(without(items, index))}
              label={`Take away ${one.toLowerCase()} ${index + 1}`}
            >
              Take away
            </Button>
          </div>
        </fieldset>
      ))}
      <div>
        <Button
          disabled={items.length >= props.most}
          onPress={() => {
            const made = props.make();
            wanted.current = made.key;
            onItems([...items, made]);
          }}
        >
          {props.addWord}
        </Button>
      </div>
    </div>
  );
}

interface LineListProps {
  readonly one: string;
  readonly lines: readonly TextLine[];
  readonly onLines: (lines: readonly TextLine[]) => void;
  readonly addWord: string;
  readonly most: number;
  readonly problemAt: (index: number) => string | undefined;
}

/** A list of one-line texts. */
export function LineList({ one, lines, onLines, addWord, most, problemAt }: LineListProps) {
  return (
    <EntryList
      one={one}
      items={lines}
      onItems={onLines}
      addWord={addWord}
      most={most}
      flat
      make={() => ({ key: newKey(), words: "" })}
    >
      {(line, index) => (
        <TextField
          label={`${one} ${index + 1}`}
          value={line.words}
          onChange={(words) => onLines(changed(lines, index, { words }))}
          problem={problemAt(index)}
        />
      )}
    </EntryList>
  );
}
