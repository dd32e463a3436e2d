import { useState } from "react";
import { readNumber } from "#shared-lib/number-words.ts";
import type { FieldProps } from "./field-parts.tsx";
import { TextField } from "./text-field.tsx";

export interface NumberFieldProps extends FieldProps {
  /** The text as typed, so that nothing typed is ever cleared and "3.0" stays "3.0". */
  readonly value: string;
  /** The number is null while the text is empty or is no number. */
  readonly onChange: (text: string, number: number | null) => void;
  readonly unit?: string;
  readonly autoFocus?: boolean;
}

/** A number with its unit. Checked on leaving the field, never while typing; a `problem` of the screen comes first. */
export function NumberField({ value, onChange, problem, onBlur, ...rest }: NumberFieldProps) {
  const [left, setLeft] = useState(value !== "");
  const reading = readNumber(value);
  const own = left && reading.kind === "unclear" ? reading.problem : undefined;
  return (
    <TextField
      {...rest}
      value={value}
      inputMode="text"
      problem={problem ?? own}
      onChange={(text) => {
        setLeft(false);
        const now = readNumber(text);
        onChange(text, now.kind === "number" ? now.number : null);
      }}
      onBlur={() => {
        setLeft(true);
        onBlur?.();
      }}
    />
  );
}
