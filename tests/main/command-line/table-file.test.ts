import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { stringify } from "csv-stringify/sync";
import fc from "fast-check";
import { zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { unguardCell } from "#shared-lib/export/cell-guard.ts";
import { readTableFile } from "../../../main/command-line/table-file.ts";

let folder: string;
beforeAll(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "sillbook-table-"));
});
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }));

function put(bytes: Uint8Array | string, name = "table.csv"): string {
  const file = path.join(folder, name);
  fs.writeFileSync(file, bytes);
  return file;
}

const encodings = {
  "UTF-8": (text: string) => Buffer.from(text, "utf8"),
  "UTF-8 with mark": (text: string) => Buffer.from(`\ufeff${text}`, "utf8"),
  "UTF-16 LE": (text: string) => Buffer.from(`\ufeff${text}`, "utf16le"),
  "UTF-16 BE": (text: string) => Buffer.from(`\ufeff${text}`, "utf16le").swap16(),
  "UTF-16 LE without mark": (text: string) => Buffer.from(text, "utf16le"),
  "Windows-1252": (text: string) => Buffer.from(text, "latin1"),
};
type EncodingName = keyof typeof encodings;

const cell = fc.oneof(
  fc.constantFrom(
    "doors reopen",
    'said "low" at 2',
    "two\nlines",
    "a,b;c",
    "élan à l’étage".replace("’", "'"),
    "20 mm",
    "",
  ),
  fc.string({ unit: fc.constantFrom(..."abcé ;,\t\"'0123\n"), maxLength: 12 }),
);

describe("tables read from files", () => {
  test("any table, in any encoding and with any sign between its columns, reads back", async () => {
    const table = fc.record({
      body: fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 12 }),
      delimiter: fc.constantFrom(",", ";", "\t"),
      encoding: fc.constantFrom(...(Object.keys(encodings) as EncodingName[])),
    });
    await fc.assert(
      fc.asyncProperty(table, async ({ body, delimiter, encoding }) => {
        const rows = [["Received", "Symptom said by the caller", "Cause"], ...body, ["x", "é", "z"]];
        const text = stringify(rows, { delimiter, quoted: true, record_delimiter: "\r\n" });
        const read = await readTableFile(put(encodings[encoding](text)));
        expect(read.delimiter).toBe(delimiter);
        expect(read.encoding).toBe(encoding.split(" with")[0]);
        // The guard against formulas that a saved table may carry is taken off.
        expect(read.rows.map(({ cells }) => cells)).toEqual(rows.map((row) => row.map(unguardCell)));
      }),
      { numRuns: 150 },
    );
  });

  test("a row is named by the line where it begins", async () => {
    const read = await readTableFile(put('head;b\n"two\nlines";1\nthird;2\n'));
    expect(read.rows.map(({ rowNumber }) => rowNumber)).toEqual([1, 2, 4]);
  });

  test("a workbook: days, numbers and texts as the sheet shows them", async () => {
    const file = path.join(folder, "book.xlsx");
    await writeWorkbook([
      [
        { value: "Received", type: String },
        { value: "Symptom", type: String },
        { value: "Floor", type: String },
      ],
      [
        { value: new Date(Date.UTC(2025, 3, 3, 8, 5)), type: Date, format: "dd/mm/yyyy hh:mm" },
        { value: "=1+1 doors", type: String },
        { value: 3, type: Number },
      ],
    ]).toFile(file);
    const read = await readTableFile(file);
    expect(read.form).toBe("XLSX");
    expect(read.rows.map(({ cells }) => cells)).toEqual([
      ["Received", "Symptom", "Floor"],
      ["2025-04-03 08:05", "=1+1 doors", "3"],
    ]);
  });

  test.each([
    ["an empty file", "", /empty/],
    ["bytes that are no text", Buffer.from([1, 0, 2, 3, 0, 0, 7, 0, 0, 0, 9, 9]), /not a text file/],
    ["a quotation mark that is never closed", 'a,b\n1,"two\n3,4\n', /line 3|line 2/],
    ["half a workbook", Buffer.from("PK\u0003\u0004half a file"), /damaged|half/],
    ["a zip that is no workbook", zipSync({ "hello.txt": new Uint8Array([104, 105]) }), /workbook/],
    ["a workbook made to fill the memory", bomb(), /512 MB/],
  ])("%s is refused with a sentence", async (_what, bytes, words) => {
    await expect(readTableFile(put(bytes))).rejects.toMatchObject({
      code: "input-invalid",
      message: expect.stringMatching(words),
    });
  });

  test("a file that is not there", async () => {
    await expect(readTableFile(path.join(folder, "no.csv"))).rejects.toMatchObject({ code: "input-invalid" });
  });
});

/** A list of contents that promises a gigabyte; the content itself is small. */
function bomb(): Uint8Array {
  const bytes = Buffer.from(zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(1000) }));
  const entry = bytes.lastIndexOf(Buffer.from([0x50, 0x4b, 1, 2]));
  bytes.writeUInt32LE(1024 * 1024 * 1024, entry + 24);
  return bytes;
}
