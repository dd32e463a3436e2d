import { readTime } from "#shared-lib/time-words.ts";
import { type FaultGroup, faultGroups } from "#shared-lib/words.ts";
import { type LastTime, lastTimes, type ReviewAddress, storedDay } from "./review-address.ts";

export type TimeChoice = LastTime | "days";
export const timeChoices: readonly TimeChoice[] = [...lastTimes, "days"];

/** The filters as they stand in the fields, before they are taken. */
export interface ReviewFilter {
  readonly time: TimeChoice;
  readonly from: string;
  readonly until: string;
  readonly siteText: string;
  readonly siteId: string | null;
  readonly group: FaultGroup | "any";
}

export type FilterReading =
  | { readonly kind: "address"; readonly address: ReviewAddress }
  | { readonly kind: "problems"; readonly from?: string; readonly until?: string; readonly site?: string };

/** A day that has been, as people type it: "3 Mar", "yesterday", "2026-03-03". Null where the text means none. */
export function readPastDay(text: string, now: Date): string | null {
  if (text.trim() === "") return null;
  const reading = readTime(`${text.trim()} 00:00`, now, "past");
  return reading.kind === "moment" ? storedDay(new Date(reading.at)) : null;
}

const dayProblem = "That is no day that can be read. Write it as in 3 Mar, 3 Mar 2026 or yesterday.";

/** The address the fields mean, or a sentence for each field that means nothing yet. */
export function readFilter(filter: ReviewFilter, now: Date): FilterReading {
  const { time, siteText, siteId, group } = filter;
  const own = time === "days";
  const from = own ? readPastDay(filter.from, now) : null;
  const until = own ? readPastDay(filter.until, now) : null;
  const problems = {
    ...(own && from === null ? { from: dayProblem } : {}),
    ...(own && until === null ? { until: dayProblem } : {}),
    ...(own && from !== null && until !== null && from > until
      ? { until: "The last day lies before the first one. Change one of them." }
      : {}),
    ...(siteId === null && siteText.trim() !== ""
      ? { site: "No such site. Choose one from the list, or leave the field empty for all." }
      : {}),
  };
  if (Object.keys(problems).length > 0) return { kind: "problems", ...problems };
  const last = own ? "year" : time;
  return { kind: "address", address: { last, from, until, site: siteId, group: groupOf(group) } };
}

export const groupChoices = ["any", ...faultGroups] as const;

function groupOf(group: FaultGroup | "any"): FaultGroup | null {
  return group === "any" ? null : group;
}
