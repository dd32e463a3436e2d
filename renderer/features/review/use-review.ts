import { useNavigate, useSearch } from "@tanstack/react-router";
import { useMemo } from "react";
import type { InputOf, OutputOf } from "#shared-lib/contract/operations.ts";
import { useNow } from "../../use-now.ts";
import { type ReadState, useRead } from "../../use-read.ts";
import {
  daysOf,
  momentsOf,
  type PeriodDays,
  type ReviewAddress,
  readReviewAddress,
  storedDay,
  writeReviewAddress,
} from "./review-address.ts";
import { type YearBefore, yearBeforeOf } from "./review-words.ts";

export interface Review {
  readonly now: Date;
  readonly address: ReviewAddress;
  readonly setAddress: (next: ReviewAddress) => void;
  readonly days: PeriodDays;
  /** What the counts are asked with. */
  readonly period: Period;
  readonly moments: { readonly from: string; readonly until: string };
  readonly repeats: ReadState<OutputOf<"review.repeats">>;
  readonly counts: ReadState<OutputOf<"review.counts">>;
  readonly withoutCause: ReadState<OutputOf<"review.withoutCause">>;
  readonly notesUsed: ReadState<OutputOf<"review.notesUsed">>;
  readonly attention: ReadState<OutputOf<"review.attention">>;
  /** Open callouts of the sites looked at, whatever their group: people inside are no matter of groups. */
  readonly open: ReadState<OutputOf<"callout.list">>;
  readonly yearBefore: YearBefore;
}

type Period = InputOf<"review.repeats">;

const entities = ["callout", "recordedFix", "visit", "lift", "site", "faultNote", "bridge", "danger"];
const hour = 60 * 60 * 1000;

/** The address, the period it means today, and everything that is counted in it. */
export function useReview(): Review {
  const search = useSearch({ strict: false }) as Readonly<Record<string, unknown>>;
  const navigate = useNavigate();
  const now = useNow(60_000);
  const today = storedDay(now);
  const address = readReviewAddress(search, today);
  const days = daysOf(address, today);
  const moments = useMemo(() => momentsOf({ from: days.from, until: days.until }), [days.from, days.until]);
  const narrowed = {
    ...(address.site === null ? {} : { siteId: address.site }),
    ...(address.group === null ? {} : { group: address.group }),
  };
  const period: Period = { ...moments, ...narrowed };
  const repeats = useRead("review.repeats", period, { entities });
  return {
    now,
    address,
    setAddress: (next) => void navigate({ to: "/review", search: writeReviewAddress(next) }),
    days,
    moments,
    period,
    repeats,
    counts: useRead("review.counts", period, { entities }),
    withoutCause: useRead("review.withoutCause", period, { entities }),
    notesUsed: useRead("review.notesUsed", period, { entities }),
    attention: useRead("review.attention", { ...upToNow(now), ...narrowed }, { entities }),
    open: useRead(
      "callout.list",
      {
        filter: { open: true, ...(address.site === null ? {} : { siteId: address.site }) },
        limit: 2000,
      },
      { entities: [...entities, "callout event"] },
    ),
    yearBefore: yearBeforeOf(moments, repeats.value?.firstReceivedAt ?? null),
  };
}

/** What needs a person is asked for today, whatever time is looked at. The full hour, so that it is not asked each minute. */
function upToNow(now: Date): { readonly from: string; readonly until: string } {
  const until = new Date(Math.ceil((now.getTime() + 1) / hour) * hour);
  return { from: new Date(until.getTime() - 24 * hour).toISOString(), until: until.toISOString() };
}
