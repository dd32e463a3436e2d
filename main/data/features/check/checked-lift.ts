import type { CheckedLift } from "#shared-lib/check-plans/check-plan.ts";
import type { Landing, Lift, Signal } from "#shared-lib/contract/lift.ts";
import type { Context } from "../../context.ts";
import { fromRow } from "../../record-store.ts";
import { listLandingsSql, listSignalsSql } from "../lift/lift.sql.ts";

/**
 * What check plans make their steps from.
 * @throws SillbookError not-found
 */
export function checkedLift(context: Context, liftId: string): CheckedLift {
  const rows = (sql: string): Record<string, unknown>[] => context.store.all(sql, { liftId });
  return {
    lift: context.records.find("lift", liftId) as unknown as Lift,
    landings: rows(listLandingsSql).map((row) => fromRow("landing", row) as unknown as Landing),
    signals: rows(listSignalsSql).map((row) => fromRow("signal", row) as unknown as Signal),
  };
}
