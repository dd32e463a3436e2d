import { useState } from "react";
import { Autocomplete } from "react-aria-components/Autocomplete";
import { Button } from "react-aria-components/Button";
import { Dialog, DialogTrigger } from "react-aria-components/Dialog";
import { Input } from "react-aria-components/Input";
import { ListBox, ListBoxItem } from "react-aria-components/ListBox";
import { Popover } from "react-aria-components/Popover";
import { SearchField } from "react-aria-components/SearchField";
import { Text } from "react-aria-components/Text";

export interface FilterOption {
  readonly id: string;
  readonly words: string;
  readonly note?: string;
}

interface FilterWordProps {
  /** What is filtered: "site". */
  readonly what: string;
  /** The word while nothing is chosen: "Any site". */
  readonly none: string;
  readonly options: readonly FilterOption[];
  readonly chosenId: string | null;
  /** The word while something is chosen; left out: the option's words. */
  readonly chosenWords?: string | undefined;
  readonly onChoose: (id: string | null) => void;
  /** Long lists: narrowed by typing. The screen may search itself and pass other `options`. */
  readonly onType?: (text: string) => void;
}

const anyId = "any";
/** More than these are not read through; typing narrows them. */
const mostShown = 60;

/** A filter as a word that opens a small menu. */
export function FilterWord(props: FilterWordProps) {
  const { what, none, options, chosenId, onChoose } = props;
  const [open, setOpen] = useState(false);
  const chosen = options.find((option) => option.id === chosenId);
  const words = chosenId === null ? none : (props.chosenWords ?? chosen?.words ?? none);
  const choose = (id: string) => {
    onChoose(id === anyId ? null : id);
    setOpen(false);
  };
  return (
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <Button className={chosenId === null ? "find-filter" : "find-filter find-filter-set"}>
        <span className="seen-by-reader-only">{what}: </span>
        <span className="find-filter-word">{words}</span>
      </Button>
      <Popover className="popover find-menu" placement="bottom end" offset={4}>
        <Dialog aria-label={`Choose: ${what}`}>
          <Choices {...props} choose={choose} />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

function Choices({
  what,
  none,
  options,
  chosenId,
  onType,
  choose,
}: FilterWordProps & { choose: (id: string) => void }) {
  const [typed, setTyped] = useState("");
  const wanted = typed.trim().toLowerCase();
  const fitting =
    wanted === "" || onType !== undefined
      ? options
      : options.filter(({ words, note }) => `${words} ${note ?? ""}`.toLowerCase().includes(wanted));
  const any = wanted === "" ? [{ id: anyId, words: none }] : [];
  const list = (
    <OptionList
      what={what}
      options={[...any, ...fitting.slice(0, mostShown)]}
      chosenId={chosenId}
      choose={choose}
      takesKeyboard={!isLong(options, onType)}
    />
  );
  if (!isLong(options, onType)) return list;
  return (
    <Autocomplete
      inputValue={typed}
      onInputChange={(next) => {
        setTyped(next);
        onType?.(next);
      }}
    >
      <SearchField aria-label={`Narrow: ${what}`} className="find-menu-search" autoFocus>
        <div className="entry">
          <Input placeholder="Type to narrow" />
        </div>
      </SearchField>
      {list}
      {fitting.length > mostShown && (
        <p className="choices-empty label">
          {mostShown} of {fitting.length} shown; type more to narrow.
        </p>
      )}
    </Autocomplete>
  );
}

interface OptionListProps {
  readonly what: string;
  readonly options: readonly FilterOption[];
  readonly chosenId: string | null;
  readonly choose: (id: string) => void;
  readonly takesKeyboard: boolean;
}

function OptionList({ what, options, chosenId, choose, takesKeyboard }: OptionListProps) {
  return (
    <ListBox
      className="choices"
      aria-label={what}
      selectionMode="single"
      selectedKeys={[chosenId ?? anyId]}
      items={options}
      onSelectionChange={(keys) => {
        // Nothing selected: the chosen one was pressed again, which keeps it.
        const [key] = keys === "all" ? [] : [...keys];
        choose(key === undefined ? (chosenId ?? anyId) : String(key));
      }}
      renderEmptyState={() => <div className="choices-empty">Nothing with these letters</div>}
      {...(takesKeyboard ? { autoFocus: true } : {})}
    >
      {(option: FilterOption) => (
        <ListBoxItem id={option.id} textValue={option.words} className="choices-item">
          <Text slot="label">{option.words}</Text>
          {option.note !== undefined && option.note !== "" && (
            <Text slot="description" className="choices-note">
              {option.note}
            </Text>
          )}
        </ListBoxItem>
      )}
    </ListBox>
  );
}

function isLong(options: readonly FilterOption[], onType: FilterWordProps["onType"]): boolean {
  return onType !== undefined || options.length > 12;
}
