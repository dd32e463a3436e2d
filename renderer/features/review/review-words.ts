import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatDate, formatStoredDay } from "#shared-lib/format.ts";
import { ordinalWord } from "#shared-lib/ordinal-word.ts";
import type { FaultGroup } from "#shared-lib/words.ts";
import type { LastTime, PeriodDays } from "./review-address.ts";

export type Repeats = OutputOf<"review.repeats">;
export type Counts = OutputOf<"review.counts">;
export type Chain = Repeats["chains"][number];

/** How much of the same dates a year before is on record. */
export type YearBefore =
  | { readonly kind: "whole" }
  | { readonly kind: "part"; readonly since: string }
  | { readonly kind: "none"; readonly since: string };

/** What lies before the first callout is not known, rather than quiet. */
export function yearBeforeOf(moments: PeriodDays, firstReceivedAt: string | null): YearBefore {
  const earlier = (moment: string): number => {
    const date = new Date(moment);
    return date.setFullYear(date.getFullYear() - 1);
  };
  if (firstReceivedAt === null) return { kind: "none", since: "" };
  const first = Date.parse(firstReceivedAt);
  const day = 24 * 60 * 60 * 1000;
  if (first >= earlier(moments.until)) return { kind: "none", since: firstReceivedAt };
  // A first day without a callout is no gap in the records.
  return first > earlier(moments.from) + day ? { kind: "part", since: firstReceivedAt } : { kind: "whole" };
}

/** The sentence that says what is missing for a comparison; empty where nothing is. */
export function missingWords(before: YearBefore): string {
  if (before.kind === "whole") return "";
  const since = formatDate(before.since);
  return before.kind === "none"
    ? `Nothing to compare with: the records begin on ${since}, so the year before is not in them.`
    : `The year before is only partly on record: the records begin on ${since}.`;
}

/** "18 Nov 2025 to 17 Nov 2026" */
export function periodWords({ from, until }: PeriodDays): string {
  return from === until ? formatStoredDay(from) : `${formatStoredDay(from)} to ${formatStoredDay(until)}`;
}

export const lastWords: { readonly [Last in LastTime]: string } = {
  "30 days": "Last 30 days",
  quarter: "Last quarter",
  year: "Last year",
};

export function calloutsWord(count: number): string {
  return `${count} ${count === 1 ? "callout" : "callouts"}`;
}

/** "32 of 307 callouts came back within 30 days" */
export function repeatsTitle({ repeats, callouts }: Repeats, windowDays: number): string {
  if (callouts === 0) return "No callout in this time";
  if (repeats === 0) return `${calloutsWord(callouts)}, no repeat within ${windowDays} days`;
  return `${repeats} of ${calloutsWord(callouts)} came back within ${windowDays} days`;
}

/** "5 more", "2 fewer", "as many", beside the count of the year before. */
export function differenceWords(count: number, yearBefore: number): string {
  if (count === yearBefore) return "as many";
  return count > yearBefore ? `${count - yearBefore} more` : `${yearBefore - count} fewer`;
}

/** "third repeat of a door fault": a chain of four callouts. */
export function chainWords({ group, callouts }: Pick<Chain, "group" | "callouts">): string {
  return `${ordinalWord(callouts.length - 1).toLowerCase()} repeat of ${faultWords[group]}`;
}

const faultWords: { readonly [Group in FaultGroup]: string } = {
  doors: "a door fault",
  "door operator": "a door operator fault",
  "safety chain": "a safety chain fault",
  "position and zone sensing": "a position or zone sensing fault",
  "drive and motor": "a drive or motor fault",
  brake: "a brake fault",
  "controller and power supply": "a controller or power supply fault",
  "landing and car panels": "a landing or car panel fault",
  "panel bus and cabling": "a panel bus or cabling fault",
  "suspension and traction": "a suspension or traction fault",
  "governor and safety gear": "a governor or safety gear fault",
  "buffers, pit and shaft": "a buffer, pit or shaft fault",
  "car, lighting, ventilation": "a car, lighting or ventilation fault",
  "alarm and rescue": "an alarm or rescue fault",
  hydraulics: "a hydraulic fault",
  "environment and misuse": "trouble from environment or misuse",
  "not yet known": "an unknown fault",
};

/**
 * The fix that was recorded most often in a chain before its newest callout, twice at least: after each of them the
 * fault came back. Null where no fix was tried twice.
 */
export function fixTriedAgain({ callouts }: Pick<Chain, "callouts">): { fix: string; times: number } | null {
  const times = new Map<string, { fix: string; times: number }>();
  for (const { fix } of callouts.slice(0, -1)) {
    const words = fix.trim().replace(/\.$/, "");
    if (words === "") continue;
    const key = words.toLowerCase();
    const before = times.get(key) ?? { fix: words, times: 0 };
    times.set(key, { ...before, times: before.times + 1 });
  }
  const [most] = [...times.values()].sort((a, b) => b.times - a.times);
  return most !== undefined && most.times > 1 ? most : null;
}

/** "“Door edge cleaned” was tried twice and did not hold." */
export function fixWords(tried: { fix: string; times: number }): string {
  const times = tried.times === 2 ? "twice" : `${tried.times} times`;
  return `“${tried.fix}” was tried ${times} and did not hold.`;
}

/** A chain is known again by its newest callout. */
export function chainKey({ callouts }: Pick<Chain, "callouts">): string {
  return callouts.at(-1)?.id ?? "";
}

/** Chains that need a person first, then as they came: the longest first. */
export function orderedChains(chains: readonly Chain[], urgent: ReadonlySet<string>): Chain[] {
  return [...chains].sort((a, b) => Number(urgent.has(chainKey(b))) - Number(urgent.has(chainKey(a))));
}

/** "doors" stays a word of its own at the beginning of a line: "Doors". */
export function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

interface Counted {
  readonly count: number;
}

/** "Most callouts: doors, 69 of 307"; where several share the first place, their number. Counts come with the most first. */
export function mostWords<Row extends Counted>(
  rows: readonly Row[],
  titleOf: (row: Row) => string,
  what: string,
): string {
  const [first] = rows;
  if (first === undefined || first.count === 0) return `No callout of ${what} in this time`;
  const same = rows.filter(({ count }) => count === first.count).length;
  if (same > 1) return `Most callouts: ${same} ${what} with ${first.count} each`;
  const total = rows.reduce((sum, { count }) => sum + count, 0);
  return `Most callouts: ${titleOf(first)}, ${first.count} of ${total}`;
}
