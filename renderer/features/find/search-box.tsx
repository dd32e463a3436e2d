import type { KeyboardEvent, Ref } from "react";
import { Kbd } from "../../ui/kbd.tsx";
import { MarkShape } from "../../ui/mark.tsx";

interface SearchBoxProps {
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly onClear: () => void;
  readonly onStep: (step: 1 | -1) => void;
  readonly onOpen: () => void;
  /** Ids of the lists of results. */
  readonly lists: readonly string[];
  /** Id of the chosen result's line. */
  readonly chosenLine: string | undefined;
  readonly inputRef: Ref<HTMLInputElement>;
}

/** One box for everything. The arrows walk the results while the box keeps the text. */
export function SearchBox(props: SearchBoxProps) {
  const press = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.nativeEvent.isComposing) return;
    const action = actionOf(event, props);
    if (action === undefined) return;
    event.preventDefault();
    action();
  };
  return (
    <div className="entry entry-large find-box">
      <MarkShape kind="search" />
      <input
        ref={props.inputRef}
        type="text"
        role="combobox"
        aria-label="Find fault notes, recorded fixes, callouts, lifts and calculators"
        aria-autocomplete="list"
        aria-haspopup="listbox"
        aria-expanded={props.lists.length > 0}
        aria-controls={props.lists.join(" ")}
        {...(props.chosenLine === undefined ? {} : { "aria-activedescendant": props.chosenLine })}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        // biome-ignore lint/a11y/noAutofocus: Find is opened to type, and the box names the screen to a reader.
        autoFocus
        value={props.text}
        onChange={(event) => props.onText(event.target.value)}
        onKeyDown={press}
      />
      {props.text !== "" && (
        <button type="button" className="find-clear" onClick={props.onClear}>
          <Kbd keys="Esc" /> clears
        </button>
      )}
    </div>
  );
}

function actionOf(
  { key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent<HTMLInputElement>,
  props: SearchBoxProps,
): (() => void) | undefined {
  if (altKey || shiftKey || ctrlKey || metaKey) return undefined;
  if (key === "Enter") return props.onOpen;
  if (key === "ArrowDown") return () => props.onStep(1);
  if (key === "ArrowUp") return () => props.onStep(-1);
  return key === "Escape" && props.text !== "" ? props.onClear : undefined;
}
