import fs from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type TableStep, workOnTable } from "../../../main/command-line/bring-in-table.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

// The whole way from a file to the records and back, as `ask --table` goes it.

let bench: TestCore;
let kittiwake: string;

beforeEach(async () => {
  bench = await openTestCore();
  kittiwake = addLift(bench).liftId;
  addLift(bench, "Lift 1", "Saltpan Court");
});
afterEach(() => bench.close());

const head = "Received;Building;Lift;Symptom;Cause;Action taken;Closed";
const rows = [
  "13/04/2025 08:15;Kittiwake House;2;doors keep reopening;dirty edge;cleaned the edge;13/04/2025 10:00",
  "14/04/2025 09:00;Saltpan Court;Lift 01;no light in the car;lamp failed;new lamp;",
  "15/04/2025 09:00;Old Ropery Lofts;A;grinding noise;worn shoe;new shoe;15/04/2025 11:00",
];

type Outcome = {
  importId: string;
  added: number;
  duplicates: number;
  refused: number;
  newSites: number;
  newLifts: number;
  refusedFile: string | null;
  reasons: { rowNumber: number; reason: string }[];
  liftsToSettle: { words: string; couldBe: { id: string; title: string }[] }[];
  dateForms: string[];
  mapping: { columns: Record<string, string> };
};

function table(step: TableStep, lines: readonly string[], mapping: unknown = {}): Promise<Outcome> {
  const file = path.join(bench.folder, "old.csv");
  fs.writeFileSync(file, lines.join("\r\n"));
  return workOnTable({
    file,
    step,
    mapping,
    as: bench.people.office,
    refusedFile: path.join(bench.folder, "refused.csv"),
    request: async (request) => bench.core.request(request),
  }) as Promise<Outcome>;
}

const callouts = () => bench.ask("callout.list", { state: "all" } as never).callouts;
const tables = ["site", "lift", "callout", "calloutEvent", "recordedFix"];
const living = () =>
  tables.map((name) =>
    bench.core.file.all(
      name === "calloutEvent"
        ? "SELECT e.id FROM calloutEvent AS e JOIN callout ON callout.id = e.calloutId WHERE callout.deleted = 0"
        : `SELECT * FROM ${name} WHERE deleted = 0`,
    ),
  );

