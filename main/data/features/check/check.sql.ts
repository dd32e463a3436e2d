const checkLine = `SELECT signalCheck.*, person.name AS personName, site.name || ', ' || lift.name AS liftTitle,
    (SELECT count(*) FROM checkStep AS step WHERE step.checkId = signalCheck.id AND step.verdict = 'passed'
      AND NOT EXISTS (SELECT 1 FROM checkStep AS later
        WHERE later.checkId = step.checkId AND later.stepKey = step.stepKey AND later.id > step.id)) AS passed,
    (SELECT count(*) FROM checkStep AS step WHERE step.checkId = signalCheck.id AND step.verdict = 'failed'
      AND NOT EXISTS (SELECT 1 FROM checkStep AS later
        WHERE later.checkId = step.checkId AND later.stepKey = step.stepKey AND later.id > step.id)) AS failed
  FROM signalCheck JOIN lift ON lift.id = signalCheck.liftId JOIN site ON site.id = lift.siteId
    LEFT JOIN person ON person.id = signalCheck.personId`;

export const findCheckSql = `${checkLine} WHERE signalCheck.id = :id`;

export function listChecksSql(ofLift: boolean, open: boolean | undefined): string {
  const conditions = [
    "signalCheck.deleted = 0",
    ...(ofLift ? ["signalCheck.liftId = :liftId"] : []),
    ...(open === undefined ? [] : [`signalCheck.finishedAt IS ${open ? "" : "NOT "}NULL`]),
  ];
  return `${checkLine} WHERE ${conditions.join(" AND ")}
    ORDER BY signalCheck.startedAt DESC, signalCheck.id DESC LIMIT :limit OFFSET :offset`;
}

/** What was recorded at the steps of a check; a step recorded again has several rows, the newest counts. */
export const stepsOfCheckSql = `SELECT step.*, person.name AS personName
  FROM checkStep AS step LEFT JOIN person ON person.id = step.personId
  WHERE step.checkId = :checkId ORDER BY step.id`;

/** What a check found in the end: not what was recorded again later in it, and not that a step could not be checked. */
const foundInTheEnd = `json_extract(step.found, '$.kind') <> 'not checked' AND NOT EXISTS (SELECT 1 FROM checkStep AS later
    WHERE later.checkId = step.checkId AND later.stepKey = step.stepKey AND later.id > step.id)`;

/** What was found with the same plan on the same lift in checks started earlier, oldest first. */
export const earlierStepsSql = `SELECT step.checkId, step.stepKey, step.found, step.verdict, step.sentence, step.at
  FROM checkStep AS step JOIN signalCheck AS earlier ON earlier.id = step.checkId
  WHERE earlier.liftId = :liftId AND earlier.planId = :planId AND earlier.deleted = 0
    AND (earlier.startedAt < :startedAt OR (earlier.startedAt = :startedAt AND earlier.id < :checkId))
    AND ${foundInTheEnd}
  ORDER BY earlier.startedAt, earlier.id, step.id`;

/** What the checks of a lift found, oldest first. */
export const stepsOfLiftSql = `SELECT signalCheck.planId, step.checkId, step.stepKey, step.verdict, step.sentence, step.at
  FROM signalCheck JOIN checkStep AS step ON step.checkId = signalCheck.id
  WHERE signalCheck.liftId = :liftId AND signalCheck.deleted = 0 AND ${foundInTheEnd} ORDER BY step.id`;
