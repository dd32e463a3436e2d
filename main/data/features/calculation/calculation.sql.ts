export function listCalculationsSql(ofCalculator: boolean, ofLanding: boolean): string {
  const conditions = [
    "calculation.liftId = :liftId",
    "calculation.deleted = 0",
    ...(ofCalculator ? ["calculation.calculatorId = :calculatorId"] : []),
    ...(ofLanding ? ["calculation.landingId = :landingId"] : []),
  ];
  return `SELECT calculation.*, person.name AS personName
    FROM calculation LEFT JOIN person ON person.id = calculation.personId
    WHERE ${conditions.join(" AND ")} ORDER BY calculation.at DESC, calculation.id DESC LIMIT :limit`;
}

/** Lifts that were deleted have no results to open. */
export const recentCalculationsSql = `SELECT calculation.*, person.name AS personName,
    site.name || ', ' || lift.name AS liftTitle, landing.marking AS landingMarking
  FROM calculation
    JOIN lift ON lift.id = calculation.liftId AND lift.deleted = 0
    JOIN site ON site.id = lift.siteId
    LEFT JOIN landing ON landing.id = calculation.landingId AND landing.deleted = 0
    LEFT JOIN person ON person.id = calculation.personId
  WHERE calculation.deleted = 0 ORDER BY calculation.at DESC, calculation.id DESC LIMIT :limit`;

export const lastCalculationHereSql = `SELECT at, inputs FROM calculation
  WHERE liftId = :liftId AND calculatorId = :calculatorId AND landingId IS :landingId AND deleted = 0
  ORDER BY at DESC, id DESC LIMIT 1`;

/** Newest result of a calculator at each other landing of a lift that still exists. */
export const lastCalculationsElsewhereSql = `SELECT calculation.result, calculation.landingId
  FROM calculation JOIN landing ON landing.id = calculation.landingId
  WHERE calculation.liftId = :liftId AND calculation.calculatorId = :calculatorId AND calculation.deleted = 0
    AND landing.deleted = 0 AND calculation.landingId IS NOT :landingId
    AND NOT EXISTS (SELECT 1 FROM calculation AS later
      WHERE later.liftId = calculation.liftId AND later.calculatorId = calculation.calculatorId
        AND later.landingId = calculation.landingId AND later.deleted = 0
        AND (later.at > calculation.at OR (later.at = calculation.at AND later.id > calculation.id)))`;

export const countLandingsSql =
  "SELECT count(*) AS count, max(level) - min(level) AS travel FROM landing WHERE liftId = :liftId AND deleted = 0";