describe("old records brought in", () => {
  test("below a title, with the lifts found, added and their times kept", async () => {
    const look = await table("look", ["Job book;;;;;;", head, ...rows]);
    expect(look.dateForms).toEqual(["day first"]);
    expect(look.mapping.columns).toMatchObject({
      receivedAt: "Received",
      said: "Symptom",
      fix: "Action taken",
      backAt: "Closed",
    });
    const mapping = { addLifts: true };
    const preview = await table("preview", ["Job book;;;;;;", head, ...rows], mapping);
    expect(preview).toMatchObject({ added: 3, duplicates: 0, refused: 0, newSites: 1, newLifts: 1 });
    expect(bench.core.file.all("SELECT id FROM callout")).toEqual([]);
    const done = await table("bring-in", ["Job book;;;;;;", head, ...rows], mapping);
    expect(done).toMatchObject({ added: 3, duplicates: 0, refused: 0, newSites: 1, newLifts: 1 });
    const brought = bench.core.file.all<{
      liftId: string;
      said: string;
      receivedAt: string;
      endedAt: string;
      endingReason: string;
    }>("SELECT liftId, said, receivedAt, endedAt, endingReason FROM callout ORDER BY receivedAt");
    expect(brought[0]).toMatchObject({
      liftId: kittiwake,
      receivedAt: new Date(2025, 3, 13, 8, 15).toISOString(),
      endedAt: new Date(2025, 3, 13, 10, 0).toISOString(),
    });
    // No end in the table: closed, and nothing says that it went back in service at some time.
    expect(brought[1]?.endingReason).toMatch(/do not say when it ended/);
    expect(bench.core.file.all("SELECT id FROM calloutEvent WHERE kind = 'back in service'")).toHaveLength(2);
    bench.core.search.buildAll();
    const found = bench.ask("search.find", { text: "grinding shoe" });
    expect(JSON.stringify(found.groups)).toContain("Old Ropery Lofts");
  });

  test("the same file again adds nothing, and its mapping is remembered", async () => {
    await table("bring-in", [head, ...rows], { addLifts: true });
    const before = living();
    expect(await table("bring-in", [head, ...rows])).toMatchObject({ added: 0, duplicates: 3, refused: 0 });
    expect(living()).toEqual(before);
  });

  test("dates that can be read in two ways are asked about, and nothing is brought in until then", async () => {
    const unclear = ["03/04/2025 08:15;Kittiwake House;2;doors keep reopening;;;"];
    await expect(table("bring-in", [head, ...unclear])).rejects.toMatchObject({
      message: expect.stringContaining("day first, month first"),
    });
    await table("bring-in", [head, ...unclear], { dateForm: "month first" });
    expect(bench.core.file.get<{ receivedAt: string }>("SELECT receivedAt FROM callout")?.receivedAt).toBe(
      new Date(2025, 2, 4, 8, 15).toISOString(),
    );
  });

  test("a lift with a slip of the pen is shown to a person, who settles it", async () => {
    const slip = "16/04/2025 09:00;Saltpan Cort;Lift 1;stops low;;;";
    const look = await table("look", [head, slip]);
    expect(look.liftsToSettle).toMatchObject([
      { words: "Saltpan Cort / Lift 1", couldBe: [{ title: "Saltpan Court, Lift 1" }] },
    ]);
    expect(await table("preview", [head, slip], { addLifts: true })).toMatchObject({
      added: 0,
      refused: 1,
      newLifts: 0,
    });
    const liftId = look.liftsToSettle[0]?.couldBe[0]?.id ?? "";
    const settled = { lifts: { "Saltpan Cort / Lift 1": liftId } };
    expect(await table("bring-in", [head, slip], settled)).toMatchObject({ added: 1, newLifts: 0 });
    expect(bench.core.file.get("SELECT liftId FROM callout")).toEqual({ liftId });
  });

  test("refused rows are kept with their reason; corrected, the file brings in the rest", async () => {
    const bad = [
      "31/02/2025 08:15;Kittiwake House;2;=doors;;;",
      "17/04/2025 08:15;;;no lift named;;;",
      "18/04/2025 08:15;Kittiwake House;2;;;;",
      "19/04/2035 08:15;Kittiwake House;2;in the future;;;",
      "20/04/2025 08:15;Kittiwake House;2;ended before it began;;;19/04/2025",
    ];
    const done = await table("bring-in", [head, ...rows, ...bad], { addLifts: true });
    expect(done).toMatchObject({ added: 3, refused: 5 });
    const kept = bench.ask("import.refused", { importId: done.importId }).rows;
    expect(kept.map(({ rowNumber }) => rowNumber)).toEqual([5, 6, 7, 8, 9]);
    const file = fs.readFileSync(done.refusedFile ?? "", "utf8");
    const written = parse(file, { bom: true }) as string[][];
    expect(written[0]).toEqual([...head.split(";"), "Refused because"]);
    // A spreadsheet must not take a cell for a formula.
    expect(written[1]?.[3]).toBe("'=doors");
    const corrected = file
      .replace("31/02/2025", "28/02/2025")
      .replace("17/04/2025 08:15,,,", "17/04/2025 08:15,Kittiwake House,2,")
      .replace("18/04/2025 08:15,Kittiwake House,2,,", "18/04/2025 08:15,Kittiwake House,2,stopped,")
      .replace("19/04/2035", "19/04/2025")
      .replace("ended before it began,,,19/04/2025", "ended before it began,,,20/04/2025 09:00");
    expect(await table("bring-in", corrected.split("\n"))).toMatchObject({ added: 5, refused: 0 });
    expect(callouts().length).toBeGreaterThan(0);
  });

  test("an import is taken back as a whole; what was worked with since stays", async () => {
    const before = living();
    const { importId } = await table("bring-in", [head, ...rows], { addLifts: true });
    let answer = bench.ask("import.undo", { importId, atOnce: 2 });
    while (answer.left > 0) answer = bench.ask("import.undo", { importId, atOnce: 2 });
    expect(answer.kept).toBe(0);
    expect(living()).toEqual(before);
    expect(bench.ask("import.list", {}).imports).toMatchObject([{ undone: true, added: 0 }]);

    const again = await table("bring-in", [head, ...rows], { addLifts: true });
    const callout = bench.core.file.get<{ id: string; version: number }>(
      "SELECT id, version FROM callout WHERE said = 'grinding noise' AND deleted = 0",
    );
    bench.ask("callout.change", {
      id: callout?.id ?? "",
      version: callout?.version ?? 0,
      fields: { said: "grinding, upper end" },
    });
    const undone = bench.ask("import.undo", { importId: again.importId });
    expect(undone).toMatchObject({ left: 0, kept: 3 });
    expect(bench.core.file.all("SELECT said FROM callout WHERE deleted = 0")).toEqual([
      { said: "grinding, upper end" },
    ]);
  });

  test("sites and lifts alone", async () => {
    const lines = [
      "Building;Street;Town;Elevator;Plate",
      "Heron Yard;2 Wharf;Wendle Bay;Goods lift;W-77",
      "Kittiwake House;;;2;",
    ];
    const done = await table("bring-in", lines, { kind: "lifts", addLifts: true });
    expect(done).toMatchObject({ added: 1, duplicates: 1, newSites: 1, newLifts: 1 });
    expect(bench.core.file.get("SELECT plateNumber, name FROM lift WHERE plateNumber = 'W-77'")).toEqual({
      plateNumber: "W-77",
      name: "Goods lift",
    });
  });

  test("a mapping that does not fit is refused before anything is written", async () => {
    await expect(
      table("bring-in", [head, ...rows], { columns: { said: "No such column", receivedAt: "Received" } }),
    ).rejects.toMatchObject({
      message: expect.stringContaining("No such column"),
    });
    await expect(table("bring-in", [head, ...rows], { dateForm: "backwards" })).rejects.toMatchObject({
      code: "input-invalid",
    });
    expect(
      bench.refusal("import.bringIn", {
        importId: kittiwake,
        kind: "callouts",
        lifts: {},
        addLifts: false,
        rows: [],
      } as never),
    ).toBe("not-found");
    expect(bench.ask("import.list", {}).imports).toEqual([]);
  });
});
