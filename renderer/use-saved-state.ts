import { useSyncExternalStore } from "react";
import type { ErrorCode, SillbookError } from "#shared-lib/errors.ts";

/** What the foot of the column says about everything typed in this window. */
export interface SavedSummary {
  /** Writes on their way. */
  readonly pending: number;
  /** Moment of the newest write that is on disk, ISO 8601; null before the first one. */
  readonly savedAt: string | null;
  /** Why the newest write is not on disk. Stays until a later write succeeds. */
  readonly failure: string | null;
  /** Drafts that are kept but not saved as records: key and when kept. */
  readonly drafts: ReadonlyMap<string, string>;
  readonly connected: boolean;
}

/** These say that the disk or the program failed, not that an entry was refused; the field or page says the latter. */
const lossCodes: readonly ErrorCode[] = [
  "disk-full",
  "disk-denied",
  "disk-failed",
  "store-damaged",
  "shell-unreachable",
  "unexpected",
];

let summary: SavedSummary = { pending: 0, savedAt: null, failure: null, drafts: new Map(), connected: true };
const listeners = new Set<() => void>();

function change(part: Partial<SavedSummary>): void {
  summary = { ...summary, ...part };
  for (const listener of [...listeners]) listener();
}

export function writeStarted(): void {
  change({ pending: summary.pending + 1 });
}

export function writeSaved(at: string): void {
  change({ pending: Math.max(0, summary.pending - 1), savedAt: at, failure: null });
}

export function writeFailed(error: SillbookError): void {
  const lost = lossCodes.includes(error.code);
  change({
    pending: Math.max(0, summary.pending - 1),
    failure: lost ? error.message : summary.failure,
  });
}

/** Something was saved, here or in another window. */
export function savedElsewhere(at: string): void {
  if (summary.savedAt === null || at > summary.savedAt) change({ savedAt: at });
}

export function draftKept(key: string, at: string): void {
  change({ drafts: new Map([...summary.drafts, [key, at]]), failure: null });
}

export function draftGone(key: string): void {
  if (!summary.drafts.has(key)) return;
  change({ drafts: new Map([...summary.drafts].filter(([other]) => other !== key)) });
}

export function draftFailed(error: SillbookError): void {
  change({ failure: error.message });
}

export function connectionChanged(connected: boolean): void {
  change({ connected });
}

export function useSavedSummary(): SavedSummary {
  return useSyncExternalStore(subscribe, () => summary);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
