import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { type Ending, endings } from "#shared-lib/words.ts";
import type { Handlers } from "../../context.ts";
import type { SqlParameters } from "../../store.ts";
import { bridgeQueries } from "../bridge/queries.ts";
import { noteLinesByIdSql } from "../fault-note/fault-note.sql.ts";
import { noteLines } from "../fault-note/note-record.ts";
import { countCallouts } from "./count-callouts.ts";
import { describeChains, liftTitles, repeatsInPeriod } from "./repeats-in-period.ts";
import { closedInTimeSql, endedByNotesSql } from "./review.sql.ts";
import { daysBefore, firstReceivedAt, type ReviewPeriod, readPeriod, yearEarlier } from "./review-period.ts";

/** Statement and values of a question about closed callouts. */
function ofPeriod(
  sqlOf: (site: boolean, group: boolean) => string,
  { from, until, siteId, group }: ReviewPeriod,
): [string, SqlParameters] {
  const parameters = { from, until, ...(siteId ? { siteId } : {}), ...(group ? { group } : {}) };
  return [sqlOf(siteId !== undefined, group !== undefined), parameters];
}

interface ClosedCallout {
  readonly id: string;
  readonly ending: Ending;
  readonly hasCause: number;
}

function withoutCause(closed: readonly ClosedCallout[]): string[] {
  return closed.filter(({ hasCause }) => hasCause === 0).map(({ id }) => id);
}

function endingsOf(closed: readonly ClosedCallout[]): OutputOf<"review.withoutCause">["endings"] {
  return endings
    .map((ending) => {
      const ended = closed.filter((callout) => callout.ending === ending);
      return { ending, closedIds: ended.map(({ id }) => id), calloutIds: withoutCause(ended) };
    })
    .filter(({ closedIds }) => closedIds.length > 0)
    .sort((a, b) => b.calloutIds.length - a.calloutIds.length);
}

export const reviewQueries: Handlers<
  "review.repeats" | "review.counts" | "review.withoutCause" | "review.notesUsed" | "review.attention"
> = {
  "review.repeats"({ store }, input) {
    const period = readPeriod(input);
    const now = repeatsInPeriod(store, period);
    const before = repeatsInPeriod(store, yearEarlier(period));
    return {
      callouts: now.received,
      repeats: now.repeatIds.length,
      calloutsYearBefore: before.received,
      repeatsYearBefore: before.repeatIds.length,
      chains: describeChains(store, now, period),
      sameLift: { repeats: now.sameLiftIds.length, calloutIds: [...now.sameLiftIds] },
      repeatIds: [...now.repeatIds],
      repeatIdsYearBefore: [...before.repeatIds],
      firstReceivedAt: firstReceivedAt(store, period),
    };
  },

  "review.counts"({ store }, input) {
    return countCallouts(store, readPeriod(input));
  },

  /** Every ending counts: also one that nobody found a cause for is seen here, and opened to see why. */
  "review.withoutCause"({ store }, input) {
    const closed = store.all<ClosedCallout>(...ofPeriod(closedInTimeSql, readPeriod(input)));
    return { closed: closed.length, calloutIds: withoutCause(closed), endings: endingsOf(closed) };
  },

  "review.notesUsed"({ store }, input) {
    const ended = new Map<string, string[]>();
    const rows = store.all<{ noteId: string; calloutId: string }>(
      ...ofPeriod(endedByNotesSql, readPeriod(input)),
    );
    for (const { noteId, calloutId } of rows) ended.set(noteId, [...(ended.get(noteId) ?? []), calloutId]);
    const notes = noteLines(store, noteLinesByIdSql, { ids: JSON.stringify([...ended.keys()]) });
    return {
      notes: notes
        .map((line) => {
          const calloutIds = ended.get(line.id) ?? [];
          return { ...line, inPeriod: calloutIds.length, calloutIds };
        })
        .sort((a, b) => b.inPeriod - a.inPeriod || (a.number < b.number ? -1 : 1)),
    };
  },

  /** Running chains are those whose newest callout lies within the window of the period's end, however short the period. */
  "review.attention"(context, input) {
    const asked = readPeriod(input);
    const period = { ...asked, from: daysBefore(asked.until, asked.windowDays) };
    const repeats = repeatsInPeriod(context.store, period);
    const { bridges, dangers } = bridgeQueries["bridge.list"](context, { open: true });
    const titles = liftTitles(context.store);
    const ofSite = ({ liftId }: { readonly liftId: string }): boolean =>
      asked.siteId === undefined || titles.get(liftId)?.siteId === asked.siteId;
    return {
      chains: describeChains(context.store, repeats, period).filter(({ running }) => running),
      bridges: bridges.filter(ofSite),
      dangers: dangers.filter(ofSite),
    };
  },
};
