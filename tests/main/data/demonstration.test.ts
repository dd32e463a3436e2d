import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { DataCore } from "../../../main/data/data-core.ts";
import { fillDemonstration } from "../../../main/data/demonstration/fill-demonstration.ts";
import { applyMigrations, pendingMigrations } from "../../../main/data/migrate.ts";
import { openSqliteOnDisk } from "../../../main/data/sqlite-disk/open-sqlite-on-disk.ts";
import type { SqliteFile } from "../../../main/data/sqlite-disk/sqlite-file.ts";

const now = Date.parse("2026-11-17T10:42:00.000Z");
let folder = "";
let file: SqliteFile;
let core: DataCore;

function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): OutputOf<Name> {
  const envelope = core.request({ operation: name, input, as: "Orla Vance" });
  if (!envelope.ok) throw new Error(`${envelope.error.code}: ${envelope.error.message}`);
  return envelope.value as OutputOf<Name>;
}

async function makeDemonstration(name: string): Promise<SqliteFile> {
  const made = await openSqliteOnDisk(path.join(folder, name));
  applyMigrations(made, pendingMigrations(made), () => new Date(now).toISOString());
  fillDemonstration(made, { folder, programVersion: "test", now });
  return made;
}

beforeAll(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-demonstration-"));
  file = await makeDemonstration("one.sqlite");
  core = new DataCore(file, { folder, programVersion: "test", wallClock: () => now, checkAnswers: true });
});
afterAll(() => {
  file.close();
  fs.rmSync(folder, { recursive: true, force: true });
});

const liftId = (title: string): string =>
  ask("lift.list", {}).lifts.find((lift) => lift.title === title)?.id ?? title;
const calloutsOf = (title: string) =>
  ask("callout.list", { filter: { liftId: liftId(title) }, order: "oldest first" }).callouts;

describe("the demonstration company", () => {
  test("has about 40 lifts, 600 callouts in two years, and says that it is one", () => {
    expect(ask("lift.list", {}).lifts.length).toBeGreaterThanOrEqual(38);
    const { callouts, total } = ask("callout.list", { order: "oldest first", limit: 2000 });
    expect(total).toBeGreaterThan(570);
    expect(total).toBeLessThan(640);
    expect(callouts[0]?.receivedAt.slice(0, 4)).toBe("2024");
    expect(ask("device.state", {}).demonstration).toBe(true);
  });

  test("is the same company every time", async () => {
    const other = await makeDemonstration("other.sqlite");
    const said = "SELECT number, said, receivedAt, ending FROM callout ORDER BY number";
    expect(other.all(said)).toEqual(file.all(said));
    other.close();
  });

  test("one lift had its zone sensors swapped at a replacement", () => {
    const [found] =
      ask("search.find", { text: "zone signals reversed" }).groups.find((group) => group.kind === "note")
        ?.hits ?? [];
    expect(found?.title).toBe("Zone signals arrive in reversed order");
    const proof = ask("faultNote.find", { id: found?.id ?? "" }).proof;
    expect(proof.map((fix) => fix.liftTitle)).toContain("Old Ropery Lofts, Lift 1");
  });

  test("one lift lost its bus terminator after flooding", () => {
    const causes = calloutsOf("Breakwater Hotel, Service").map((callout) => callout.cause);
    const flooded = causes.findIndex((cause) => cause.startsWith("Pit flooded"));
    expect(flooded).toBeGreaterThanOrEqual(0);
    expect(causes.findIndex((cause) => cause.startsWith("Bus terminator missing"))).toBeGreaterThan(flooded);
  });

  test("one lift gets worse month by month", () => {
    const brakes = calloutsOf("Fulmar Terrace, Lift 1").filter((callout) => callout.group === "brake");
    const lastYear = brakes.filter((callout) => callout.receivedAt >= "2025-11-17").length;
    expect(lastYear).toBeGreaterThan(1.7 * (brakes.length - lastYear));
  });

  test("one site has three repeats of a door fault", () => {
    const last = calloutsOf("Saltpan Court, Lift 1").at(-1);
    expect(last).toMatchObject({ group: "doors", ending: null });
    expect(last?.repeat).toBeGreaterThanOrEqual(3);
  });

  test("one lift has an open bridge, a failed check and is out of service", () => {
    const id = liftId("Kittiwake House, Lift 2");
    expect(ask("bridge.list", { liftId: id, open: true }).bridges).toHaveLength(1);
    expect(ask("lift.find", { id }).line.state).toBe("out of service");
    expect(ask("check.list", { liftId: id }).checks[0]?.failed).toBeGreaterThan(0);
    expect(ask("calculation.list", { liftId: id }).calculations[0]?.verdictWord).toBe("Outside");
  });

  test("somebody is inside a lift right now, and first in the list", () => {
    expect(ask("callout.list", { filter: { open: true } }).callouts[0]).toMatchObject({
      inside: "people inside",
      liftTitle: "Net Loft Studios, Lift 1",
    });
  });
});
