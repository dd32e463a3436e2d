import type { SqliteFile } from "../../main/data/sqlite-disk/sqlite-file.ts";

// What the durability tests save: the content after commit n follows from n alone, so whatever a crash leaves can be
// compared with what must be there.

const rowsPerCommit = 4;
const commitsKept = 40;

export function prepareContent(store: SqliteFile): void {
  store.exec(`
    CREATE TABLE IF NOT EXISTS progress (number INTEGER NOT NULL) STRICT;
    CREATE TABLE IF NOT EXISTS note (id INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT;
    CREATE VIRTUAL TABLE IF NOT EXISTS note_text USING fts4(text);
    INSERT INTO progress SELECT 0 WHERE NOT EXISTS (SELECT 1 FROM progress);
  `);
}

/** How many commits the database holds; undefined before it was prepared. */
export function readProgress(store: SqliteFile): number | undefined {
  const prepared = store.get("SELECT 1 FROM sqlite_schema WHERE name = 'progress'");
  return prepared && store.get<{ number: number }>("SELECT number FROM progress")?.number;
}

/** Inserts, changes and removes rows and their full-text entries in one transaction. Returns the number of the commit. */
export function saveNext(store: SqliteFile): number {
  const number = (readProgress(store) ?? 0) + 1;
  store.transaction(() => {
    for (let row = 0; row < rowsPerCommit; row += 1) {
      const values = { id: number * rowsPerCommit + row, text: noteText(number, row) };
      store.run("INSERT INTO note (id, text) VALUES (:id, :text)", values);
      store.run("INSERT INTO note_text (docid, text) VALUES (:id, :text)", values);
    }
    const changed = { id: (number - 1) * rowsPerCommit, text: changedText(number - 1) };
    store.run("UPDATE note SET text = :text WHERE id = :id", changed);
    store.run("UPDATE note_text SET text = :text WHERE docid = :id", changed);
    const end = { end: (number - commitsKept) * rowsPerCommit };
    store.run("DELETE FROM note_text WHERE docid < :end", end);
    store.run("DELETE FROM note WHERE id < :end", end);
    store.run("UPDATE progress SET number = :number", { number });
  });
  return number;
}

/** Throws unless the database is sound and holds exactly the content of its number of commits. Returns that number. */
export function requireContent(store: SqliteFile): number {
  const report = store.all<{ integrity_check: string }>("PRAGMA integrity_check");
  if (report[0]?.integrity_check !== "ok") throw new Error(`not sound: ${JSON.stringify(report)}`);
  const number = readProgress(store);
  if (number === undefined) return 0;
  store.run("INSERT INTO note_text (note_text) VALUES ('integrity-check')");
  const expected = JSON.stringify(expectedRows(number));
  for (const sql of [
    "SELECT id, text FROM note ORDER BY id",
    "SELECT docid AS id, text FROM note_text ORDER BY docid",
  ]) {
    if (JSON.stringify(store.all(sql)) !== expected)
      throw new Error(`not the content of commit ${number}: ${sql}`);
  }
  const found = store.get<{ count: number }>(
    "SELECT count(*) AS count FROM note_text WHERE note_text MATCH :words",
    {
      words: `commit${number}`,
    },
  );
  if (number > 0 && found?.count !== rowsPerCommit)
    throw new Error(`the full text does not find commit ${number}`);
  return number;
}

function expectedRows(number: number): { id: number; text: string }[] {
  const rows: { id: number; text: string }[] = [];
  for (let commit = Math.max(1, number - commitsKept); commit <= number; commit += 1) {
    for (let row = 0; row < rowsPerCommit; row += 1) {
      const isChanged = row === 0 && commit < number;
      rows.push({
        id: commit * rowsPerCommit + row,
        text: isChanged ? changedText(commit) : noteText(commit, row),
      });
    }
  }
  return rows;
}

function noteText(commit: number, row: number): string {
  return `commit${commit} row${row} ${"door operator belt slack ".repeat((commit * 7 + row * 13) % 40)}`;
}

function changedText(commit: number): string {
  return `changed ${noteText(commit, 0)} tightened`;
}
