export const createTextSql = "CREATE VIRTUAL TABLE note USING fts4(title, text, tokenize=unicode61)";
export const addTextSql = "INSERT INTO note (docid, title, text) VALUES (:docid, :title, :text)";
export const matchInfoSql =
  "SELECT docid, matchinfo(note, 'pcnalx') AS info FROM note WHERE note MATCH :match";
