/**
 * The safety rule as facts of state, asked of every lift a transaction touched, before it commits (product.md,
 * "Safety"). Times are compared by the minute, because that is how people write them down.
 */
/** Every rule below needs one of these on the lift; most lifts have none, and one question is then enough. */
export const hasAnythingToHoldSql = `SELECT
    EXISTS (SELECT 1 FROM bridge WHERE bridge.liftId = :liftId)
    OR EXISTS (SELECT 1 FROM danger WHERE danger.liftId = :liftId)
    OR EXISTS (SELECT 1 FROM callout WHERE callout.liftId = :liftId
      AND callout.inside IN ('people inside', 'not known') AND callout.earlierRecord = 0) AS yes`;

export const openBridgeInServiceSql = `SELECT bridge.number AS number, bridge.points AS points
  FROM bridge JOIN lift ON lift.id = bridge.liftId
  WHERE bridge.liftId = :liftId AND bridge.checkedAt IS NULL AND lift.state <> 'out of service' LIMIT 1`;

export const bridgeDuringServiceSql = `SELECT bridge.number AS number, bridge.points AS points
  FROM bridge
  WHERE bridge.liftId = :liftId AND (
    EXISTS (SELECT 1 FROM callout JOIN effectiveEvent AS event ON event.calloutId = callout.id
      WHERE callout.liftId = bridge.liftId AND event.kind = 'back in service'
        AND substr(event.at, 1, 16) >= substr(bridge.setAt, 1, 16)
        AND (bridge.checkedAt IS NULL OR substr(event.at, 1, 16) < substr(bridge.checkedAt, 1, 16)))
    OR EXISTS (SELECT 1 FROM lift
      WHERE lift.id = bridge.liftId AND lift.state <> 'out of service' AND lift.stateSince IS NOT NULL
        AND substr(lift.stateSince, 1, 16) >= substr(bridge.setAt, 1, 16)
        AND (bridge.checkedAt IS NULL OR substr(lift.stateSince, 1, 16) < substr(bridge.checkedAt, 1, 16)))
  ) LIMIT 1`;

export const openDangerInServiceSql = `SELECT danger.words AS words
  FROM danger JOIN lift ON lift.id = danger.liftId
  WHERE danger.liftId = :liftId AND danger.clearedAt IS NULL AND lift.state <> 'out of service' LIMIT 1`;

export const dangerDuringServiceSql = `SELECT danger.words AS words
  FROM danger
  WHERE danger.liftId = :liftId AND (
    EXISTS (SELECT 1 FROM callout JOIN effectiveEvent AS event ON event.calloutId = callout.id
      WHERE callout.liftId = danger.liftId AND event.kind = 'back in service'
        AND substr(event.at, 1, 16) >= substr(danger.foundAt, 1, 16)
        AND (danger.clearedAt IS NULL OR substr(event.at, 1, 16) < substr(danger.clearedAt, 1, 16)))
    OR EXISTS (SELECT 1 FROM lift
      WHERE lift.id = danger.liftId AND lift.state <> 'out of service' AND lift.stateSince IS NOT NULL
        AND substr(lift.stateSince, 1, 16) >= substr(danger.foundAt, 1, 16)
        AND (danger.clearedAt IS NULL OR substr(lift.stateSince, 1, 16) < substr(danger.clearedAt, 1, 16)))
  ) LIMIT 1`;

const released = `SELECT max(event.at) FROM effectiveEvent AS event
  WHERE event.calloutId = callout.id AND event.kind = 'people released'
    AND substr(event.at, 1, 16) >= substr(coalesce(callout.insideSince, callout.receivedAt), 1, 16)`;

/** People were inside from the call, or from the later report of them. */
const insideFrom = "coalesce(callout.insideSince, callout.receivedAt)";

/** Deleting a callout does not let anybody out: deleted rows count as well. */
export const peopleInsideInServiceSql = `SELECT callout.number AS number
  FROM callout JOIN lift ON lift.id = callout.liftId
  WHERE callout.liftId = :liftId AND callout.earlierRecord = 0 AND callout.inside = 'people inside'
    AND (${released}) IS NULL
    AND (lift.state <> 'out of service' OR callout.endedAt IS NOT NULL OR callout.deleted = 1) LIMIT 1`;

