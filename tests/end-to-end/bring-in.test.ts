import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { askFromPage, goTo } from "./support/drive-page.ts";
import { screenKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// The office brings its old job book in, settles what is unclear, and takes it back.

const rows = [
  "Job book of the years before;;;;;;",
  "Received;Building;Elevator;Symptom;Cause;Action taken;Date",
  "03/04/2025 08:15;Kittiwake House;2;doors keep reopening;dirty edge;cleaned the edge;03/04/2025 10:00",
  "05/04/2025 09:00;Saltpan Cort;Lift 1;no light in the car;lamp failed;new lamp;",
  "06/04/2025 09:00;Old Ropery Lofts;A;grinding noise;worn shoe;new shoe;",
  "07/04/2025 09:00;Kittiwake House;2;;;;",
];

describe.each(screenKinds)("old records in %s", (kind) => {
  let program: Program;
  beforeAll(async () => {
    program = await startProgram(kind);
    const { page } = program;
    page.setDefaultTimeout(10_000);
    await askFromPage(page, "company.start", {
      companyName: "Gull Lifts",
      personName: "Ada Finch",
      role: "office",
    });
    for (const [name, lift] of [
      ["Kittiwake House", "Lift 2"],
      ["Saltpan Court", "Lift 1"],
    ] as const) {
      const site = await askFromPage(page, "site.add", { name }, "Ada Finch");
      await askFromPage(page, "lift.add", { siteId: site.id, name: lift }, "Ada Finch");
    }
    await page.getByRole("navigation", { name: "Screens" }).waitFor();
  });
  afterAll(() => program.close());

  const problems = async (): Promise<string[]> => {
    const { violations } = await new AxeBuilder({ page: program.page }).analyze();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  };

  test("a table is looked at, settled, brought in, and taken back as a whole", async () => {
    const { page, folder } = program;
    await goTo(page, "/settings");
    await page.getByRole("link", { name: "Bring in old records" }).click();
    await page.getByRole("heading", { level: 1, name: "Bring in old records" }).waitFor();
    const file = join(folder, "old book.csv");
    await writeFile(file, Buffer.from(rows.join("\r\n"), "latin1"));
    await page.locator("input[type=file]").setInputFiles(file);
    await page.getByText("columns parted by semicolon").waitFor();
    await page.getByText("Columns are named in line 2.").waitFor();

    // 03/04 can be read in two ways: nothing goes on before somebody has said which.
    await page.getByText("Say above how the dates are written.").waitFor();
    await page.getByRole("button", { name: /The dates are written as/ }).click();
    await page.getByRole("option", { name: /Day, month, year/ }).click();
    await page.getByText("1 callout will be added, 3 rows cannot be brought in as they are.").waitFor();
    await page.getByText("no symptom").waitFor();
    expect(await problems()).toEqual([]);

    await page.getByText("Add lifts that are not on the books, with their sites").click();
    await page.getByRole("button", { name: /Saltpan Cort \/ Lift 1/ }).click();
    await page.getByRole("option", { name: "Saltpan Court, Lift 1" }).click();
    await page.getByRole("button", { name: "Bring in 3 callouts" }).click();
    await page.getByText("3 rows brought in, 1 lift added, 1 row refused").waitFor();
    const { callouts } = await askFromPage(page, "callout.list", { state: "all" } as never);
    expect(callouts.map(({ said }) => said)).toContain("grinding noise");

    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save 1 refused row of old book.csv" }).click();
    expect((await download).suggestedFilename()).toBe("old book refused.csv");
    expect(await problems()).toEqual([]);

    await page.getByRole("button", { name: "Take back old book.csv" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Take it back" }).click();
    await page.getByText("Taken back.", { exact: true }).waitFor();
    expect((await askFromPage(page, "site.list", {})).sites).toHaveLength(2);
  });

  test("a file that is no table says so, and the page stays", async () => {
    const { page, folder } = program;
    const file = join(folder, "picture.csv");
    await writeFile(file, Buffer.from([1, 0, 2, 3, 0, 0, 7, 0, 0, 0, 9, 9]));
    await goTo(page, "/bring-in");
    await page.locator("input[type=file]").setInputFiles(file);
    await page
      .getByRole("alert")
      .getByText(/not a text file/)
      .waitFor();
    await page.getByRole("button", { name: "Choose a file" }).waitFor();
  });
});
