import { joinLift, ofLift, place } from "./search.sql.ts";

export const calloutRowSql = `SELECT 'callout' AS kind, callout.id AS ref, '' AS title, callout.said, callout.endingReason,
    callout.number, callout.displayReading,
    CASE WHEN lift.id IS NULL THEN callout.liftWords ELSE ${place} END AS place,
    ${ofLift}, callout.faultGroup, coalesce(callout.ending, 'open') AS state, callout.receivedAt AS at
  FROM callout ${joinLift("callout")} WHERE callout.id = :id AND callout.deleted = 0`;
export const callersSaidSql = "SELECT said FROM caller WHERE calloutId = :id";
export const causesAndFixesSql = "SELECT cause, fix FROM recordedFix WHERE calloutId = :id AND deleted = 0";
export const visitTextsSql =
  "SELECT found, done, parts, readings, displayReading FROM visit WHERE calloutId = :id AND deleted = 0";
