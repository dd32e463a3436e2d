import type { LiftState } from "#shared-lib/words.ts";
import type { Context } from "../../context.ts";

export interface NewLiftState {
  readonly state: LiftState;
  readonly reason: string;
  readonly since: string;
  /** Who compared the bridge register with the shaft, when the lift goes back in service. */
  readonly comparedBy: string | null;
}

/** Sets the state of a lift as part of another record's command. A state that is already so keeps its time and reason. */
export function setLiftState(context: Context, liftId: string, next: NewLiftState): void {
  const lift = context.records.find("lift", liftId);
  if (lift.state === next.state && next.state !== "in service" && lift.stateReason !== "") return;
  context.records.update("lift", lift, {
    state: next.state,
    stateReason: next.reason,
    stateSince: next.since,
    stateBy: context.person?.name ?? null,
    stateComparedBy: next.comparedBy,
  });
}
