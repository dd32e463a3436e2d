/** One line a lift, with what must be seen wherever the lift is seen. */
const liftLine = `SELECT lift.id, lift.siteId, site.name AS siteName, lift.name, site.street, lift.driveKind, lift.doorKind,
    lift.controllerFamily, lift.plateNumber, lift.state, lift.stateReason, lift.stateSince,
    (SELECT count(*) FROM landing WHERE landing.liftId = lift.id AND landing.deleted = 0) AS landingCount,
    (SELECT count(*) FROM bridge WHERE bridge.liftId = lift.id AND bridge.checkedAt IS NULL) AS openBridges,
    (SELECT count(*) FROM callout WHERE callout.liftId = lift.id AND callout.endedAt IS NULL AND callout.deleted = 0) AS openCallouts,
    EXISTS (SELECT 1 FROM calloutWithPeopleInside AS waiting WHERE waiting.liftId = lift.id) AS peopleInside,
    EXISTS (SELECT 1 FROM danger WHERE danger.liftId = lift.id AND danger.clearedAt IS NULL) AS danger
  FROM lift JOIN site ON site.id = lift.siteId`;

export const listLiftLinesSql = `${liftLine} WHERE lift.deleted = 0 AND site.deleted = 0 ORDER BY site.name, lift.name`;
export const findLiftLineSql = `${liftLine} WHERE lift.id = :id`;
export const listLandingsSql =
  "SELECT * FROM landing WHERE liftId = :liftId AND deleted = 0 ORDER BY level, id";
export const listSignalsSql =
  "SELECT * FROM signal WHERE liftId = :liftId AND deleted = 0 ORDER BY role, name";

/** Telephone numbers and names under which callers rang before, for finding the lift by them. */
export const listCallersSql = `SELECT liftId, caller, callBack FROM callout
  WHERE liftId IS NOT NULL AND deleted = 0 AND (callBack <> '' OR caller <> '')
  ORDER BY receivedAt DESC LIMIT 20000`;

export const timelineCalloutsSql = `SELECT id, number, said, receivedAt FROM callout
  WHERE liftId = :liftId AND deleted = 0 AND receivedAt < :before ORDER BY receivedAt DESC LIMIT :limit`;
export const timelineEventsSql = `SELECT event.id, event.calloutId, event.kind, event.at, event.note, callout.number,
    callout.ending, callout.endingReason, person.name AS personName, receiver.name AS toName
  FROM effectiveEvent AS event JOIN callout ON callout.id = event.calloutId
    LEFT JOIN person ON person.id = event.personId LEFT JOIN person AS receiver ON receiver.id = event.toId
  WHERE callout.liftId = :liftId AND callout.deleted = 0 AND event.kind <> 'received' AND event.at < :before
  ORDER BY event.at DESC LIMIT :limit`;
export const timelineVisitsSql = `SELECT visit.id, visit.kind, visit.arrivedAt, visit.found, visit.done, visit.calloutId,
    person.name AS personName, fix.cause, fix.fix
  FROM visit LEFT JOIN person ON person.id = visit.engineerId
    LEFT JOIN recordedFix AS fix ON fix.visitId = visit.id AND fix.deleted = 0
  WHERE visit.liftId = :liftId AND visit.deleted = 0 AND visit.arrivedAt < :before ORDER BY visit.arrivedAt DESC LIMIT :limit`;
export const timelineBridgesSql = `SELECT bridge.*, setter.name AS setByName, remover.name AS removedByName, checker.name AS checkedByName
  FROM bridge LEFT JOIN person AS setter ON setter.id = bridge.setBy LEFT JOIN person AS remover ON remover.id = bridge.removedBy
    LEFT JOIN person AS checker ON checker.id = bridge.checkedBy
  WHERE bridge.liftId = :liftId AND bridge.setAt < :before ORDER BY bridge.setAt DESC LIMIT :limit`;
export const timelineDangersSql = `SELECT danger.*, finder.name AS foundByName, clearer.name AS clearedByName
  FROM danger LEFT JOIN person AS finder ON finder.id = danger.foundBy LEFT JOIN person AS clearer ON clearer.id = danger.clearedBy
  WHERE danger.liftId = :liftId AND danger.foundAt < :before ORDER BY danger.foundAt DESC LIMIT :limit`;
export const timelineChecksSql = `SELECT signalCheck.id, signalCheck.planName, signalCheck.startedAt, person.name AS personName,
    (SELECT count(DISTINCT stepKey) FROM checkStep AS step WHERE step.checkId = signalCheck.id AND step.verdict = 'failed'
      AND NOT EXISTS (SELECT 1 FROM checkStep AS later WHERE later.checkId = step.checkId AND later.stepKey = step.stepKey AND later.id > step.id)) AS failed,
    (SELECT count(DISTINCT stepKey) FROM checkStep AS step WHERE step.checkId = signalCheck.id AND step.verdict = 'passed'
      AND NOT EXISTS (SELECT 1 FROM checkStep AS later WHERE later.checkId = step.checkId AND later.stepKey = step.stepKey AND later.id > step.id)) AS passed,
    json_array_length(signalCheck.steps) AS steps
  FROM signalCheck LEFT JOIN person ON person.id = signalCheck.personId
  WHERE signalCheck.liftId = :liftId AND signalCheck.startedAt < :before ORDER BY signalCheck.startedAt DESC LIMIT :limit`;
export const timelineCalculationsSql = `SELECT calculation.id, calculation.calculatorId, calculation.at, calculation.verdictWord,
    calculation.verdictSentence, person.name AS personName
  FROM calculation LEFT JOIN person ON person.id = calculation.personId
  WHERE calculation.liftId = :liftId AND calculation.deleted = 0 AND calculation.at < :before ORDER BY calculation.at DESC LIMIT :limit`;
export const timelineChangesSql = `SELECT change.id, change.stamp, change.field, change.value, person.name AS personName
  FROM change LEFT JOIN person ON person.id = change.personId
  WHERE change.rowId = :liftId AND change.entity = 'lift' AND change.stamp < :before ORDER BY change.id DESC LIMIT :limit`;
