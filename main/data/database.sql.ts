export const createMigrationTableSql = `CREATE TABLE IF NOT EXISTS migration (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  checksum TEXT NOT NULL,
  appliedAt TEXT NOT NULL
) STRICT`;
export const listMigrationsSql = "SELECT number, name, checksum FROM migration ORDER BY number";
export const insertMigrationSql =
  "INSERT INTO migration (number, name, checksum, appliedAt) VALUES (:number, :name, :checksum, :appliedAt)";
export const quickCheckSql = "PRAGMA quick_check(5)";
export const sqliteVersionSql = "SELECT sqlite_version() AS version";
export const countChangesSql = "SELECT count(*) AS count FROM (SELECT 1 FROM change LIMIT 1)";
