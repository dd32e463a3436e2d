import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { DataCore } from "../../../main/data/data-core.ts";
import { fillDemonstration } from "../../../main/data/demonstration/fill-demonstration.ts";
import { applyMigrations, pendingMigrations } from "../../../main/data/migrate.ts";
import { openSqliteOnDisk } from "../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import { pastFixesSql } from "./history.sql.ts";

export interface PastFix {
  readonly calloutId: string;
  readonly liftId: string;
  readonly said: string;
  readonly at: string;
  readonly cause: string;
  readonly fix: string;
  readonly noteId: string | null;
  readonly causeKey: string | null;
}

export interface History {
  readonly fixes: readonly PastFix[];
  ask<Name extends OperationName>(name: Name, input: InputOf<Name>): OutputOf<Name>;
  close(): void;
}

const now = Date.parse("2026-11-24T09:00:00.000Z");

/** The demonstration company, always the same one, behind the program's own operations. */
export async function openHistory(): Promise<History> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-causes-"));
  const file = await openSqliteOnDisk(path.join(folder, "sillbook.sqlite"));
  applyMigrations(file, pendingMigrations(file), () => new Date(now).toISOString());
  fillDemonstration(file, { folder, programVersion: "bench", now });
  const core = new DataCore(file, {
    folder,
    programVersion: "bench",
    wallClock: () => now,
    shortCode: "A",
  });
  core.search.buildAll();
  return {
    fixes: file.all<PastFix>(pastFixesSql),
    ask(name, input) {
      const envelope = core.request({ operation: name, input });
      if (!envelope.ok) throw new Error(`${name}: ${envelope.error.message}`);
      return envelope.value as OutputOf<typeof name>;
    },
    close() {
      file.close();
      fs.rmSync(folder, { recursive: true, force: true });
    },
  };
}