export const insideNotSettledSql = `SELECT callout.number AS number
  FROM callout
  WHERE callout.liftId = :liftId AND callout.earlierRecord = 0 AND callout.inside = 'not known'
    AND (callout.endedAt IS NOT NULL OR EXISTS (SELECT 1 FROM effectiveEvent AS event
      WHERE event.calloutId = callout.id AND event.kind = 'back in service')) LIMIT 1`;

/**
 * In the minute of the call the lift may still have been put back in service: people who were trapped right after that
 * are logged, and their release later, whatever the seconds were.
 */
export const inServiceBeforeReleaseSql = `SELECT callout.number AS number
  FROM callout
  WHERE callout.liftId = :liftId AND callout.earlierRecord = 0 AND callout.inside = 'people inside'
    AND (${released}) IS NOT NULL
    AND (substr(callout.endedAt, 1, 16) < substr((${released}), 1, 16)
      OR EXISTS (SELECT 1 FROM callout AS other JOIN effectiveEvent AS event ON event.calloutId = other.id
        WHERE other.liftId = callout.liftId AND event.kind = 'back in service'
          AND substr(event.at, 1, 16) > substr(${insideFrom}, 1, 16)
          AND substr(event.at, 1, 16) < substr((${released}), 1, 16))
      OR EXISTS (SELECT 1 FROM lift
        WHERE lift.id = callout.liftId AND lift.state <> 'out of service' AND lift.stateSince IS NOT NULL
          AND substr(lift.stateSince, 1, 16) > substr(${insideFrom}, 1, 16)
          AND substr(lift.stateSince, 1, 16) < substr((${released}), 1, 16))) LIMIT 1`;

/** Refused when the call is entered: later nobody could record the release without contradicting that event. */
export const inServiceAfterCallSql = `SELECT callout.number AS number, event.at AS at
  FROM callout JOIN callout AS other ON other.liftId = callout.liftId
    JOIN effectiveEvent AS event ON event.calloutId = other.id
  WHERE callout.liftId = :liftId AND callout.earlierRecord = 0 AND callout.inside = 'people inside'
    AND (${released}) IS NULL AND event.kind = 'back in service'
    AND substr(event.at, 1, 16) > substr(${insideFrom}, 1, 16) LIMIT 1`;

/** Callouts without a settled lift have no lift row to ask: the same rule, by callout. */
export const peopleInsideUnsettledSql = `SELECT callout.number AS number
  FROM callout
  WHERE callout.id = :calloutId AND callout.earlierRecord = 0
    AND ((((callout.inside = 'people inside' AND (${released}) IS NULL) OR callout.inside = 'not known')
        AND (callout.endedAt IS NOT NULL OR callout.deleted = 1))
      OR (callout.inside = 'people inside' AND substr(callout.endedAt, 1, 16) < substr((${released}), 1, 16))) LIMIT 1`;

export const calloutsOfEventsSql = `SELECT DISTINCT callout.id AS calloutId, callout.liftId AS liftId
  FROM json_each(:ids) AS touched JOIN calloutEvent ON calloutEvent.id = touched.value
    JOIN callout ON callout.id = calloutEvent.calloutId`;

/** Car door and landing door are never bridged together, not even by two entries that overlap in time. */
export const doorsBridgedTogetherSql = `SELECT car.number AS number, landing.number AS other
  FROM bridge AS car JOIN bridge AS landing ON landing.liftId = car.liftId
  WHERE car.liftId = :liftId AND car.contact = 'car door contact'
    AND landing.contact IN ('landing door contact', 'landing door lock')
    AND substr(car.setAt, 1, 16) < coalesce(substr(landing.removedAt, 1, 16), '9999')
    AND substr(landing.setAt, 1, 16) < coalesce(substr(car.removedAt, 1, 16), '9999') LIMIT 1`;
