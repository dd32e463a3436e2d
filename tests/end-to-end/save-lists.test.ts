import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { parse } from "csv-parse/sync";
import readWorkbook from "read-excel-file/node";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { goTo } from "./support/drive-page.ts";
import { programKinds } from "./support/program-kinds.ts";
import { runAsk } from "./support/run-ask.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// What a list shows, as a file: by mouse, by keys, and from the command line.

describe.each(programKinds)("lists saved in %s", (kind) => {
  let program: Program;
  beforeAll(async () => {
    program = await startProgram(kind, { demonstration: true });
    program.page.setDefaultTimeout(40_000);
  });
  afterAll(() => program.close());

  async function saved(name: RegExp, byKey = false): Promise<{ name: string; bytes: Buffer }> {
    const download = program.page.waitForEvent("download");
    const button = program.page.getByRole("button", { name });
    if (byKey) await button.press("Enter");
    else await button.click();
    const file = await download;
    return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
  }

  test("all callouts as CSV and as XLSX hold the same lines as the list", async () => {
    const { page } = program;
    await goTo(page, "/desk?list=all");
    const words = await page.getByText(/^\d+ callouts$/).textContent();
    const csv = await saved(/^CSV: save/, true);
    expect(csv.name).toMatch(/^callouts \d{4}-\d\d-\d\d\.csv$/);
    const rows = parse(csv.bytes, { bom: true, columns: true }) as Record<string, string>[];
    expect(`${rows.length} callouts`).toBe(words);
    const xlsx = await saved(/^XLSX: save/);
    const [sheet] = await readWorkbook(xlsx.bytes);
    expect(sheet?.data.length).toBe(rows.length + 1);
    expect(sheet?.data[1]?.[0]).toBe(rows[0]?.Number);
    // The workbook is read in the page again: as old records, everything in it is on the books.
    const file = join(program.folder, "callouts.xlsx");
    await writeFile(file, xlsx.bytes);
    await goTo(page, "/bring-in");
    await page.locator("input[type=file]").setInputFiles(file);
    await page.getByText(`${rows.length} rows`).first().waitFor();
    await goTo(page, "/desk?list=all");
    await page.getByText(words ?? "").waitFor();
    await page.getByText(rows[0]?.Number ?? "").waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`)).toEqual(
      [],
    );
  });

  test("Review and Lifts offer theirs too", async () => {
    const { page } = program;
    await goTo(page, "/lifts");
    const sites = await saved(/^CSV: save Sites/);
    expect((parse(sites.bytes, { bom: true }) as unknown[]).length).toBeGreaterThan(10);
    await goTo(page, "/review");
    const repeats = await saved(/^CSV: save Repeats/, true);
    expect((parse(repeats.bytes, { bom: true }) as unknown[]).length).toBeGreaterThan(10);
  });

  test("ask saves a list through the running program", async () => {
    const file = join(program.folder, "lifts.csv");
    const { stdout } = await runAsk(["--data", program.folder, "--list", "lifts", "--save", file]);
    expect(JSON.parse(stdout)).toMatchObject({ ok: true, value: { file } });
    expect((parse(await readFile(file), { bom: true }) as unknown[]).length).toBeGreaterThan(10);
  });
});
