/** Columns of `searchDocument` in the order in which they are written. */
export const documentColumns = [
  "kind",
  "ref",
  "title",
  "symptom",
  "cause",
  "fix",
  "body",
  "place",
  "marking",
  "site",
  "lift",
  "controllerFamily",
  "drive",
  "faultGroup",
  "state",
  "at",
] as const;

export const findDocumentSql = "SELECT * FROM searchDocument WHERE kind = :kind AND ref = :ref";
export const insertDocumentSql = `INSERT INTO searchDocument (${documentColumns.join(", ")})
  VALUES (${documentColumns.map((column) => `:${column}`).join(", ")})`;
export const updateDocumentSql = `UPDATE searchDocument SET ${documentColumns
  .slice(2)
  .map((column) => `${column} = :${column}`)
  .join(", ")}
  WHERE kind = :kind AND ref = :ref`;
export const deleteDocumentSql = "DELETE FROM searchDocument WHERE docid = :docid";

/** The full-text index must forget the old words while its content table still has them. */
export const forgetTextSql = "DELETE FROM searchText WHERE docid = :docid";
export const enterTextSql = `INSERT INTO searchText (docid, title, symptom, cause, fix, body, place, marking)
  SELECT docid, title, symptom, cause, fix, body, place, marking FROM searchDocument WHERE kind = :kind AND ref = :ref`;

export const scanDocumentsSql =
  "SELECT * FROM searchDocument WHERE docid > :after ORDER BY docid LIMIT :limit";
export const matchTextSql = `SELECT searchDocument.* FROM searchText JOIN searchDocument ON searchDocument.docid = searchText.docid
  WHERE searchText MATCH :match ORDER BY searchText.docid DESC LIMIT :limit`;

export const place = "coalesce(site.name || ', ' || lift.name || ' ' || site.street || ' ' || site.town, '')";
export const ofLift = `coalesce(lift.siteId, '') AS site, coalesce(lift.id, 'not settled') AS lift,
  coalesce(lift.controllerFamily, '') AS controllerFamily, coalesce(lift.driveKind, '') AS drive`;
export const joinLift = (table: string): string =>
  `LEFT JOIN lift ON lift.id = ${table}.liftId LEFT JOIN site ON site.id = lift.siteId`;
const joined = (expression: string, from: string): string =>
  `coalesce((SELECT group_concat(${expression}, char(10)) FROM ${from}), '')`;

/** What each kind of record says to the search, freshly from its tables; no row where the record is deleted. */
export const fixDocumentSql = `SELECT 'fix' AS kind, fix.id AS ref, fix.cause AS title, coalesce(callout.said, '') AS symptom, '' AS cause,
    fix.fix AS fix, coalesce(visit.found || char(10) || visit.done, '') AS body, ${place} AS place,
    coalesce(callout.displayReading, '') || ' ' || coalesce(visit.displayReading, '') AS marking,
    ${ofLift}, fix.faultGroup, '' AS state, fix.at AS at
  FROM recordedFix AS fix LEFT JOIN callout ON callout.id = fix.calloutId LEFT JOIN visit ON visit.id = fix.visitId
    ${joinLift("fix")} WHERE fix.id = :id AND fix.deleted = 0`;

export const liftDocumentSql = `SELECT 'lift' AS kind, lift.id AS ref, site.name || ', ' || lift.name AS title, '' AS symptom, '' AS cause,
    '' AS fix, lift.notes || char(10) || site.accessNotes || char(10) || site.machineryLocation AS body,
    site.street || ' ' || site.town || ' ' || site.contactName AS place,
    lift.plateNumber || ' ' || lift.controllerFamily || ' ' || ${joined("signal.marking", "signal WHERE signal.liftId = lift.id AND signal.deleted = 0")} AS marking,
    ${ofLift}, '' AS faultGroup, '' AS state, NULL AS at
  FROM lift JOIN site ON site.id = lift.siteId WHERE lift.id = :id AND lift.deleted = 0 AND site.deleted = 0`;

export const noteDocumentSql = `SELECT * FROM faultNote WHERE id = :id AND deleted = 0`;

export const checkDocumentSql = `SELECT 'check' AS kind, signalCheck.id AS ref, signalCheck.planName AS title,
    ${joined("step.sentence || ' ' || step.note", "checkStep AS step WHERE step.checkId = signalCheck.id AND step.verdict = 'failed'")} AS symptom,
    '' AS cause, '' AS fix, '' AS body, ${place} AS place, '' AS marking,
    ${ofLift}, '' AS faultGroup, '' AS state, signalCheck.startedAt AS at
  FROM signalCheck ${joinLift("signalCheck")} WHERE signalCheck.id = :id AND signalCheck.deleted = 0`;

