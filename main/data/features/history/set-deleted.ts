import type { Entity } from "#shared-lib/contract/history.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { fixesDeletedWithVisitSql, fixesOfVisitSql } from "./history.sql.ts";

/**
 * Deletes or restores a record with what cannot stand without it: the recorded fix of a visit goes with the visit, and
 * comes back with it if it went with it. A fix that had been taken away before stays away.
 */
export function setDeleted(
  context: Context,
  entity: Entity,
  record: StoredRecord,
  deleted: boolean,
): { id: string; version: number } {
  if (entity === "visit") {
    const sql = deleted ? fixesOfVisitSql : fixesDeletedWithVisitSql;
    for (const { id } of context.store.all<{ id: string }>(sql, { visitId: record.id })) {
      const fix = context.records.findIncludingDeleted("recorded fix", id);
      context.records.setDeleted("recorded fix", fix, deleted);
    }
  }
  return context.records.setDeleted(entity, record, deleted);
}
