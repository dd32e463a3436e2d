export const matchInfoSql =
  "SELECT docid, matchinfo(searchText, 'pcnalx') AS info FROM searchText WHERE searchText MATCH :match";
export const everyDocumentSql = "SELECT docid, title, symptom, cause, fix, place FROM searchDocument";
