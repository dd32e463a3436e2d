import type { FaultGroup } from "./words.ts";

export interface RepeatCandidate {
  readonly id: string;
  readonly liftId: string | null;
  readonly group: FaultGroup;
  /** Moment, ISO 8601 UTC. */
  readonly receivedAt: string;
}

const dayInMilliseconds = 24 * 60 * 60 * 1000;

/** True when the later callout was received at most `windowDays` times 24 hours after the earlier one. */
export function isWithinWindow(earlier: string, later: string, windowDays: number): boolean {
  return Date.parse(later) - Date.parse(earlier) <= windowDays * dayInMilliseconds;
}

function inOrderOfReceipt(a: RepeatCandidate, b: RepeatCandidate): number {
  if (a.receivedAt !== b.receivedAt) return a.receivedAt < b.receivedAt ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

function chainsBy<Candidate extends RepeatCandidate>(
  callouts: readonly Candidate[],
  windowDays: number,
  keyOf: (callout: Candidate) => string | null,
): Candidate[][] {
  const chains: Candidate[][] = [];
  const running = new Map<string, Candidate[]>();
  for (const callout of [...callouts].sort(inOrderOfReceipt)) {
    const key = keyOf(callout);
    if (key === null) continue;
    const chain = running.get(key);
    const last = chain?.at(-1);
    if (chain && last && isWithinWindow(last.receivedAt, callout.receivedAt, windowDays)) {
      chain.push(callout);
      continue;
    }
    const started = [callout];
    running.set(key, started);
    chains.push(started);
  }
  return chains.filter((chain) => chain.length > 1);
}

/**
 * Chains of repeats: same lift, same fault group, each received within the window of the one before.
 * `not yet known` is never a repeat by group. Every chain has at least two callouts, oldest first; the repeats of a
 * chain are all but its first.
 */
export function chainsByGroup<Candidate extends RepeatCandidate>(
  callouts: readonly Candidate[],
  windowDays: number,
): Candidate[][] {
  return chainsBy(callouts, windowDays, (callout) =>
    callout.liftId === null || callout.group === "not yet known"
      ? null
      : `${callout.liftId} ${callout.group}`,
  );
}

/** Chains on the same lift whatever the fault group was, shown beside the repeats by group. */
export function chainsByLift<Candidate extends RepeatCandidate>(
  callouts: readonly Candidate[],
  windowDays: number,
): Candidate[][] {
  return chainsBy(callouts, windowDays, (callout) => callout.liftId);
}
