import type { EntityTable } from "../../entities.ts";

/** Words that tell which record it was; the first text column is a good name for each of them. */
const titleColumns: Readonly<Record<string, string>> = {
  company: "name",
  person: "name",
  site: "name",
  lift: "name",
  landing: "marking",
  signal: "name",
  callout: "number",
  visit: "kind || ' ' || arrivedAt",
  recordedFix: "cause",
  faultNote: "title",
  calculation: "calculatorId",
};

export function listDeletedSql(table: EntityTable): string | null {
  const title = titleColumns[table.table];
  if (!title) return null;
  return `SELECT id, version, ${title} AS title FROM ${table.table} WHERE deleted = 1`;
}

export const deletionOfSql = `SELECT change.stamp, change.personId, person.name AS personName
  FROM change LEFT JOIN person ON person.id = change.personId
  WHERE change.rowId = :id AND change.field = 'deleted' ORDER BY change.id DESC LIMIT 1`;
export const liftsOfSiteSql = "SELECT count(*) AS count FROM lift WHERE siteId = :id AND deleted = 0";
export const openOnLiftSql = `SELECT
    (SELECT count(*) FROM callout WHERE liftId = :id AND endedAt IS NULL AND deleted = 0)
  + (SELECT count(*) FROM bridge WHERE liftId = :id AND checkedAt IS NULL)
  + (SELECT count(*) FROM danger WHERE liftId = :id AND clearedAt IS NULL) AS count`;

export const fixesOfVisitSql = "SELECT id FROM recordedFix WHERE visitId = :visitId AND deleted = 0";

/** Fixes whose deletion carries the stamp of the visit's: one command has one stamp. */
export const fixesDeletedWithVisitSql = `SELECT fix.id FROM recordedFix AS fix
  WHERE fix.visitId = :visitId AND fix.deleted = 1 AND
    (SELECT stamp FROM change WHERE rowId = fix.id AND field = 'deleted' ORDER BY id DESC LIMIT 1) =
    (SELECT stamp FROM change WHERE rowId = :visitId AND field = 'deleted' ORDER BY id DESC LIMIT 1)`;
