import type { ReactNode } from "react";
import { Button } from "react-aria-components/Button";
import { ToggleButton } from "react-aria-components/ToggleButton";
import { ariaKeyShortcut } from "../../ui/aria-key-shortcut.ts";
import { Kbd } from "../../ui/kbd.tsx";
import { useCommand } from "../../use-command.ts";

interface BigAnswerProps {
  readonly children: ReactNode;
  readonly keys: string;
  /** As listed under F1. */
  readonly name: string;
  /** Left out: the button adds something each time it is pressed, and is never held. */
  readonly chosen?: boolean;
  readonly disabled?: boolean;
  readonly onPress: () => void;
}

/** A target for a cold, gloved hand. */
export function BigAnswer({ children, keys, name, chosen, disabled = false, onPress }: BigAnswerProps) {
  useCommand({ name, keys, group: "Signal check", when: !disabled, run: onPress });
  const inside = (
    <>
      <span className="button-word">{children}</span>
      <span aria-hidden="true">
        <Kbd keys={keys} />
      </span>
    </>
  );
  const common = {
    className: "button check-answer",
    isDisabled: disabled,
    "aria-keyshortcuts": ariaKeyShortcut(keys),
  };
  if (chosen === undefined) {
    return (
      <Button {...common} onPress={onPress}>
        {inside}
      </Button>
    );
  }
  return (
    <ToggleButton {...common} isSelected={chosen} onChange={onPress}>
      {inside}
    </ToggleButton>
  );
}
