/** The same counts made straight from the rows of the log by SQL, for comparison. */
export const createLogSql = `CREATE TABLE log (
  position INTEGER PRIMARY KEY, unit TEXT, updateType TEXT, category TEXT, symptom TEXT, at TEXT, faultGroup TEXT)`;
export const insertLogSql =
  "INSERT INTO log (unit, updateType, category, symptom, at, faultGroup) VALUES (?, ?, ?, ?, ?, ?)";
export const countsPerLiftSql =
  "SELECT unit, count(*) AS count FROM log WHERE updateType = 'Break' GROUP BY unit ORDER BY unit";
const gap = (partition: string): string => `SELECT count(*) AS repeats FROM (
  SELECT julianday(at) - julianday(lag(at) OVER (PARTITION BY ${partition} ORDER BY at, position)) AS days
  FROM log WHERE updateType = 'Break' AND (:withUnknown = 1 OR faultGroup <> 'not yet known'))
  WHERE days <= 30`;
export const repeatsByLiftSql = gap("unit");
export const repeatsByGroupSql = gap("unit, faultGroup");
export const openSql = `SELECT count(*) AS open FROM log AS broken WHERE updateType = 'Break' AND NOT EXISTS (
  SELECT 1 FROM log AS later WHERE later.unit = broken.unit AND later.category = 'ON' AND (later.at > broken.at))`;
