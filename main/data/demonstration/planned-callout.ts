import type { Ending, FaultGroup, InsideState } from "#shared-lib/words.ts";

/** One callout as the demonstration plays it. Times in milliseconds since 1970, durations in minutes. */
export interface PlannedCallout {
  readonly liftId: string;
  readonly receivedAt: number;
  readonly said: string;
  readonly group: FaultGroup;
  readonly inside?: InsideState;
  readonly caller: string;
  readonly callBack: string;
  readonly engineerId: string;
  readonly displayReading?: string;
  readonly landingId?: string | null;
  /** Minutes from the call until it was passed on, the engineer arrived, and the visit ended. */
  readonly passedAfter: number;
  readonly arrivedAfter: number;
  readonly leftAfter: number;
  readonly found: string;
  readonly done: string;
  readonly fix: {
    readonly cause: string;
    readonly fix: string;
    readonly noteKey: string | null;
    readonly causeKey: string | null;
  } | null;
  readonly parts?: readonly { readonly name: string; readonly quantity: number }[];
  readonly ending: Ending;
  readonly chargeable: boolean;
  /** How far it has come; the rest has not happened yet. */
  readonly until?: "received" | "passed on" | "arrived" | "made safe";
}
