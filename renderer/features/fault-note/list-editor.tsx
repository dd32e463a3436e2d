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

/** Keeps the keyboard where it belongs when entries are moved and made. */
function useEntryKeyboard() {
  const list = useRef<HTMLDivElement>(null);
  const keeper = useRef<HTMLElement | null>(null);
  const made = useRef<string | null>(null);
  useLayoutEffect(() => {
    // A moved entry is taken out of the page and put in again, and loses the keyboard by that.
    if (keeper.current?.isConnected === true) keeper.current.focus();
    keeper.current = null;
    if (made.current === null) return;
    const entry = list.current?.querySelector(`[data-key="${CSS.escape(made.current)}"]`);
    entry?.querySelector<HTMLElement>("input, textarea, button")?.focus();
    made.current = null;
  });
  return {
    list,
    keep: () => {
      keeper.current = document.activeElement as HTMLElement | null;
    },
    goTo: (key: string) => {
      made.current = key;
    },
  };
}

/** Entries in their order; Alt with an arrow key moves the one that has the keyboard, and the keyboard goes along. */
export function EntryList<Item extends { readonly key: string }>(props: EntryListProps<Item>) {
  const { one, items, onItems, flat = false } = props;
  const { list, keep, goTo } = useEntryKeyboard();
  const move = (index: number, step: 1 | -1) => {
    const next = moved(items, index, step);
    if (next === items) return;
    keep();
    onItems(next);
  };
  const press = (event: KeyboardEvent, index: number) => {
    if (!event.altKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    // An outcome inside a check moves among outcomes, and the check stays.
    event.stopPropagation();
    move(index, event.key === "ArrowUp" ? -1 : 1);
  };
  const add = () => {
    const made = props.make();
    goTo(made.key);
    onItems([...items, made]);
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
          <EntryActs
            name={`${one.toLowerCase()} ${index + 1}`}
            first={index === 0}
            last={index === items.length - 1}
            onMove={(step) => move(index, step)}
            onTakeAway={() => onItems(without(items, index))}
          />
        </fieldset>
      ))}
      <div>
        <Button disabled={items.length >= props.most} onPress={add}>
          {props.addWord}
        </Button>
      </div>
    </div>
  );
}

interface EntryActsProps {
  readonly name: string;
  readonly first: boolean;
  readonly last: boolean;
  readonly onMove: (step: 1 | -1) => void;
  readonly onTakeAway: () => void;
}

function EntryActs({ name, first, last, onMove, onTakeAway }: EntryActsProps) {
  return (
    <div className="note-entry-acts">
      <Button kind="quiet" disabled={first} onPress={() => onMove(-1)} label={`Up: ${name}`}>
        Up
      </Button>
      <Button kind="quiet" disabled={last} onPress={() => onMove(1)} label={`Down: ${name}`}>
        Down
      </Button>
      <Button kind="quiet" onPress={onTakeAway} label={`Take away ${name}`}>
        Take away
      </Button>
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
