import type { ReactNode } from "react";
import { formatDate, formatDay, formatTime } from "#shared-lib/format.ts";
import { type MarkKind, MarkShape } from "./mark.tsx";

export interface TimelineItem {
  readonly id: string;
  /** ISO 8601. */
  readonly at: string;
  readonly mark: MarkKind;
  /** The mark in red pencil: failed, bridge, person inside. */
  readonly pencil?: boolean;
  /** The sentence, with the person's name. */
  readonly words: ReactNode;
  /** Soft second line for what followed. */
  readonly after?: ReactNode;
  /** A corrected time or text: the old value and who changed it. */
  readonly corrected?: { readonly from: string; readonly by: string };
}

interface TimelineProps {
  readonly label: string;
  /** Newest first. */
  readonly items: readonly TimelineItem[];
}

export function Timeline({ label, items }: TimelineProps) {
  return (
    <ol className="timeline" aria-label={label}>
      {items.map((item, i) => {
        const day = dayWords(item.at);
        const before = items[i - 1];
        const sameDay = before !== undefined && dayWords(before.at) === day;
        return (
          <li key={item.id}>
            <time className="timeline-when" dateTime={item.at}>
              <b className={sameDay ? "seen-by-reader-only" : ""}>{day}</b> {formatTime(item.at)}
            </time>
            <MarkShape
              kind={item.mark}
              className={item.pencil === true ? "timeline-mark pencil" : "timeline-mark"}
            />
            <div className="timeline-said">
              {item.words}
              {item.corrected !== undefined && (
                <span className="timeline-after">
                  Was <s>{item.corrected.from}</s>, corrected by {item.corrected.by}
                </span>
              )}
              {item.after !== undefined && <span className="timeline-after">{item.after}</span>}
            </div>
          </li>
        );
      })}
    </ol>
  );
}

/** The year is written only where it is not this one. */
function dayWords(at: string): string {
  const isThisYear = new Date(at).getFullYear() === new Date().getFullYear();
  return isThisYear ? formatDay(at) : formatDate(at);
}
