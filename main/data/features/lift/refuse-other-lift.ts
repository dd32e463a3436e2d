import type { Entity } from "#shared-lib/contract/history.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Context } from "../../context.ts";

/**
 * What is recorded on a lift names only a landing, callout or visit of that lift. The problem stands at `<entity>Id`.
 * @throws SillbookError not-found, input-invalid
 */
export function refuseOtherLift(
  context: Context,
  entity: Entity & ("landing" | "callout" | "visit"),
  id: string | null,
  liftId: string,
): void {
  if (id === null || context.records.find(entity, id).liftId === liftId) return;
  const message = `That ${entity} is of another lift.`;
  throw new SillbookError("input-invalid", `${message} Nothing was recorded.`, {
    fields: [{ path: [`${entity}Id`], message }],
  });
}
