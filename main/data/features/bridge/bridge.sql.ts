export function listBridgesSql(ofLift: boolean, onlyOpen: boolean): string {
  return `SELECT bridge.*, site.name || ', ' || lift.name AS liftTitle, landing.marking AS landingMarking,
      setter.name AS setByName, remover.name AS removedByName, checker.name AS checkedByName
    FROM bridge JOIN lift ON lift.id = bridge.liftId JOIN site ON site.id = lift.siteId
      LEFT JOIN landing ON landing.id = bridge.landingId LEFT JOIN person AS setter ON setter.id = bridge.setBy
      LEFT JOIN person AS remover ON remover.id = bridge.removedBy LEFT JOIN person AS checker ON checker.id = bridge.checkedBy
    WHERE ${ofLift ? "bridge.liftId = :liftId" : "1 = 1"} ${onlyOpen ? "AND bridge.checkedAt IS NULL" : ""}
    ORDER BY bridge.checkedAt IS NOT NULL, bridge.setAt DESC`;
}

export function listDangersSql(ofLift: boolean, onlyOpen: boolean): string {
  return `SELECT danger.*, site.name || ', ' || lift.name AS liftTitle, finder.name AS foundByName, clearer.name AS clearedByName
    FROM danger JOIN lift ON lift.id = danger.liftId JOIN site ON site.id = lift.siteId
      LEFT JOIN person AS finder ON finder.id = danger.foundBy LEFT JOIN person AS clearer ON clearer.id = danger.clearedBy
    WHERE ${ofLift ? "danger.liftId = :liftId" : "1 = 1"} ${onlyOpen ? "AND danger.clearedAt IS NULL" : ""}
    ORDER BY danger.clearedAt IS NOT NULL, danger.foundAt DESC`;
}
