export const liftsByNameSql = `SELECT lift.id, lift.name, lift.plateNumber, lift.siteId, site.name AS site
  FROM lift JOIN site ON site.id = lift.siteId WHERE lift.deleted = 0 AND site.deleted = 0`;
export const sitesByNameSql = "SELECT id, name FROM site WHERE deleted = 0";
export const sameCalloutSql = `SELECT id, said FROM callout
  WHERE liftId = :liftId AND receivedAt >= :from AND receivedAt < :until AND deleted = 0`;

export const insertRunSql = `INSERT INTO importRun (id, name, header, mapping, at, personId)
  VALUES (:id, :name, :header, :mapping, :at, :personId)`;
export const findRunSql = "SELECT id, name, header FROM importRun WHERE id = :id";
export const rememberedSql =
  "SELECT mapping FROM importRun WHERE header = :header ORDER BY at DESC, id DESC LIMIT 1";
export const listRunsSql = `SELECT run.id AS importId, run.name, run.at, person.name AS personName,
    (SELECT count(*) FROM importedRecord AS made WHERE made.importId = run.id AND made.entity IN ('callout', 'lift')
      AND made.state <> 'taken back') AS added,
    (SELECT count(*) FROM importedRecord AS made WHERE made.importId = run.id) AS made,
    (SELECT count(*) FROM importedRecord AS made WHERE made.importId = run.id AND made.state = 'brought in') AS waiting,
    (SELECT count(*) FROM importedRecord AS made WHERE made.importId = run.id AND made.state = 'taken back') AS takenBack,
    (SELECT count(*) FROM importRefusal AS refusal WHERE refusal.importId = run.id) AS refused
  FROM importRun AS run JOIN person ON person.id = run.personId ORDER BY run.at DESC, run.id DESC`;

export const insertImportedSql =
  "INSERT INTO importedRecord (importId, entity, recordId) VALUES (:importId, :entity, :recordId)";
/** The latest first: a callout before the lift that was added for it, a lift before its site. */
export const importedSql = `SELECT place, entity, recordId FROM importedRecord
  WHERE importId = :importId AND state = 'brought in' ORDER BY place DESC LIMIT :limit`;
export const markImportedSql = "UPDATE importedRecord SET state = :state WHERE place = :place";
export const countImportedSql =
  "SELECT count(*) AS count FROM importedRecord WHERE importId = :importId AND state = :state";

export const insertRefusalSql = `INSERT INTO importRefusal (importId, rowNumber, reason, cells)
  VALUES (:importId, :rowNumber, :reason, :cells)
  ON CONFLICT (importId, rowNumber) DO UPDATE SET reason = excluded.reason, cells = excluded.cells`;
export const listRefusalsSql = `SELECT rowNumber, reason, cells FROM importRefusal
  WHERE importId = :importId AND rowNumber > :after ORDER BY rowNumber LIMIT :limit`;

/** What would lose its lift or its site, if that were taken back. */
export const standsOnLiftSql = `SELECT
    (SELECT count(*) FROM callout WHERE liftId = :id AND deleted = 0)
    + (SELECT count(*) FROM visit WHERE liftId = :id AND deleted = 0)
    + (SELECT count(*) FROM bridge WHERE liftId = :id) + (SELECT count(*) FROM danger WHERE liftId = :id)
    + (SELECT count(*) FROM signalCheck WHERE liftId = :id AND deleted = 0)
    + (SELECT count(*) FROM calculation WHERE liftId = :id AND deleted = 0)
    + (SELECT count(*) FROM recordedFix WHERE liftId = :id AND deleted = 0) AS count`;
export const standsOnSiteSql = "SELECT count(*) AS count FROM lift WHERE siteId = :id AND deleted = 0";
export const standsOnCalloutSql = `SELECT
    (SELECT count(*) FROM visit WHERE calloutId = :id AND deleted = 0)
    + (SELECT count(*) FROM recordedFix WHERE calloutId = :id AND deleted = 0)
    + (SELECT count(*) FROM caller WHERE calloutId = :id AND deleted = 0) AS count`;
export const fixesOfCalloutSql = "SELECT id FROM recordedFix WHERE calloutId = :id AND deleted = 0";
