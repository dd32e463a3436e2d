import { useState } from "react";
import { formatTime } from "#shared-lib/format.ts";
import { readTime } from "#shared-lib/time-words.ts";

export interface TimeEntry {
  readonly text: string;
  readonly set: (text: string) => void;
  /** Moment to send; undefined while the proposed "now" stands untouched: the program then takes its own time. */
  readonly at: string | undefined;
  /** One sentence why the text means no moment. */
  readonly problem: string | undefined;
}

/** A time field that proposes now and can be corrected at once. */
export function useTimeEntry(start?: string): TimeEntry {
  const [proposed] = useState(() => start ?? formatTime(new Date()));
  const [text, set] = useState(proposed);
  if (start === undefined && text === proposed) return { text, set, at: undefined, problem: undefined };
  const reading = readTime(text, new Date(), "past");
  return {
    text,
    set,
    at: reading.kind === "moment" ? reading.at : undefined,
    problem:
      reading.kind === "moment"
        ? undefined
        : reading.kind === "empty"
          ? "Write when it happened, as in 09:05."
          : reading.problem,
  };
}
