const fixLine = `SELECT fix.*, site.name || ', ' || lift.name AS liftTitle, person.name AS personName,
    note.id AS presentNoteId, note.number AS noteNumber
  FROM recordedFix AS fix JOIN lift ON lift.id = fix.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN person ON person.id = fix.personId
    LEFT JOIN faultNote AS note ON note.id = fix.noteId AND note.deleted = 0`;

export const findFixSql = `${fixLine} WHERE fix.id = :id`;
export const fixesOfVisitsSql = `${fixLine}
  WHERE fix.visitId IN (SELECT value FROM json_each(:visitIds)) AND fix.deleted = 0 ORDER BY fix.id`;

const visitLine = `SELECT visit.*, engineer.name AS engineerName, site.name || ', ' || lift.name AS liftTitle,
    callout.number AS calloutNumber
  FROM visit JOIN lift ON lift.id = visit.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN person AS engineer ON engineer.id = visit.engineerId
    LEFT JOIN callout ON callout.id = visit.calloutId`;

export const findVisitSql = `${visitLine} WHERE visit.id = :id`;

export function listVisitsSql(ofLift: boolean, ofCallout: boolean): string {
  const conditions = [
    "visit.deleted = 0",
    ...(ofLift ? ["visit.liftId = :liftId"] : []),
    ...(ofCallout ? ["visit.calloutId = :calloutId"] : []),
  ];
  return `${visitLine} WHERE ${conditions.join(" AND ")} ORDER BY visit.arrivedAt DESC, visit.id DESC LIMIT :limit OFFSET :offset`;
}
