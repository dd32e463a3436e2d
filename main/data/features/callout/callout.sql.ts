const latestFix = (field: "cause" | "fix"): string => `coalesce((SELECT fix.${field} FROM recordedFix AS fix
  WHERE fix.calloutId = callout.id AND fix.deleted = 0 ORDER BY fix.at DESC LIMIT 1), '') AS ${field}`;

const peopleStillInside =
  "EXISTS (SELECT 1 FROM calloutWithPeopleInside AS waiting WHERE waiting.id = callout.id)";

const liftTitle = "CASE WHEN lift.id IS NULL THEN callout.liftWords ELSE site.name || ', ' || lift.name END";
const withPlace =
  "callout LEFT JOIN lift ON lift.id = callout.liftId LEFT JOIN site ON site.id = lift.siteId";

/** A callout as a line, without the chain of repeats, which is counted beside. */
const calloutLine = `SELECT callout.id, callout.version, callout.number, callout.liftId,
    ${liftTitle} AS liftTitle,
    callout.said, callout.faultGroup AS "group", callout.inside, callout.insideSince, ${peopleStillInside} AS stillInside, callout.insideCount, callout.callBack, callout.receivedAt,
    callout.endedAt, callout.ending, callout.awaits, callout.returnVisitOn, callout.engineerId, engineer.name AS engineerName,
    (SELECT group_concat(DISTINCT event.kind) FROM effectiveEvent AS event WHERE event.calloutId = callout.id) AS made,
    1 + (SELECT count(*) FROM caller WHERE caller.calloutId = callout.id) AS callerCount,
    EXISTS (SELECT 1 FROM danger WHERE danger.liftId = callout.liftId AND danger.clearedAt IS NULL) AS danger,
    ${latestFix("cause")}, ${latestFix("fix")}
  FROM ${withPlace} LEFT JOIN person AS engineer ON engineer.id = callout.engineerId`;

const orders = {
  "people first": `${peopleStillInside} DESC, (callout.inside = 'not known') DESC, callout.receivedAt, callout.id`,
  "newest first": "callout.receivedAt DESC, callout.id DESC",
  "oldest first": "callout.receivedAt, callout.id",
  lift: `${liftTitle} COLLATE NOCASE, callout.receivedAt DESC, callout.id`,
  "next event": `(SELECT count(DISTINCT event.kind) FROM effectiveEvent AS event WHERE event.calloutId = callout.id), callout.receivedAt, callout.id`,
} as const;

/** Conditions a filter may ask for; each names its parameters. */
export const filterConditions = {
  open: "callout.endedAt IS NULL",
  closed: "callout.endedAt IS NOT NULL",
  ids: "callout.id IN (SELECT value FROM json_each(:ids))",
  liftId: "callout.liftId = :liftId",
  siteId: "lift.siteId = :siteId",
  group: "callout.faultGroup = :group",
  engineerId: "callout.engineerId = :engineerId",
  ending: "callout.ending = :ending",
  receivedFrom: "callout.receivedAt >= :receivedFrom",
  receivedBefore: "callout.receivedAt < :receivedBefore",
  withoutCause: `callout.endedAt IS NOT NULL AND NOT EXISTS (SELECT 1 FROM recordedFix AS fix
    WHERE fix.calloutId = callout.id AND fix.deleted = 0)`,
  text: `(callout.said LIKE :text ESCAPE '\\' OR callout.number LIKE :text ESCAPE '\\' OR callout.caller LIKE :text ESCAPE '\\'
    OR coalesce(site.name || ', ' || lift.name, callout.liftWords) LIKE :text ESCAPE '\\')`,
} as const;
export type FilterCondition = keyof typeof filterConditions;

const whereOf = (conditions: readonly FilterCondition[]): string =>
  ["callout.deleted = 0", ...conditions.map((name) => filterConditions[name])].join(" AND ");

/**
 * A page of lines. Which callouts stand on it is found first, so that causes, fixes and events are looked up for these
 * alone and not for everything that is passed over. Every order ends with the id, so that pages join without a gap.
 */
export function listCalloutLinesSql(
  conditions: readonly FilterCondition[],
  order: keyof typeof orders,
): string {
  return `${calloutLine} WHERE callout.id IN (SELECT callout.id FROM ${withPlace} WHERE ${whereOf(conditions)}
    ORDER BY ${orders[order]} LIMIT :limit OFFSET :offset) ORDER BY ${orders[order]}`;
}

export function countCalloutsSql(conditions: readonly FilterCondition[]): string {
  const needsLift = conditions.some((name) => name === "siteId" || name === "text");
  const joins = needsLift
    ? "LEFT JOIN lift ON lift.id = callout.liftId LEFT JOIN site ON site.id = lift.siteId"
    : "";
  return `SELECT count(*) AS total FROM callout ${joins} WHERE ${whereOf(conditions)}`;
}

export const findCalloutLineSql = `${calloutLine} WHERE callout.id = :id`;

export const openBridgesOfLiftSql = `SELECT id, number, points FROM bridge WHERE liftId = :liftId AND checkedAt IS NULL ORDER BY setAt`;

/**
 * What can stand in a chain of repeats. A callout to a wrong address does not: it was not that lift. The plus sign keeps
 * SQLite to the index of the lift: by that of the fault group it read every callout of the group, 12 ms at 100,000.
 */
export const calloutsOfLiftAndGroupSql = `SELECT id, liftId, faultGroup AS "group", receivedAt FROM callout
  WHERE liftId = :liftId AND +faultGroup = :group AND deleted = 0 AND ending IS NOT 'wrong address' ORDER BY receivedAt`;

export const eventsOfCalloutSql = `SELECT event.*, person.name AS personName, receiver.name AS toName, comparer.name AS comparedName
  FROM calloutEvent AS event LEFT JOIN person ON person.id = event.personId
    LEFT JOIN person AS receiver ON receiver.id = event.toId LEFT JOIN person AS comparer ON comparer.id = event.registerComparedBy
  WHERE event.calloutId = :calloutId ORDER BY event.id`;

export const effectiveEventsSql =
  "SELECT id, kind, at FROM effectiveEvent WHERE calloutId = :calloutId ORDER BY at, id";
export const isEffectiveSql = "SELECT 1 AS yes FROM effectiveEvent WHERE id = :id";
export const callersOfCalloutSql =
  "SELECT id, at, caller, callBack, said FROM caller WHERE calloutId = :calloutId ORDER BY at, id";
export const visitsOfCalloutSql =
  "SELECT id FROM visit WHERE calloutId = :calloutId AND deleted = 0 ORDER BY arrivedAt";
export const otherOpenCalloutsSql = `SELECT count(*) AS count FROM callout
  WHERE liftId = :liftId AND id <> :calloutId AND endedAt IS NULL AND deleted = 0`;
export const openDangerOfLiftSql =
  "SELECT id, words FROM danger WHERE liftId = :liftId AND clearedAt IS NULL LIMIT 1";
