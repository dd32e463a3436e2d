import type { EntityTable } from "./entities.ts";

/** Table and column names come from `entityTables`, never from input; values are always bound. */
export function insertRecordSql(entity: EntityTable): string {
  const columns = ["id", "version", "createdAt", ...Object.keys(entity.columns)];
  return `INSERT INTO ${entity.table} (${columns.join(", ")}) VALUES (${columns.map((column) => `:${column}`).join(", ")})`;
}

export function updateRecordSql(entity: EntityTable, columns: readonly string[]): string {
  const assignments = ["version = :version", ...columns.map((column) => `${column} = :${column}`)];
  return `UPDATE ${entity.table} SET ${assignments.join(", ")} WHERE id = :id`;
}

export function markDeletedSql(entity: EntityTable): string {
  return `UPDATE ${entity.table} SET deleted = :deleted, version = :version WHERE id = :id`;
}

export function findRecordSql(entity: EntityTable): string {
  return `SELECT * FROM ${entity.table} WHERE id = :id`;
}

export const insertChangeSql = `INSERT INTO change (stamp, device, personId, entity, rowId, field, value, schemaVersion)
  VALUES (:stamp, :device, :personId, :entity, :rowId, :field, :value, :schemaVersion)`;

export const changesOfRowSql = `SELECT change.id, change.stamp, change.field, change.value, change.personId, person.name AS personName
  FROM change LEFT JOIN person ON person.id = change.personId
  WHERE change.rowId = :rowId AND change.entity = :entity ORDER BY change.id`;

export const readStateSql = "SELECT value FROM deviceState WHERE key = :key";
export const writeStateSql = `INSERT INTO deviceState (key, value) VALUES (:key, :value)
  ON CONFLICT (key) DO UPDATE SET value = excluded.value`;
