/** By id, or by exact name. */
export const findPersonSql =
  "SELECT id, name FROM person WHERE deleted = 0 AND (id = :as OR name = :as) ORDER BY active DESC LIMIT 1";
export const listPeopleSql = "SELECT * FROM person WHERE deleted = 0 ORDER BY active DESC, onDuty DESC, name";
