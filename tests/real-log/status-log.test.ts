import { execFile } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { DataSession } from "../../main/data/data-session.ts";
import { openSqliteOnDisk } from "../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import type { SqliteFile } from "../../main/data/sqlite-disk/sqlite-file.ts";
import { readCsv } from "./bring-in-status-log.mjs";
import {
  countsPerLiftSql,
  createLogSql,
  insertLogSql,
  openSql,
  repeatsByGroupSql,
  repeatsByLiftSql,
} from "./status-log.sql.ts";
import symptomGroups from "./symptom-groups.json" with { type: "json" };

const log = path.resolve(import.meta.dirname, "../../../shared/published/records/metro_elevator_status.csv");
const isThere = fs.existsSync(log);
if (!isThere) console.log("The real status log is not on this machine: its test is left out.");

/** 277 lifts, 5,514 breaks, August 2013 to February 2015. The log itself is not part of the project. */
describe.runIf(isThere)("a real log of 277 lifts", () => {
  let folder = "";
  let session: DataSession | undefined;
  let counted: SqliteFile | undefined;

  async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
    const envelope = await session?.request({ operation: name, input });
    if (!envelope?.ok) throw new Error(envelope?.error.message);
    return envelope.value as OutputOf<Name>;
  }
  const whole = { from: "2013-01-01T00:00:00.000Z", until: "2016-01-01T00:00:00.000Z" };
  const number = (sql: string, parameters: Record<string, number> = {}): number =>
    Object.values(counted?.get<Record<string, number>>(sql, parameters) ?? {})[0] ?? -1;

  beforeAll(async () => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-real-log-"));
    const script = path.join(import.meta.dirname, "bring-in-status-log.mjs");
    const { stdout } = await promisify(execFile)(process.execPath, [script, log, folder]);
    expect(JSON.parse(stdout.trim().split("\n").at(-1) ?? "")).toEqual({
      lifts: 277,
      sites: 92,
      callouts: 5514,
    });
    session = await DataSession.open({
      folder,
      demonstration: false,
      programVersion: "test",
      emit: () => undefined,
    });
    const file = await openSqliteOnDisk(path.join(folder, "counted.sqlite"));
    counted = file;
    file.exec(createLogSql);
    file.transaction(() => {
      for (const row of readCsv(fs.readFileSync(log, "utf8"))) {
        const {
          unit_id: unit = "",
          update_type: type = "",
          category = "",
          symptom = "",
          time_utc: time = "",
        } = row;
        const group = (symptomGroups as Record<string, string>)[symptom] ?? "";
        file.run(insertLogSql, [unit, type, category, symptom, new Date(time).toISOString(), group]);
      }
    });
  }, 300_000);

  afterAll(() => {
    session?.close();
    counted?.close();
    fs.rmSync(folder, { recursive: true, force: true });
  });

  test("callouts per lift agree with a count straight from the file", async () => {
    const { lifts } = await ask("review.counts", whole);
    const counts = (counted?.all<{ unit: string; count: number }>(countsPerLiftSql) ?? []).map((row) => [
      row.unit,
      row.count,
    ]);
    const ours = lifts
      .filter((lift) => lift.count > 0)
      .map((lift) => [lift.liftTitle.split(", ").at(-1), lift.count]);
    expect(ours.sort()).toEqual([...counts].sort());
  });

  test("same-lift repeats and group repeats agree", async () => {
    const repeats = await ask("review.repeats", whole);
    expect(repeats.callouts).toBe(5514);
    expect(repeats.sameLift.repeats).toBe(number(repeatsByLiftSql, { withUnknown: 1 }));
    expect(repeats.repeats).toBe(number(repeatsByGroupSql, { withUnknown: 0 }));
    expect(repeats.repeats).toBeGreaterThan(100);
  });

  test("what was never put right stays open", async () => {
    const { total } = await ask("callout.list", { filter: { open: true } });
    expect(total).toBe(number(openSql));
  });

  test("searching works on it, in either of the log's two vocabularies", async () => {
    const { groups } = await ask("search.find", { text: "water leak platform", limitPerKind: 10 });
    expect(groups.find((group) => group.kind === "callout")?.hits[0]?.title.toLowerCase()).toContain(
      "water leak",
    );
    const { groups: byPlace } = await ask("search.find", { text: "FARRAGUT NORTH" });
    expect(byPlace.find((group) => group.kind === "lift")?.hits[0]?.title).toContain("FARRAGUT NORTH");
  });
});
