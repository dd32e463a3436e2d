export const keepDraftSql = `INSERT INTO draft (key, value, keptAt) VALUES (:key, :value, :keptAt)
  ON CONFLICT (key) DO UPDATE SET value = excluded.value, keptAt = excluded.keptAt`;
export const findDraftSql = "SELECT value, keptAt FROM draft WHERE key = :key";
export const dropDraftSql = "DELETE FROM draft WHERE key = :key";
export const findCompanySql = "SELECT id, name FROM company WHERE deleted = 0 ORDER BY createdAt LIMIT 1";
