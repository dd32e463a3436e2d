import { createHash } from "node:crypto";
import { SillbookError } from "#shared-lib/errors.ts";
import { createMigrationTableSql, insertMigrationSql, listMigrationsSql } from "./database.sql.ts";
import { migrations as allMigrations, type Migration } from "./migrations.sql.ts";
import type { SqliteFile } from "./sqlite-disk/sqlite-file.ts";

interface AppliedMigration {
  readonly number: number;
  readonly name: string;
  readonly checksum: string;
}

function checksumOf(migration: Migration): string {
  return createHash("sha256").update(migration.sql).digest("hex").slice(0, 16);
}

/** Which migrations are still to be made. A database that knows more, or other ones, than this program is refused. */
export function pendingMigrations(
  file: SqliteFile,
  known: readonly Migration[] = allMigrations,
): readonly Migration[] {
  file.exec(createMigrationTableSql);
  const applied = file.all<AppliedMigration>(listMigrationsSql);
  for (const [index, row] of applied.entries()) {
    const migration = known[index];
    if (!migration) {
      throw new SillbookError("store-newer", undefined, {
        found: row.number,
        newestKnown: known.at(-1)?.number ?? 0,
      });
    }
    if (migration.number !== row.number || checksumOf(migration) !== row.checksum) {
      throw new SillbookError(
        "store-foreign",
        "The database was made by another version of Sillbook's schema.",
        {
          found: `${row.number} ${row.name}`,
          expected: `${migration.number} ${migration.name}`,
        },
      );
    }
  }
  return known.slice(applied.length);
}

/** Each migration is one transaction together with the row that says it was made. */
export function applyMigrations(file: SqliteFile, pending: readonly Migration[], now: () => string): void {
  for (const migration of pending) {
    file.transaction(() => {
      file.exec(migration.sql);
      file.run(insertMigrationSql, {
        number: migration.number,
        name: migration.name,
        checksum: checksumOf(migration),
        appliedAt: now(),
      });
    });
  }
}
