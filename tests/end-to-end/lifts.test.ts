import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { screenKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

/** Asks from inside the page, as the screens do, whichever shell it runs in. */
async function ask<Name extends OperationName>(
  page: Page,
  operation: Name,
  input: InputOf<Name>,
  as?: string,
): Promise<OutputOf<Name>> {
  const envelope = await page.evaluate(
    async (request): Promise<{ ok: boolean; value?: unknown }> => {
      const shell = (
        globalThis as { sillbook?: { request(asked: unknown): Promise<{ ok: boolean; value?: unknown }> } }
      ).sillbook;
      if (shell) return shell.request(request);
      const headers = { "content-type": "application/json" };
      const answer = await fetch("/request", { method: "POST", headers, body: JSON.stringify(request) });
      return answer.json();
    },
    { operation, input, ...(as === undefined ? {} : { as }) },
  );
  if (!envelope.ok) throw new Error(`${operation}: ${JSON.stringify(envelope)}`);
  return envelope.value as OutputOf<Name>;
}

async function goTo(page: Page, path: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

async function choose(page: Page, label: string, option: string | RegExp): Promise<void> {
  await page
    .getByRole("dialog")
    .getByRole("button", { name: new RegExp(`${label}$`) })
    .click();
  await page.getByRole("option", { name: option }).click();
}

const levels = [
  { marking: "0", name: "Lobby", level: 0 },
  { marking: "1", name: "First", level: 3.2 },
  { marking: "2", name: "Second", level: 6.1 },
];

describe.each(screenKinds)("lifts in %s", (kind) => {
  let program: Program;
  let page: Page;
  let ines: string;
  let liftId: string;

  beforeAll(async () => {
    program = await startProgram(kind);
    page = program.page;
    page.setDefaultTimeout(10_000);
    const started = await ask(page, "company.start", {
      companyName: "Gull Lifts",
      personName: "Ines Calder",
      role: "engineer",
    });
    ines = started.personId;
    await ask(page, "person.add", { name: "Suri Fenn", role: "engineer" }, ines);
    await page.reload();
    // The start screen must have been chosen before another one is asked for.
    await page.locator("nav a[aria-current]").waitFor();
    await goTo(page, "/lifts");
  });
  afterAll(async () => program.close());

  test("a site and a lift are added by keyboard with what is known, and the rest can wait", async () => {
    await page.getByRole("button", { name: "Add the first site" }).press("Enter");
    await page.getByRole("textbox", { name: "Name" }).fill("Kittiwake House");
    await page.getByRole("textbox", { name: "Keys" }).fill("at the porter's desk");
    await page.getByRole("button", { name: "Add the site" }).press("Enter");
    await page.getByRole("heading", { name: "Kittiwake House", level: 1 }).waitFor();
    await page.getByRole("button", { name: "Add a lift" }).press("Enter");
    await page.getByRole("button", { name: "Add the lift" }).press("Enter");
    expect(await page.getByRole("alert").allTextContents()).toEqual(["Name at the site is needed."]);
    await page.getByRole("textbox", { name: "Name at the site" }).fill("Lift 2");
    await page.getByRole("button", { name: "Add the lift" }).press("Enter");
    await page.getByRole("heading", { name: "Kittiwake House, Lift 2", level: 1 }).waitFor();
    liftId = /\/lift\/([0-9a-f-]+)/.exec(page.url())?.[1] ?? "";
    expect(await page.getByText("Here the shaft will stand to scale").count()).toBe(1);
  });

  test("landings are entered as a table, and the shaft is drawn from them", async () => {
    await page.locator("#landings").getByRole("button", { name: "Enter the landings" }).click();
    for (const { marking, name, level } of levels) {
      await page.getByRole("button", { name: "Add a landing" }).click();
      const row = page
        .getByRole("list", { name: /^Landings/ })
        .getByRole("listitem")
        .first();
      await row.getByRole("textbox", { name: "Marking" }).fill(marking);
      await row.getByRole("textbox", { name: "Name" }).fill(name);
      await row.getByRole("textbox", { name: "Level" }).fill(String(level));
    }
    await page.getByRole("button", { name: "Save the landings" }).click();
    await page.getByRole("group", { name: /^Shaft section with 3 landings/ }).waitFor();
    const { landings } = await ask(page, "lift.find", { id: liftId });
    expect(landings.map(({ marking, level }) => [marking, level])).toEqual([
      ["0", 0],
      ["1", 3.2],
      ["2", 6.1],
    ]);
  });

  test("what is recorded is written in the field's own unit, and a wrong number stays where it is", async () => {
    await page.getByRole("button", { name: "Change what is recorded" }).click();
    const magnet = page.getByRole("textbox", { name: /^Zone magnet length/ });
    await magnet.fill("0.3");
    await page.getByRole("textbox", { name: /^Spacing of the zone sensors/ }).fill("60");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.getByText("Zone magnet length lies between 20").first().waitFor();
    expect(await magnet.inputValue()).toBe("0.3");
    await magnet.fill("300");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.getByRole("button", { name: "Change what is recorded" }).waitFor();
    const { lift } = await ask(page, "lift.find", { id: liftId });
    expect([lift.magnetLength, lift.sensorSpacing]).toEqual([0.3, 0.06]);
  });

  test("the car moves by keys and says which sensors are on", async () => {
    const car = page.getByRole("slider");
    await car.focus();
    await car.press("2");
    await page.getByText("Car at +6.10 m, landing 2; upper on, lower on.").waitFor();
    for (let step = 0; step < 14; step += 1) await car.press("ArrowUp");
    await page.getByText("Car at +6.24 m, 140 mm above landing 2; upper off, lower on.").waitFor();
  });

  test("two edits of one record: the second sees both texts and nothing is lost", async () => {
    await page.getByRole("button", { name: "Change what is recorded" }).click();
    await page.getByRole("textbox", { name: "Controller family" }).fill("Dunlin");
    const { lift } = await ask(page, "lift.find", { id: liftId });
    const other = { id: liftId, version: lift.version, fields: { controllerFamily: "Petrel" } };
    await ask(page, "lift.change", other, ines);
    await page.getByRole("button", { name: "Save", exact: true }).click();
    const conflict = page.getByRole("region", { name: "Two versions of this record" });
    await conflict.waitFor();
    expect(await conflict.locator(".conflict-text").allTextContents()).toEqual(["Dunlin", "Petrel"]);
    await conflict.getByRole("button", { name: "Save yours as the newest" }).click();
    await conflict.waitFor({ state: "detached" });
    expect((await ask(page, "lift.find", { id: liftId })).lift.controllerFamily).toBe("Dunlin");
    await page.getByRole("button", { name: "Take back the last change" }).click();
    await expect
      .poll(async () => (await ask(page, "lift.find", { id: liftId })).lift.controllerFamily)
      .toBe("Petrel");
  });

  test("a bridge is entered, stands above everything, and keeps the lift out of service until it is confirmed out", async () => {
    await page.getByRole("button", { name: "Enter a bridge" }).click();
    expect(await page.getByRole("dialog").getByRole("note", { name: "Caution" }).count()).toBe(1);
    await choose(page, "Across which contact", "landing door contact");
    await choose(page, "Landing", /^1, First/);
    await page.getByRole("textbox", { name: "Between which points" }).fill("34–35");
    await page.getByRole("textbox", { name: "Number on the lead" }).fill("7");
    await page.getByRole("textbox", { name: "Why" }).fill("contact does not make");
    await page.getByText("inspection control", { exact: true }).click();
    await page.getByRole("button", { name: "Enter it, then set it" }).click();
    const strip = page.getByRole("region", { name: "Open bridge" });
    await strip.waitFor();
    expect(await strip.textContent()).toContain("the landing 1 door contact, 34–35");
    expect(await page.locator("[data-mark='1']").getAttribute("aria-label")).toContain("bridge open");

    await page.getByRole("button", { name: "Change its state" }).click();
    await page.getByRole("dialog").getByText("in service", { exact: true }).click();
    await choose(page, "Register compared with the shaft by", /^Suri Fenn/);
    await page.getByRole("button", { name: "Record the state" }).click();
    await page.getByText(/Bridge \S+-B01 \(34–35\) is open\. The lift cannot be recorded/).waitFor();
    await page.keyboard.press("Escape");

    await page.keyboard.press("b");
    await page.getByRole("dialog").getByRole("button", { name: "Record removal" }).click();
    await strip.getByText(/the second check is missing/).waitFor();
    expect((await ask(page, "lift.find", { id: liftId })).line.openBridges).toBe(1);
    await page.keyboard.press("b");
    await choose(page, "Looked at the place", /^Suri Fenn/);
    await page.getByRole("textbox", { name: /^What proves/ }).fill("opened by hand, the chain dropped");
    await page.getByRole("dialog").getByRole("button", { name: "Confirm removal" }).click();
    await strip.waitFor({ state: "detached" });

    await page.getByRole("button", { name: "Change its state" }).click();
    await page.getByRole("button", { name: "Record the state" }).click();
    await page.getByRole("dialog").waitFor({ state: "detached" });
    expect((await ask(page, "lift.find", { id: liftId })).lift.state).toBe("in service");
    const row = page.getByRole("table", { name: "Bridge register" }).getByRole("row").last();
    expect(await row.textContent()).toContain("opened by hand, the chain dropped");
  });

  test("doors found bridged together are a danger that nothing passes until it is cleared", async () => {
    await page.getByRole("button", { name: "Doors found bridged" }).click();
    await page.getByRole("textbox", { name: "Where and how" }).fill("wire behind the controller door");
    await page.getByRole("button", { name: "Record the danger" }).click();
    const strip = page.getByRole("region", { name: "Danger" });
    await strip.waitFor();
    expect((await ask(page, "lift.find", { id: liftId })).line).toMatchObject({
      danger: true,
      state: "out of service",
    });
    await strip.getByRole("button", { name: "Record how it was cleared" }).click();
    await page.getByRole("textbox", { name: /^How it was cleared/ }).fill("wire out, both circuits proved");
    await choose(page, "Cleared by", /^Suri Fenn/);
    await page.getByRole("dialog").getByRole("button", { name: "Record how it was cleared" }).click();
    await strip.waitFor({ state: "detached" });
  });

  test("a maintenance visit without a callout is recorded, and opens from the timeline", async () => {
    await page.getByRole("button", { name: "Record a visit" }).first().click();
    await page.getByRole("dialog").getByText("maintenance", { exact: true }).click();
    await page.getByRole("textbox", { name: "Arrived" }).fill("1 h ago");
    await page.getByRole("textbox", { name: "Found" }).fill("all zone signals right");
    await page.getByRole("button", { name: "Record the visit" }).click();
    const entry = page
      .getByRole("list", { name: "Timeline of the lift" })
      .getByRole("link", { name: /^Visit/ });
    await entry.click();
    await page.getByRole("heading", { name: /^Visit, /, level: 1 }).waitFor();
    expect(await page.getByText("all zone signals right").count()).toBe(1);
  });

  test("all that is known prints, and a lift is found by a part of its site", async () => {
    await goTo(page, `/print/lift/${liftId}`);
    await page.getByRole("article").last().waitFor();
    const words = await page.locator("main").textContent();
    for (const said of ["at the porter's desk", "300\u00a0mm", "34–35", "+6.10", "all zone signals right"])
      expect(words).toContain(said);
    await goTo(page, "/lifts");
    await page.getByRole("searchbox", { name: "Find a lift" }).fill("kitiwake");
    await page.getByRole("option", { name: /Kittiwake House, Lift 2/ }).waitFor();
    await page.getByRole("searchbox").press("Enter");
    await page.getByRole("heading", { name: "Kittiwake House, Lift 2", level: 1 }).waitFor();
  });

  test("axe finds nothing on the lift and its site", async () => {
    await page.getByRole("group", { name: /^Shaft section/ }).waitFor();
    const onLift = await new AxeBuilder({ page }).include("main").analyze();
    await page.getByRole("heading", { level: 1 }).getByRole("link").click();
    await page.getByRole("button", { name: "Delete this site" }).waitFor();
    const onSite = await new AxeBuilder({ page }).include("main").analyze();
    const found = [...onLift.violations, ...onSite.violations];
    expect(found.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ""}`)).toEqual([]);
  });

  test("a deleted lift says so and can be restored", async () => {
    await goTo(page, `/lift/${liftId}`);
    await page.getByRole("button", { name: "Delete this lift" }).click();
    await page.getByRole("button", { name: "Restore" }).click();
    await page.getByRole("heading", { name: "Kittiwake House, Lift 2", level: 1 }).waitFor();
    expect((await ask(page, "lift.list", {})).lifts).toHaveLength(1);
  });
});
