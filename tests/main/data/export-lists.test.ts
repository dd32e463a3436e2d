import fs from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { unguardCell } from "#shared-lib/export/cell-guard.ts";
import { exportLists, type ListName } from "#shared-lib/export/lists.ts";
import { asker, workOnTable } from "../../../main/command-line/bring-in-table.ts";
import { saveListFile } from "../../../main/command-line/save-list-file.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

// Lists out of a real database, as `ask --list` saves them, and brought in again.

let bench: TestCore;
let liftId: string;
const said = '=HYPERLINK("x";"doors")';
const cause = '-5 mm at 2,\n"low"';

beforeAll(async () => {
  bench = await openTestCore();
  ({ liftId } = addLift(bench));
  bench.ask("callout.bringIn", {
    liftId,
    said,
    group: "doors",
    receivedAt: "2026-01-05T08:15:00.000Z",
    backInServiceAt: "2026-01-05T10:00:00.000Z",
    cause,
    fix: "+1 shim",
  });
  bench.ask("callout.log", {
    liftId,
    liftWords: "",
    said: "@top it hums",
    inside: "nobody",
    caller: "",
    displayReading: "",
  });
  bench.ask("visit.record", {
    liftId,
    kind: "maintenance",
    engineerId: bench.people.engineer,
    arrivedAt: bench.minutes(10),
    found: "worn shoe",
    done: "new shoe",
    displayReading: "",
    parts: [{ name: "guide shoe", quantity: 2.5, marking: "GS" }],
  });
});
afterAll(() => bench.close());

const request = async (message: Parameters<TestCore["core"]["request"]>[0]) => bench.core.request(message);
const ask = () => asker({ request, as: bench.people.office });

async function saved(list: ListName, input: unknown = {}): Promise<Record<string, string>[]> {
  const file = path.join(bench.folder, "list.csv");
  await saveListFile(ask(), { list, input, file });
  return parse(fs.readFileSync(file), { bom: true, columns: true });
}

describe("lists saved as files", () => {
  test("every list answers with its columns", async () => {
    const period = { from: "2025-01-01T00:00:00.000Z", until: "2027-01-01T00:00:00.000Z" };
    const plan = bench.ask("check.plans", { liftId }).plans[0]?.id ?? "";
    const check = bench.ask("check.start", { liftId, planId: plan });
    const inputs: Record<ListName, unknown> = {
      callouts: {},
      timeline: { id: liftId },
      "search results": { text: "doors" },
      lifts: {},
      sites: {},
      signals: { id: liftId },
      visits: { liftId },
      parts: { liftId },
      "fault notes": {},
      repeats: period,
      "counts per lift": period,
      "counts per fault group": period,
      "closed without a cause": period,
      "fault notes used": period,
      checks: {},
      "check steps": { id: check.id },
      bridges: {},
      dangers: {},
    };
    const counts: Record<string, number> = {};
    for (const list of Object.keys(exportLists) as ListName[]) {
      const file = path.join(bench.folder, "list.csv");
      counts[list] = (await saveListFile(ask(), { list, input: inputs[list], file })).rows;
      const [heads] = parse(fs.readFileSync(file), { bom: true }) as string[][];
      expect(heads).toEqual(exportLists[list].columns.map(({ head }) => head));
    }
    expect(counts).toMatchObject({ callouts: 2, sites: 1, lifts: 1, visits: 1, parts: 1, checks: 1 });
    expect(counts.timeline).toBeGreaterThan(3);
    expect(counts["check steps"]).toBeGreaterThan(0);
    expect((await saved("parts"))[0]).toMatchObject({ Part: "guide shoe", Quantity: "2.5", Marking: "GS" });
    expect((await saved("callouts"))[0]).toMatchObject({ Site: "Kittiwake House", Lift: "Lift 2" });
  });

  test.each(["csv", "xlsx"])("callouts saved as %s and brought in again are the same", async (form) => {
    const file = path.join(bench.folder, `callouts.${form}`);
    await saveListFile(ask(), { list: "callouts", input: { filter: { open: false } }, file });
    const other = await openTestCore();
    try {
      addLift(other);
      const brought = (await workOnTable({
        file,
        step: "bring-in",
        mapping: {},
        as: other.people.office,
        refusedFile: null,
        request: async (message) => other.core.request(message),
      })) as { added: number; refused: number };
      expect(brought).toMatchObject({ added: 1, refused: 0 });
      const [line] = other.ask("callout.list", {}).callouts;
      expect(line).toMatchObject({
        ...{ said, cause, fix: "+1 shim", group: "doors" },
        ...{ receivedAt: "2026-01-05T08:15:00.000Z", endedAt: "2026-01-05T10:00:00.000Z" },
      });
    } finally {
      other.close();
    }
  });

  test("an unknown list, a wrong ending, a folder that is not there: a sentence, and no half file", async () => {
    const refused = async (list: string, name: string) =>
      saveListFile(ask(), { list, input: {}, file: path.join(bench.folder, name) }).then(
        () => "saved",
        (error: Error) => error.message,
      );
    expect(await refused("cars", "a.csv")).toContain("There is no list “cars”");
    expect(await refused("sites", "a.doc")).toContain(".csv or .xlsx");
    expect(await refused("sites", "none/a.csv")).toContain("cannot be written");
    expect(await refused("signals", "a.csv")).toContain("Nothing was changed");
    expect(fs.readdirSync(bench.folder).filter((name) => name.startsWith("a."))).toEqual([]);
  });

  test("a text that starts like a formula is guarded in the file", async () => {
    const [open] = await saved("callouts", { filter: { open: true } });
    expect(open?.["What was said"]).toBe("'@top it hums");
    expect(unguardCell(open?.["What was said"] ?? "")).toBe("@top it hums");
  });
});
