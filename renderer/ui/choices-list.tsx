import type { ReactNode, RefObject } from "react";
import { ListBox, ListBoxItem } from "react-aria-components/ListBox";
import { Popover } from "react-aria-components/Popover";
import { Text } from "react-aria-components/Text";

/** One entry of a select or combo field. `words` are what is shown in the field when it is chosen. */
export interface FieldOption {
  readonly id: string;
  readonly words: string;
  /** Soft second line. */
  readonly note?: string;
  /** Shown instead of `words` in the list, for marked text. */
  readonly shown?: ReactNode;
}

interface ChoicesPopoverProps {
  readonly options: readonly FieldOption[];
  readonly empty: string;
  /** What the list stands under, when it is not the pressed control itself. */
  readonly under?: RefObject<HTMLElement | null>;
}

export function ChoicesPopover({ options, empty, under }: ChoicesPopoverProps) {
  return (
    <Popover
      className={under === undefined ? "popover" : "popover popover-entry"}
      offset={4}
      {...(under === undefined ? {} : { triggerRef: under })}
    >
      <ListBox
        className="choices"
        items={options}
        renderEmptyState={() => <div className="choices-empty">{empty}</div>}
      >
        {(option) => (
          <ListBoxItem id={option.id} textValue={option.words} className="choices-item">
            <Text slot="label">{option.shown ?? option.words}</Text>
            {option.note !== undefined && (
              <Text slot="description" className="choices-note">
                {option.note}
              </Text>
            )}
          </ListBoxItem>
        )}
      </ListBox>
    </Popover>
  );
}

export function FieldArrow() {
  return (
    <svg className="entry-arrow" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M2 4.5L6 8.5L10 4.5" />
    </svg>
  );
}
