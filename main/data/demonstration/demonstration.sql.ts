export const starterNotesSql = `SELECT id, starterKey, faultGroup, symptoms, causes, applies FROM faultNote
  WHERE starterKey IS NOT NULL AND deleted = 0 ORDER BY starterKey`;
