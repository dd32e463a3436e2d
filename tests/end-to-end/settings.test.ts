import type { Locator, Page } from "playwright";
import { afterEach, describe, expect, test } from "vitest";
import { askFromPage, goTo } from "./support/drive-page.ts";
import { programKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// People, backups, the demonstration and the look, as a person changes them on the Settings screen.

let program: Program;
let page: Page;

const dialog = (name: string | RegExp): Locator =>
  page.getByRole("dialog", { name }).or(page.getByRole("alertdialog", { name }));
const people = (): Locator => page.getByRole("table", { name: "People" });
const backups = (): Locator => page.getByRole("table", { name: "Backups" });

async function beginCompany(): Promise<void> {
  await page.getByRole("textbox", { name: "Company" }).waitFor();
  const company = { companyName: "Gull Lifts", personName: "Ada Finch", role: "office" } as const;
  await askFromPage(page, "company.start", company);
  await page.getByRole("heading", { level: 1, name: "New callout" }).waitFor();
}

async function openSettings(): Promise<void> {
  await goTo(page, "/settings");
  await page.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
}

async function addPerson(name: string): Promise<void> {
  await page.getByRole("button", { name: "Add a person" }).click();
  const asked = dialog("Add a person");
  await asked.getByRole("textbox", { name: "Name" }).fill(name);
  await asked.getByText("team lead", { exact: true }).click();
  await asked.getByRole("textbox", { name: /^Telephone/ }).fill("555 0113");
  await asked.getByText("On duty now").click();
  await asked.getByRole("button", { name: "Save", exact: true }).click();
  await people().getByRole("button", { name }).waitFor();
}

const background = (): Promise<string> =>
  page.evaluate(() => getComputedStyle(document.body).backgroundColor);

afterEach(() => program.close());

describe.each(programKinds)("Settings in %s", (kind) => {
  test("a person is added, changed, and never lost by a restored backup without a way back", async () => {
    program = await startProgram(kind);
    page = program.page;
    page.setDefaultTimeout(20_000);
    await beginCompany();
    await openSettings();
    await addPerson("Suri Fenn");
    const added = (await askFromPage(page, "person.list", {})).people.find(
      ({ name }) => name === "Suri Fenn",
    );
    expect(added).toMatchObject({ role: "team lead", telephone: "555 0113", onDuty: true, active: true });

    const before = (await askFromPage(page, "backup.list", {})).backups;
    await page.getByRole("button", { name: "Back up now" }).click();
    await backups().getByText("by hand").waitFor();
    const [backup, ...others] = (await askFromPage(page, "backup.list", {})).backups;
    expect(backup).toMatchObject({ kind: "by-hand" });
    expect(others).toEqual(before);

    await people().getByRole("button", { name: "Suri Fenn" }).click();
    await dialog("Suri Fenn").getByText("Has left; stays in the records").click();
    await dialog("Suri Fenn").getByRole("button", { name: "Save", exact: true }).click();
    await people().getByText("has left").waitFor();

    const row = backups().getByRole("row").filter({ hasText: "by hand" });
    await row.getByRole("button", { name: /^Restore the backup of/ }).click();
    const asked = dialog("Put this backup in place of the present data?");
    await asked.getByText("Compare the bridge register with the shaft afterwards").waitFor();
    await asked.getByRole("button", { name: "Restore", exact: true }).click();
    await asked.waitFor({ state: "detached" });
    await people().getByText("has left").waitFor({ state: "detached" });
    await people().getByRole("row").filter({ hasText: "Suri Fenn" }).getByText("on duty now").waitFor();
    await backups().getByText("before a restore").waitFor();
    const after = await askFromPage(page, "person.list", {});
    expect(after.people.find(({ name }) => name === "Suri Fenn")).toMatchObject({
      active: true,
      onDuty: true,
    });
    const kept = (await askFromPage(page, "backup.list", {})).backups;
    expect(kept.map((one) => one.kind)).toContain("before-restore");
    expect(kept.map((one) => one.name)).toContain(backup?.name);
  });

  test("light or dark is chosen against the system's wish and stays after a reload", async () => {
    program = await startProgram(kind, { colorScheme: "light" });
    page = program.page;
    page.setDefaultTimeout(20_000);
    await beginCompany();
    await openSettings();
    const light = await background();
    await page.getByText("Dark", { exact: true }).click();
    await expect.poll(background).not.toBe(light);
    const dark = await background();
    await page.reload();
    await page.getByRole("radio", { name: "Dark" }).waitFor({ state: "attached" });
    expect(await page.getByRole("radio", { name: "Dark" }).isChecked()).toBe(true);
    expect(await background()).toBe(dark);
    await page.getByText("As the system", { exact: true }).click();
    await expect.poll(background).toBe(light);
  });

  test("the demonstration goes in one step and leaves an empty program with a backup", async () => {
    program = await startProgram(kind, { demonstration: true });
    page = program.page;
    page.setDefaultTimeout(60_000);
    await page.getByText("Demonstration data", { exact: true }).first().waitFor();
    expect((await askFromPage(page, "lift.list", {})).lifts.length).toBeGreaterThan(30);
    await openSettings();
    await page.getByRole("button", { name: "Remove the demonstration" }).click();
    const asked = dialog("Remove the demonstration company?");
    await asked.getByText("A backup is kept in the data folder.").waitFor();
    await asked.getByRole("button", { name: "Remove", exact: true }).click();
    await page.getByRole("textbox", { name: "Company" }).waitFor();
    expect(await page.getByText("Demonstration data", { exact: true }).count()).toBe(0);
    expect((await askFromPage(page, "lift.list", {})).lifts).toEqual([]);
    expect((await askFromPage(page, "callout.list", {})).total).toBe(0);
    expect((await askFromPage(page, "backup.list", {})).backups.length).toBeGreaterThan(0);
  });
});
