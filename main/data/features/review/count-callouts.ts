import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Store } from "../../store.ts";
import { liftTitles } from "./repeats-in-period.ts";
import { isInPeriod, type Received, type ReviewPeriod, receivedIn, yearEarlier } from "./review-period.ts";

type Counts = OutputOf<"review.counts">;
interface Tally {
  count: number;
  yearBefore: number;
  calloutIds: string[];
  yearBeforeIds: string[];
}

class Tallies<Key extends string> {
  readonly #tallies = new Map<Key, Tally>();

  of(key: Key): Tally {
    let tally = this.#tallies.get(key);
    if (!tally) {
      tally = { count: 0, yearBefore: 0, calloutIds: [], yearBeforeIds: [] };
      this.#tallies.set(key, tally);
    }
    return tally;
  }

  /** Most first; those that only had callouts a year before come last, so that what got better is seen too. */
  list(): (Tally & { readonly key: Key })[] {
    return [...this.#tallies]
      .map(([key, tally]) => ({ key, ...tally }))
      .sort((a, b) => b.count - a.count || b.yearBefore - a.yearBefore);
  }
}

/**
 * Callouts per lift and per fault group. Cancelled ones and those to a wrong address count in their fault group as
 * they were logged; a lift does not count the ones to a wrong address, since it was not that lift.
 */
export function countCallouts(store: Store, period: ReviewPeriod): Counts {
  const lifts = new Tallies<string>();
  const groups = new Tallies<Received["group"]>();
  const unsettled: string[] = [];
  const read = (within: ReviewPeriod): Received[] =>
    receivedIn(store, within, within.from).filter((callout) => isInPeriod(callout, within));
  const talliesOf = (liftId: string | null, group: Received["group"], wrongAddress: number): Tally[] => [
    groups.of(group),
    ...(liftId !== null && wrongAddress === 0 ? [lifts.of(liftId)] : []),
  ];
  for (const { id, liftId, group, wrongAddress } of read(period)) {
    if (liftId === null) unsettled.push(id);
    for (const tally of talliesOf(liftId, group, wrongAddress)) {
      tally.count += 1;
      tally.calloutIds.push(id);
    }
  }
  for (const { id, liftId, group, wrongAddress } of read(yearEarlier(period))) {
    for (const tally of talliesOf(liftId, group, wrongAddress)) {
      tally.yearBefore += 1;
      tally.yearBeforeIds.push(id);
    }
  }
  const titles = liftTitles(store);
  return {
    lifts: lifts
      .list()
      .map(({ key, ...tally }) => ({ ...tally, liftId: key, liftTitle: titles.get(key)?.title ?? "" })),
    groups: groups.list().map(({ key, ...tally }) => ({ ...tally, group: key })),
    unsettled,
  };
}
