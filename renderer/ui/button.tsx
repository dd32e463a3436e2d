import type { ReactNode } from "react";
import { Button as AriaButton } from "react-aria-components/Button";
import { ariaKeyShortcut } from "./aria-key-shortcut.ts";
import { Kbd } from "./kbd.tsx";
import { type MarkKind, MarkShape } from "./mark.tsx";

export interface ButtonProps {
  readonly children: ReactNode;
  readonly onPress?: () => void;
  /** first: the main button, one per screen. act: ends a danger, red pencil frame. quiet: an underlined word. */
  readonly kind?: "first" | "plain" | "act" | "quiet";
  /** Shown on the button only; register the key itself with useCommand. */
  readonly keys?: string;
  readonly mark?: MarkKind;
  readonly type?: "button" | "submit";
  readonly disabled?: boolean;
  /** Keeps the button pressable by focus but inert while a write is on its way. */
  readonly pending?: boolean;
  readonly autoFocus?: boolean;
  /** A spoken name where the visible words are not enough; begins with the visible words. */
  readonly label?: string;
  readonly expanded?: boolean;
}

export function Button(props: ButtonProps) {
  const { children, kind = "plain", keys, mark, type = "button", label, expanded } = props;
  return (
    <AriaButton
      className={buttonClass(kind)}
      type={type}
      isDisabled={props.disabled ?? false}
      isPending={props.pending ?? false}
      autoFocus={props.autoFocus ?? false}
      {...(props.onPress === undefined ? {} : { onPress: props.onPress })}
      {...(label === undefined ? {} : { "aria-label": label })}
      {...(expanded === undefined ? {} : { "aria-expanded": expanded })}
      {...(keys === undefined ? {} : { "aria-keyshortcuts": ariaKeyShortcut(keys) })}
    >
      {mark !== undefined && <MarkShape kind={mark} />}
      <span className="button-word">{children}</span>
      {keys !== undefined && (
        <span aria-hidden="true">
          <Kbd keys={keys} />
        </span>
      )}
    </AriaButton>
  );
}

/** The same look for a router `Link`: `<Link className={buttonClass("quiet")}>`; wrap its words in `button-word`. */
export function buttonClass(kind: NonNullable<ButtonProps["kind"]>): string {
  return kind === "plain" ? "button" : `button button-${kind}`;
}
