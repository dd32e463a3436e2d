import { useState } from "react";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { readTime, type TimeReading } from "#shared-lib/time-words.ts";
import type { FieldProps } from "./field-parts.tsx";
import { TextField } from "./text-field.tsx";

export interface DateTimeFieldProps extends FieldProps {
  /** The text as typed: "09:05", "yesterday 14:10", "17 Nov 09:05". */
  readonly value: string;
  /** The moment (UTC, ISO 8601) the text means, or null while it means none. */
  readonly onChange: (text: string, moment: string | null) => void;
  /** past: a time of day still to come today is read as yesterday's. future: the other way round. */
  readonly direction?: "past" | "future";
  readonly autoFocus?: boolean;
}

/** A moment typed in words. What it is read as stands beside the label; a sentence below says why it is none. */
export function DateTimeField(props: DateTimeFieldProps) {
  const { value, onChange, direction = "past", problem, onBlur, hint, ...rest } = props;
  const [left, setLeft] = useState(value !== "");
  const reading: TimeReading = readTime(value, new Date(), direction);
  const own = left && reading.kind === "unclear" ? reading.problem : undefined;
  const readAs = reading.kind === "moment" ? `read as ${formatDayAndTime(reading.at)}` : hint;
  return (
    <TextField
      {...rest}
      value={value}
      hint={readAs}
      problem={problem ?? own}
      onChange={(text) => {
        setLeft(false);
        const now = readTime(text, new Date(), direction);
        onChange(text, now.kind === "moment" ? now.at : null);
      }}
      onBlur={() => {
        setLeft(true);
        onBlur?.();
      }}
    />
  );
}