/** Visits without a callout; the others are found through their callout. */
export const visitDocumentSql = `SELECT 'visit' AS kind, visit.id AS ref, visit.kind AS title, visit.found AS symptom, '' AS cause, '' AS fix,
    visit.done || char(10) || visit.parts || char(10) || visit.readings AS body, ${place} AS place, visit.displayReading AS marking,
    ${ofLift}, '' AS faultGroup, '' AS state, visit.arrivedAt AS at
  FROM visit ${joinLift("visit")} WHERE visit.id = :id AND visit.deleted = 0 AND visit.calloutId IS NULL`;

export const fixesOfCalloutSql = "SELECT id FROM recordedFix WHERE calloutId = :id";
export const calloutOfRowSql = {
  caller: "SELECT calloutId AS id FROM caller WHERE id = :id",
  visit: "SELECT calloutId AS id FROM visit WHERE id = :id",
  fix: "SELECT calloutId AS id FROM recordedFix WHERE id = :id",
  signal: "SELECT liftId AS id FROM signal WHERE id = :id",
  checkStep: "SELECT checkId AS id FROM checkStep WHERE id = :id",
} as const;
export const liftsOfSiteSql = "SELECT id FROM lift WHERE siteId = :id";
export const calloutsOfLiftSql = "SELECT id FROM callout WHERE liftId = :id";
export const othersOfLiftSql = `SELECT 'fix' AS kind, id FROM recordedFix WHERE liftId = :id
  UNION ALL SELECT 'check', id FROM signalCheck WHERE liftId = :id
  UNION ALL SELECT 'visit', id FROM visit WHERE liftId = :id AND calloutId IS NULL`;

export const calloutFactsSql = `SELECT callout.id, callout.number, callout.said, callout.receivedAt, callout.ending, callout.liftId,
    CASE WHEN lift.id IS NULL THEN callout.liftWords ELSE site.name || ', ' || lift.name END AS liftTitle,
    coalesce((SELECT fix.fix FROM recordedFix AS fix WHERE fix.calloutId = callout.id AND fix.deleted = 0 ORDER BY fix.at DESC LIMIT 1), '') AS fix
  FROM callout ${joinLift("callout")} WHERE callout.id = :id`;
export const fixFactsSql = `SELECT fix.id, fix.cause, fix.fix, fix.at, fix.calloutId, fix.liftId, site.name || ', ' || lift.name AS liftTitle,
    person.name AS personName, coalesce(callout.said, '') AS said
  FROM recordedFix AS fix JOIN lift ON lift.id = fix.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN person ON person.id = fix.personId LEFT JOIN callout ON callout.id = fix.calloutId WHERE fix.id = :id`;
export const noteFactsSql = `SELECT note.id, note.number, note.title, note.status, note.starterKey, note.symptoms, note.causes, note.faultGroup,
    (SELECT count(DISTINCT fix.calloutId) FROM recordedFix AS fix WHERE fix.noteId = note.id AND fix.deleted = 0) AS callouts
  FROM faultNote AS note WHERE note.id = :id`;
export const checkFactsSql = `SELECT signalCheck.id, signalCheck.planName, signalCheck.startedAt, signalCheck.liftId,
    site.name || ', ' || lift.name AS liftTitle, person.name AS personName
  FROM signalCheck JOIN lift ON lift.id = signalCheck.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN person ON person.id = signalCheck.personId WHERE signalCheck.id = :id`;
export const visitFactsSql = `SELECT visit.id, visit.kind, visit.found, visit.done, visit.arrivedAt, visit.liftId,
    site.name || ', ' || lift.name AS liftTitle, person.name AS personName
  FROM visit JOIN lift ON lift.id = visit.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN person ON person.id = visit.engineerId WHERE visit.id = :id`;

/** How far the records have come, for the index that is kept on the disk. */
export const lastChangeSql = "SELECT id, stamp, rowId FROM change ORDER BY id DESC LIMIT 1";
export const changeByIdSql = "SELECT id, stamp, rowId FROM change WHERE id = :id";
export const touchedSinceSql = "SELECT DISTINCT entity, rowId AS id FROM change WHERE id > :after";
export const lastMigrationSql = "SELECT max(number) AS number FROM migration";
