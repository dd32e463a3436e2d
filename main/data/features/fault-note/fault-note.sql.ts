/** Callouts that a fix of the note ended and lifts on which one was recorded; a deleted callout proves nothing. */
const counts = `(SELECT count(DISTINCT callout.id) FROM recordedFix AS fix JOIN callout ON callout.id = fix.calloutId
      WHERE fix.noteId = note.id AND callout.deleted = 0 AND fix.deleted = 0) AS callouts,
    (SELECT count(DISTINCT fix.liftId) FROM recordedFix AS fix LEFT JOIN callout ON callout.id = fix.calloutId
      WHERE fix.noteId = note.id AND coalesce(callout.deleted, 0) = 0 AND fix.deleted = 0) AS lifts`;

const noteLine = `SELECT note.id, note.number, note.title, note.faultGroup AS "group", note.status,
    note.starterKey IS NOT NULL AS starter, ${counts}
  FROM faultNote AS note`;

export function listNotesSql(ofGroup: boolean, ofStatus: boolean): string {
  const conditions = [
    "note.deleted = 0",
    ...(ofGroup ? ["note.faultGroup = :group"] : []),
    ...(ofStatus ? ["note.status = :status"] : []),
  ];
  return `${noteLine} WHERE ${conditions.join(" AND ")} ORDER BY note.title COLLATE NOCASE, note.id`;
}

export const noteLinesByIdSql = `${noteLine} WHERE note.id IN (SELECT value FROM json_each(:ids))`;

export const proofOfNoteSql = `SELECT fix.id AS fixId, callout.id AS calloutId, callout.number AS calloutNumber, fix.liftId,
    site.name || ', ' || lift.name AS liftTitle, fix.at, fix.cause, fix.fix, fix.causeKey
  FROM recordedFix AS fix JOIN lift ON lift.id = fix.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN callout ON callout.id = fix.calloutId
  WHERE fix.noteId = :noteId AND coalesce(callout.deleted, 0) = 0 AND fix.deleted = 0
  ORDER BY fix.at DESC, fix.id DESC`;

export const notesToSuggestSql = "SELECT * FROM faultNote WHERE deleted = 0 ORDER BY id";
export const notesStateSql = "SELECT count(*) AS count, coalesce(sum(version), 0) AS versions FROM faultNote";

export const installedStarterNotesSql = `SELECT id, starterKey, starterHash, edited, status, deleted FROM faultNote
  WHERE starterKey IS NOT NULL`;
