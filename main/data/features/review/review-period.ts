import type { z } from "zod";
import type { reviewPeriodSchema } from "#shared-lib/contract/review.ts";
import type { RepeatCandidate } from "#shared-lib/repeats.ts";
import type { Store } from "../../store.ts";
import { firstReceivedSql, receivedInTimeSql } from "./review.sql.ts";

/** From a moment, up to and without another one, for one site or fault group where these are named. */
export type ReviewPeriod = z.output<typeof reviewPeriodSchema>;

export interface Received extends RepeatCandidate {
  readonly wrongAddress: number;
}

const day = 24 * 60 * 60 * 1000;

export function daysBefore(moment: string, days: number): string {
  return new Date(Date.parse(moment) - days * day).toISOString();
}

/** Moments in one way of writing, so that they can be compared as text with what is stored. */
export function readPeriod(period: ReviewPeriod): ReviewPeriod {
  const written = (moment: string): string => new Date(moment).toISOString();
  return { ...period, from: written(period.from), until: written(period.until) };
}

/** The same dates and times of day one year earlier, in the time zone of this machine; 29 February is then 1 March. */
export function yearEarlier(period: ReviewPeriod): ReviewPeriod {
  const shift = (moment: string): string => {
    const date = new Date(moment);
    date.setFullYear(date.getFullYear() - 1);
    return date.toISOString();
  };
  return { ...period, from: shift(period.from), until: shift(period.until) };
}

export function isInPeriod(callout: RepeatCandidate, { from, group }: ReviewPeriod): boolean {
  return callout.receivedAt >= from && (group === undefined || callout.group === group);
}

/** Callouts received before the period's end, from `from` on, which may lie before the period's own beginning. */
export function receivedIn(store: Store, { siteId, until }: ReviewPeriod, from: string): Received[] {
  const sql = receivedInTimeSql(siteId !== undefined);
  return store.all<Received>(sql, { from, until, ...(siteId ? { siteId } : {}) });
}

/** When the records of callouts begin: what lies before is not known rather than quiet. */
export function firstReceivedAt(store: Store, { siteId }: ReviewPeriod): string | null {
  const [row] = store.all<{ first: string | null }>(
    firstReceivedSql(siteId !== undefined),
    siteId ? { siteId } : {},
  );
  return row?.first ?? null;
}
