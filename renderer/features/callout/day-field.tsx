import { useState } from "react";
import { formatStoredDay } from "#shared-lib/format.ts";
import type { FieldProps } from "../../ui/field-parts.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { readDay } from "./read-day.ts";

interface DayFieldProps extends FieldProps {
  readonly value: string;
  readonly onChange: (text: string) => void;
}

/** A day still to come, typed in words: "27 Nov", "tomorrow", "2026-11-27". */
export function DayField({ value, onChange, problem, ...rest }: DayFieldProps) {
  const [left, setLeft] = useState(value !== "");
  const day = readDay(value, new Date());
  const own =
    left && value.trim() !== "" && day === null
      ? "That is no day that can be read. Write it as in 27 Nov, tomorrow or Mon."
      : undefined;
  return (
    <TextField
      {...rest}
      value={value}
      hint={day === null ? undefined : `read as ${formatStoredDay(day)}`}
      problem={problem ?? own}
      onChange={(text) => {
        setLeft(false);
        onChange(text);
      }}
      onBlur={() => setLeft(true)}
    />
  );
}
