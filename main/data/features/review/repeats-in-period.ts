import type { z } from "zod";
import type { chainSchema } from "#shared-lib/contract/review.ts";
import { chainsByGroup, chainsByLift, isWithinWindow, type RepeatCandidate } from "#shared-lib/repeats.ts";
import type { Store } from "../../store.ts";
import { calloutsOfChainsSql, chainCandidatesSql, liftTitlesSql } from "./review.sql.ts";
import { daysBefore, isInPeriod, type Received, type ReviewPeriod, receivedIn } from "./review-period.ts";

type Chain = z.infer<typeof chainSchema>;

export interface RepeatsInPeriod {
  readonly received: number;
  readonly repeatIds: readonly string[];
  readonly sameLiftIds: readonly string[];
  /** Chains with a repeat in the period, as far as they were read. */
  readonly chains: readonly (readonly RepeatCandidate[])[];
}

const repeatsOf = (chain: readonly RepeatCandidate[]): readonly RepeatCandidate[] => chain.slice(1);

/**
 * Callouts received in a period and which of them repeat an earlier one, which may lie before the period. Cancelled
 * callouts count as they were logged. So do those to a wrong address, but they are no repeats and have none: it was
 * not that lift.
 */
export function repeatsInPeriod(store: Store, period: ReviewPeriod): RepeatsInPeriod {
  const rows = receivedIn(store, period, daysBefore(period.from, period.windowDays));
  const counted = (callout: RepeatCandidate): boolean => isInPeriod(callout, period);
  const candidates = rows.filter(({ wrongAddress }: Received) => wrongAddress === 0);
  const chains = chainsByGroup(candidates, period.windowDays).filter((chain) =>
    repeatsOf(chain).some(counted),
  );
  const idsOf = (found: readonly (readonly RepeatCandidate[])[]): string[] =>
    found.flatMap((chain) => repeatsOf(chain).filter(counted)).map(({ id }) => id);
  return {
    received: rows.filter(counted).length,
    repeatIds: idsOf(chains),
    sameLiftIds: idsOf(chainsByLift(candidates, period.windowDays)),
    chains,
  };
}

/**
 * The same chains from their beginning, which may lie before what was read: the lifts of those are read as a whole, once
 * for all their chains. A chain is known again by its newest callout.
 */
function fromTheirBeginning(
  store: Store,
  chains: RepeatsInPeriod["chains"],
  { from, until, windowDays }: ReviewPeriod,
): RepeatsInPeriod["chains"] {
  const readSince = daysBefore(from, windowDays);
  const mayBeLonger = chains.filter(
    ([first]) => first && daysBefore(first.receivedAt, windowDays) < readSince,
  );
  const liftIds = JSON.stringify([...new Set(mayBeLonger.map(([first]) => first?.liftId))]);
  const all = store.all<RepeatCandidate>(chainCandidatesSql, { liftIds, until });
  const whole = new Map(chainsByGroup(all, windowDays).map((chain) => [chain.at(-1)?.id, chain]));
  return chains.map((chain) => whole.get(chain.at(-1)?.id) ?? chain);
}

export function liftTitles(store: Store): Map<string, { siteId: string; title: string }> {
  return new Map(
    store.all<{ id: string; siteId: string; title: string }>(liftTitlesSql).map((row) => [row.id, row]),
  );
}

/** Chains as the contract shows them, the longest first, then the one whose newest callout is newest. */
export function describeChains(store: Store, repeats: RepeatsInPeriod, period: ReviewPeriod): Chain[] {
  const whole = fromTheirBeginning(store, repeats.chains, period);
  const ids = JSON.stringify(whole.flat().map(({ id }) => id));
  const callouts = new Map(
    store.all<Chain["callouts"][number]>(calloutsOfChainsSql, { ids }).map((row) => [row.id, row]),
  );
  const titles = liftTitles(store);
  return whole
    .map((chain): Chain => {
      const [first] = chain as readonly [RepeatCandidate];
      const liftId = first.liftId ?? "";
      return {
        liftId,
        liftTitle: titles.get(liftId)?.title ?? "",
        group: first.group,
        callouts: chain.flatMap(({ id }) => callouts.get(id) ?? []),
        running: isWithinWindow(chain.at(-1)?.receivedAt ?? "", period.until, period.windowDays),
      };
    })
    .sort((a, b) => b.callouts.length - a.callouts.length || newestOf(b).localeCompare(newestOf(a)));
}

const newestOf = (chain: Chain): string => chain.callouts.at(-1)?.receivedAt ?? "";
