import type { LiftState } from "#shared-lib/words.ts";
import type { Context } from "../../context.ts";

export interface NewLiftState {
  readonly state: LiftState;
  readonly reason: string;
  readonly since: string;
  /** Who compared the bridge register with the shaft, when the lift goes back in service. */
  readonly comparedBy: string | null;
}

/**
 * Sets the state of a lift as part of another record's command. A lift that is out of service already stays so since
 * then; the newest reason is the one that is seen.
 */
export function setLiftState(context: Context, liftId: string, next: NewLiftState): void {
  const lift = context.records.find("lift", liftId);
  const staysOut = lift.state === next.state && next.state === "out of service";
  context.records.update("lift", lift, {
    state: next.state,
    stateReason: next.reason,
    stateSince: staysOut ? (lift.stateSince as string | null) : next.since,
    stateBy: context.person?.name ?? null,
    stateComparedBy: next.comparedBy,
  });
}
