export const pastFixesSql = `SELECT callout.id AS calloutId, callout.liftId, callout.said, callout.receivedAt AS at, fix.cause, fix.fix,
    fix.noteId, fix.causeKey
  FROM recordedFix AS fix JOIN callout ON callout.id = fix.calloutId
  WHERE fix.deleted = 0 AND callout.deleted = 0 AND callout.liftId IS NOT NULL ORDER BY callout.receivedAt, callout.id`;
