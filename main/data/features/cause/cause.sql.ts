/** Past callouts of a note, newest first, with what likens them to the one in hand and how long putting right took. */
export const evidenceOfNoteSql = `SELECT fix.calloutId, fix.causeKey, callout.said, callout.liftId,
    lift.controllerFamily, lift.driveKind,
    (julianday(visit.leftAt) - julianday(visit.arrivedAt)) * 1440 AS minutes
  FROM recordedFix AS fix JOIN callout ON callout.id = fix.calloutId
    LEFT JOIN lift ON lift.id = callout.liftId LEFT JOIN visit ON visit.id = fix.visitId AND visit.deleted = 0
  WHERE fix.noteId = :noteId AND fix.deleted = 0 AND callout.deleted = 0 AND callout.id IS NOT :without
  ORDER BY callout.receivedAt DESC, fix.id DESC LIMIT :limit`;

/** Answers with who gave them, and the rows that take them back beside them. Oldest first. */
export function stepsSql(of: "callout" | "visit"): string {
  return `SELECT step.*, person.name AS personName, note.number AS noteNumber, note.title AS noteTitle,
      back.at AS backAt, back.personId AS backBy, backPerson.name AS backName
    FROM causeStep AS step JOIN faultNote AS note ON note.id = step.noteId
      LEFT JOIN person ON person.id = step.personId
      LEFT JOIN causeStep AS back ON back.takesBack = step.id
      LEFT JOIN person AS backPerson ON backPerson.id = back.personId
    WHERE step.${of === "callout" ? "calloutId" : "visitId"} = :id AND step.takesBack IS NULL ORDER BY step.id`;
}

export const visitsOfCalloutSql = `SELECT id, arrivedAt FROM visit WHERE calloutId = :calloutId AND deleted = 0
  ORDER BY arrivedAt, id`;

export const takenBackSql = "SELECT id FROM causeStep WHERE takesBack = :id";

/** Recorded fixes of callouts, found by their words or attached to a note, newest first; the callout in hand left out. */
export const similarFixesSql = `SELECT fix.id AS fixId, callout.id AS calloutId, callout.number, callout.said, callout.receivedAt AS at,
    fix.cause, fix.fix, note.id AS noteId, CASE WHEN note.id IS NULL THEN NULL ELSE fix.causeKey END AS causeKey,
    lift.id AS liftId, site.name || ', ' || lift.name AS liftTitle, lift.controllerFamily, lift.driveKind
  FROM recordedFix AS fix JOIN callout ON callout.id = fix.calloutId
    JOIN lift ON lift.id = fix.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN faultNote AS note ON note.id = fix.noteId AND note.deleted = 0
  WHERE (fix.id IN (SELECT value FROM json_each(:fixIds)) OR fix.noteId = :noteId) AND fix.deleted = 0
    AND callout.deleted = 0 AND callout.id IS NOT :without
  ORDER BY callout.receivedAt DESC, fix.id DESC LIMIT :limit`;
