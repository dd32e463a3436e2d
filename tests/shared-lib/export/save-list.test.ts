import { parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import fc from "fast-check";
import readWorkbook from "read-excel-file/node";
import { describe, expect, test } from "vitest";
import writeWorkbook, { type SheetData } from "write-excel-file/node";
import { guardCell, startsFormula, unguardCell } from "#shared-lib/export/cell-guard.ts";
import { exportLists } from "#shared-lib/export/lists.ts";
import { csvCell, localMoment, saveList, type TableWriters } from "#shared-lib/export/save-list.ts";
import type { Ask } from "#shared-lib/import/bring-in-table.ts";

const writers: TableWriters = {
  stringifyCsv: (rows, options) => stringify(rows, options),
  writeWorkbook: async (rows, sheet) =>
    new Uint8Array(await writeWorkbook(rows as SheetData, sheet).toBuffer()),
};

/** Any text, and often what a spreadsheet or a CSV reader could stumble over. */
const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.constantFrom("constructor", "toString", "__proto__", "\ufffd", "a\u{10fffe}b", "\u0085"),
  fc
    .array(
      fc.constantFrom(
        "=",
        "+",
        "-",
        "@",
        "\t",
        "\r",
        "\n",
        "'",
        '"',
        ",",
        ";",
        " ",
        "1",
        "a",
        "＝",
        "_x0041_",
        "\u0001",
      ),
      { maxLength: 6 },
    )
    .map((signs) => signs.join("")),
);

/** A list of sites that answers with these names, as many pages as a whole list has: one. */
function sitesNamed(names: readonly string[]): Ask {
  const sites = names.map((name) => ({
    ...{ name, street: name, town: name, hours: name, machineryLocation: name, contactName: name },
    ...{ contactTelephone: name, keys: name, accessNotes: name, liftCount: -3 },
  }));
  return (async () => ({ sites })) as unknown as Ask;
}

async function save(names: readonly string[], form: "csv" | "xlsx"): Promise<Buffer> {
  const pieces: Buffer[] = [];
  const take = (piece: string | Uint8Array) => void pieces.push(Buffer.from(piece as string));
  await saveList(sitesNamed(names), { list: "sites", input: {}, form, writers, take });
  return Buffer.concat(pieces);
}

describe("the guard against formulas", () => {
  test("no text starts a formula, and every text comes back", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(startsFormula(guardCell(text))).toBe(false);
        expect(unguardCell(guardCell(text))).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  test("a number stays a number, text that looks like one is text", () => {
    expect(csvCell(-1.5, "number")).toBe("-1.5");
    expect(csvCell("-1.5", "text")).toBe("'-1.5");
    expect(csvCell(null, "number")).toBe("");
  });
});

describe("lists as tables", () => {
  test("CSV: any text in any cell survives, and no cell starts a formula", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyText, { maxLength: 5 }), async (names) => {
        const bytes = await save(names, "csv");
        expect(bytes.subarray(0, 3)).toEqual(Buffer.from([0xef, 0xbb, 0xbf]));
        const rows = parse(bytes, { bom: true }) as string[][];
        expect(rows[0]).toEqual(exportLists.sites.columns.map(({ head }) => head));
        for (const cell of rows.flat()) expect(startsFormula(cell)).toBe(false);
        expect(rows.slice(1).map((row) => row.map(unguardCell))).toEqual(
          names.map((name) => [name, name, name, "-3", ...Array.from({ length: 6 }, () => name)]),
        );
      }),
      { numRuns: 300 },
    );
  });

  test("XLSX: any text in any cell survives as text, numbers are numbers", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyText, { minLength: 1, maxLength: 5 }), async (names) => {
        const sheets = await readWorkbook(await save(names, "xlsx"), { trim: false });
        expect(sheets[0]?.sheet).toBe("Sites");
        const rows = sheets[0]?.data ?? [];
        expect(rows[0]).toEqual(exportLists.sites.columns.map(({ head }) => head));
        for (const [index, name] of names.entries()) {
          expect(rows[index + 1]?.[0] ?? "").toBe(name);
          expect(rows[index + 1]?.[3]).toBe(-3);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("moments are written on this machine's clock", () => {
    const moment = new Date(2025, 3, 3, 9, 5).toISOString();
    expect(localMoment(moment)).toBe("2025-04-03 09:05");
  });

  test("a page that is read twice because others came in writes nobody twice", async () => {
    const line = (id: string) => ({
      id,
      number: id,
      liftId: null,
      liftTitle: "x",
      receivedAt: "2025-04-03T09:05:00Z",
    });
    const pages = [
      ["a", "b"],
      ["b", "c"],
    ];
    const ask = (async (operation: string) =>
      operation === "lift.list"
        ? { lifts: [] }
        : { callouts: (pages.shift() ?? []).map(line), total: 1001 }) as unknown as Ask;
    const pieces: string[] = [];
    const take = (piece: string | Uint8Array) => void pieces.push(piece as string);
    const rows = await saveList(ask, { list: "callouts", input: {}, form: "csv", writers, take });
    expect(rows).toBe(3);
    expect(
      (parse(pieces.join(""), { bom: true, columns: true }) as { Number: string }[]).map((row) => row.Number),
    ).toEqual(["a", "b", "c"]);
  });
});
