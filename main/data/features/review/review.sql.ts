const ofSite = "callout.liftId IN (SELECT lift.id FROM lift WHERE lift.siteId = :siteId)";

function conditionsOf(filter: { readonly site: boolean; readonly group: boolean }): string {
  return [
    "callout.deleted = 0",
    ...(filter.site ? [ofSite] : []),
    ...(filter.group ? ["callout.faultGroup = :group"] : []),
  ].join(" AND ");
}

/** Callouts received in a time, with what is needed to count them and to find repeats among them. */
export function receivedInTimeSql(site: boolean): string {
  return `SELECT callout.id, callout.liftId, callout.faultGroup AS "group", callout.receivedAt,
      callout.ending IS 'wrong address' AS wrongAddress
    FROM callout WHERE callout.receivedAt >= :from AND callout.receivedAt < :until AND ${conditionsOf({ site, group: false })}`;
}

export function firstReceivedSql(site: boolean): string {
  return `SELECT min(callout.receivedAt) AS first FROM callout WHERE ${conditionsOf({ site, group: false })}`;
}

/** Every callout of some lifts that can stand in a chain, up to the end of a period. */
export const chainCandidatesSql = `SELECT callout.id, callout.liftId, callout.faultGroup AS "group", callout.receivedAt
  FROM callout WHERE callout.liftId IN (SELECT value FROM json_each(:liftIds)) AND callout.receivedAt < :until
    AND callout.deleted = 0 AND callout.ending IS NOT 'wrong address'`;

/** A callout as it stands in a chain. */
export const calloutsOfChainsSql = `SELECT callout.id, callout.number, callout.receivedAt, callout.said,
    coalesce(latest.cause, '') AS cause, coalesce(latest.fix, '') AS fix
  FROM json_each(:ids) AS asked JOIN callout ON callout.id = asked.value
    LEFT JOIN recordedFix AS latest ON latest.id = (SELECT fix.id FROM recordedFix AS fix
      WHERE fix.calloutId = callout.id AND fix.deleted = 0 ORDER BY fix.at DESC LIMIT 1)`;

export const liftTitlesSql = `SELECT lift.id, lift.siteId, site.name || ', ' || lift.name AS title
  FROM lift JOIN site ON site.id = lift.siteId`;

/** Callouts closed in a time, and whether a cause is recorded for them. */
export function closedInTimeSql(site: boolean, group: boolean): string {
  return `SELECT callout.id, callout.ending,
      EXISTS (SELECT 1 FROM recordedFix AS fix WHERE fix.calloutId = callout.id AND fix.deleted = 0) AS hasCause
    FROM callout WHERE callout.endedAt >= :from AND callout.endedAt < :until AND ${conditionsOf({ site, group })}
    ORDER BY callout.endedAt DESC, callout.id DESC`;
}

/** Which notes ended which callouts of a time. */
export function endedByNotesSql(site: boolean, group: boolean): string {
  return `SELECT DISTINCT fix.noteId, callout.id AS calloutId, callout.endedAt
    FROM recordedFix AS fix JOIN callout ON callout.id = fix.calloutId JOIN faultNote AS note ON note.id = fix.noteId
    WHERE fix.noteId IS NOT NULL AND note.deleted = 0 AND callout.endedAt >= :from AND callout.endedAt < :until
      AND fix.deleted = 0 AND ${conditionsOf({ site, group })}
    ORDER BY callout.endedAt DESC, callout.id DESC`;
}
