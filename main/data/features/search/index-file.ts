import { createHash } from "node:crypto";
import fs from "node:fs";
import { crc32 } from "node:zlib";
import { type SearchDocument, sillbookIndexShape } from "#shared-lib/search/index-shape.ts";
import { snapshotHeaderLength } from "#shared-lib/search/index-snapshot.ts";
import { SearchIndex } from "#shared-lib/search/search-index.ts";
import type { TouchedRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { changeByIdSql, lastChangeSql, lastMigrationSql, touchedSinceSql } from "./search.sql.ts";

interface ChangeMark {
  readonly id: number;
  readonly stamp: string;
  readonly rowId: string;
}

/** What of the database an index file has followed. */
interface Followed {
  readonly change: ChangeMark | null;
  readonly migration: number;
  readonly builtIn: string;
}

export interface ReadIndex {
  readonly index: SearchIndex;
  /** Records written since the file was kept. */
  readonly touched: readonly TouchedRecord[];
}

const chunk = 4 * 1024 * 1024;

/**
 * Reads the ranked index that was kept beside the database, in pieces, so that requests in between do not wait. Null where
 * there is none that belongs to this database and this program: a backup was put in place, half a file, another version.
 */
export async function readIndexFile(
  file: string,
  store: Store,
  builtIn: readonly SearchDocument[],
): Promise<ReadIndex | null> {
  const read = await readInPieces(file);
  if (!read) return null;
  const result = SearchIndex.fromSnapshot(read.bytes, sillbookIndexShape, { checksum: read.checksum });
  if ("refused" in result) return null;
  const followed = JSON.parse(result.note) as Followed;
  if (followed.migration !== migrationOf(store) || followed.builtIn !== printOf(builtIn)) return null;
  const { change } = followed;
  if (change && !isSame(change, store.get<ChangeMark>(changeByIdSql, { id: change.id }))) return null;
  return { index: result.index, touched: store.all(touchedSinceSql, { after: change?.id ?? 0 }) };
}

/** Puts the index on the disk under its name when it is whole. What fails leaves the former file, and is thrown. */
export function writeIndexFile(
  file: string,
  index: SearchIndex,
  store: Store,
  builtIn: readonly SearchDocument[],
): void {
  const followed: Followed = {
    change: store.get<ChangeMark>(lastChangeSql) ?? null,
    migration: migrationOf(store),
    builtIn: printOf(builtIn),
  };
  const draft = `${file}.part`;
  try {
    fs.writeFileSync(draft, index.toSnapshot(JSON.stringify(followed)), { mode: 0o600 });
    // Not flushed: what a power cut leaves has another checksum and is built anew.
    fs.renameSync(draft, file);
  } finally {
    fs.rmSync(draft, { force: true });
  }
}

async function readInPieces(
  file: string,
): Promise<{ readonly bytes: Uint8Array<ArrayBuffer>; readonly checksum: number } | null> {
  let handle: fs.promises.FileHandle;
  try {
    handle = await fs.promises.open(file);
  } catch {
    return null;
  }
  try {
    const { size } = await handle.stat();
    const bytes = new Uint8Array(new ArrayBuffer(size));
    let checksum = 0;
    for (let at = 0; at < size; ) {
      const { bytesRead } = await handle.read(bytes, at, Math.min(chunk, size - at), at);
      if (bytesRead === 0) return null;
      checksum = crc32(bytes.subarray(Math.max(at, snapshotHeaderLength), at + bytesRead), checksum);
      at += bytesRead;
    }
    return { bytes, checksum };
  } catch {
    return null;
  } finally {
    await handle.close();
  }
}

function isSame(one: ChangeMark, other: ChangeMark | undefined): boolean {
  return other !== undefined && one.stamp === other.stamp && one.rowId === other.rowId;
}

function migrationOf(store: Store): number {
  return store.get<{ number: number }>(lastMigrationSql)?.number ?? 0;
}

function printOf(documents: readonly SearchDocument[]): string {
  return createHash("sha256").update(JSON.stringify(documents)).digest("hex");
}
