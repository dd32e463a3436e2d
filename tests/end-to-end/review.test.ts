import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Locator, Page } from "playwright";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { screenKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// The team lead's way: what needs a person, what keeps coming back, and from every number to its callouts.

let program: Program;
let page: Page;

interface Counted {
  readonly callouts: number;
  readonly repeats: number;
  readonly repeatsYearBefore: number;
}

/** Asks from inside the page, as the screens do, whichever shell it runs in. */
async function ask<Value>(operation: string, input: unknown, as?: string): Promise<Value> {
  const answer = await page.evaluate(
    async (request) => {
      const shell = (globalThis as { sillbook?: { request(asked: unknown): Promise<unknown> } }).sillbook;
      if (shell) return shell.request(request);
      const headers = { "content-type": "application/json" };
      const response = await fetch("/request", { method: "POST", headers, body: JSON.stringify(request) });
      return response.json();
    },
    { operation, input, ...(as === undefined ? {} : { as }) },
  );
  const { ok, value } = answer as { ok: boolean; value: Value };
  if (!ok) throw new Error(`${operation}: ${JSON.stringify(answer)}`);
  return value;
}

async function goTo(hash: string): Promise<void> {
  await page.evaluate((next) => {
    location.hash = next;
  }, hash);
}

const frame = (title: RegExp): Locator =>
  page
    .locator("figure.chart-frame, section")
    .filter({ has: page.getByRole("heading", { level: 2, name: title }) });
const sentences = (): Locator =>
  page.getByRole("region", { name: "What needs a person now" }).getByRole("listitem");
const cameBack = /came back within 30 days$/;

/** Until every part of the page has its answer. */
async function counted(): Promise<void> {
  await page.waitForFunction(
    () => document.querySelector("main")?.textContent?.includes("Counting") === false,
  );
}

/** The program begins on the person's start screen; before that any other address would be taken back. */
async function atStartScreen(): Promise<void> {
  await page.getByRole("navigation", { name: "Screens" }).waitFor();
  await page.waitForURL(/#\/[a-z]+/);
}

async function openReview(search = ""): Promise<void> {
  await goTo("#/settings");
  await page.getByRole("heading", { level: 1, name: "Settings" }).waitFor({ state: "attached" });
  await goTo(`#/review${search}`);
  await page.getByRole("heading", { level: 1, name: "Review" }).waitFor();
  await counted();
}

/** The callouts that the list behind a number shows; then back to Review. */
async function countBehind(number: Locator): Promise<number> {
  await number.click();
  const shown = page.getByRole("status").filter({ hasText: /^\d+ callouts?$/ });
  await shown.waitFor();
  const count = Number.parseInt((await shown.textContent()) ?? "", 10);
  await page.goBack();
  await page.getByRole("heading", { level: 1, name: "Review" }).waitFor();
  await counted();
  return count;
}

async function problems(): Promise<string[]> {
  // In the harness a second page cannot be opened, so axe runs within this one. What react-aria reads out is no part of it.
  const axe = new AxeBuilder({ page })
    .setLegacyMode(true)
    .exclude("[data-live-announcer]")
    .exclude(".column");
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

function adopt(started: Program): void {
  program = started;
  page = program.page;
  page.setDefaultTimeout(10_000);
}

describe("the demonstration company", () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "sillbook-review-"));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  describe.each(screenKinds)("%s", (kind) => {
    beforeAll(async () => {
      adopt(await startProgram(kind, { folder, demonstration: true }));
      await atStartScreen();
    });
    afterAll(() => program.close());

    test("what needs a person stands on top, people inside first, then the bridge, and leads there", async () => {
      await openReview();
      const said = await sentences().locator("p").allInnerTexts();
      expect(said[0]).toMatch(/^Net Loft Studios, Lift 1: 1 person inside\./);
      expect(said[1]).toMatch(/^Kittiwake House, Lift 2: bridge open\.\sAcross the landing 6 door contact/);
      expect(said.join("\n")).toMatch(/Saltpan Court, Lift 1: third repeat of a door fault\./);
      expect(said.join("\n")).toMatch(/Fulmar Terrace, Lift 1: \S+ repeat of a brake fault\./);
      const chain = sentences().filter({ hasText: "Saltpan Court, Lift 1" });
      expect(await countBehind(chain.getByRole("link", { name: /^4 callouts/ }))).toBe(4);
      await sentences().getByRole("link", { name: "Kittiwake House, Lift 2: bridge open." }).click();
      await page.getByRole("heading", { level: 1 }).filter({ hasNotText: "Review" }).waitFor();
      expect(new URL(page.url()).hash).toMatch(/^#\/lift\//);
    });

    test("the sentence of the repeats agrees with the records, and each of its numbers opens its callouts", async () => {
      await openReview("?from=2020-01-01&until=2090-01-01");
      const period = {
        from: new Date("2020-01-01T00:00:00").toISOString(),
        until: new Date("2090-01-02T00:00:00").toISOString(),
      };
      const found = await ask<Counted>("review.repeats", period);
      expect(found.repeats).toBeGreaterThan(20);
      const repeats = frame(cameBack);
      expect(await repeats.getByRole("heading").textContent()).toBe(
        `${found.repeats} of ${found.callouts} callouts came back within 30 days`,
      );
      const caption = repeats.locator("figcaption");
      expect(await countBehind(caption.getByRole("link", { name: /Repeats within 30 days/ }).first())).toBe(
        found.repeats,
      );
      expect(await countBehind(caption.getByRole("link", { name: /Callouts received/ }).first())).toBe(
        found.callouts,
      );
    });

    test("the year before stands beside, in the sentence, per lift and per fault group", async () => {
      await openReview();
      expect(await frame(cameBack).locator("figcaption").textContent()).toMatch(
        /came back within 30 days; the year before \d+ of \d+\. On the same lift, whatever the fault group: \d+/,
      );
      const table = page.getByRole("table", { name: /^Callouts per lift/ });
      const [first, second, third] = await table.getByRole("row").nth(1).getByRole("cell").allInnerTexts();
      const difference = Number(first) - Number(second);
      expect(third).toBe(
        difference === 0 ? "as many" : `${Math.abs(difference)} ${difference > 0 ? "more" : "fewer"}`,
      );
      expect(await countBehind(table.getByRole("row").nth(1).getByRole("link").nth(1))).toBe(Number(first));
      await page.getByRole("button", { name: /^Table: Most callouts:/ }).click();
      const groups = page.getByRole("table", { name: /^Callouts per fault group/ });
      const doors = groups
        .getByRole("row")
        .filter({ has: page.getByRole("rowheader", { name: "Doors", exact: true }) });
      const before = Number(await doors.getByRole("cell").nth(1).textContent());
      expect(before).toBeGreaterThan(0);
      expect(await countBehind(doors.getByRole("link", { name: /the year before/ }))).toBe(before);
    });

    test("a lift's table is sorted by its heads, and shows all on demand", async () => {
      await openReview();
      const table = page.getByRole("table", { name: /^Callouts per lift/ });
      const rows = table.locator("tbody tr:visible");
      expect(await rows.count()).toBe(6);
      await page.getByRole("button", { name: /^All \d+ lifts$/ }).click();
      const counts = async (): Promise<number[]> =>
        (await rows.locator("td:first-of-type").allInnerTexts()).map(Number);
      const falling = await counts();
      expect(falling.length).toBeGreaterThan(30);
      expect(falling).toEqual([...falling].sort((a, b) => b - a));
      await table.getByRole("button", { name: "Callouts, most first" }).click();
      expect(await counts()).toEqual([...falling].sort((a, b) => a - b));
    });

    test("time, site and group are changed by keyboard alone, and stand in the address", async () => {
      await openReview();
      await page.keyboard.press("f");
      const dialog = page.getByRole("dialog", { name: "What Review looks at" });
      await dialog.getByRole("radio", { name: "Last year" }).focus();
      await page.keyboard.press("ArrowLeft");
      await dialog.getByRole("combobox", { name: /^Site/ }).focus();
      await page.keyboard.type("nowhere at all");
      await page.keyboard.press("Escape");
      await dialog.getByRole("button", { name: "Show", exact: true }).focus();
      await page.keyboard.press("Enter");
      await dialog.getByText("No such site. Choose one from the list").waitFor();
      await dialog.getByRole("combobox", { name: /^Site/ }).focus();
      await page.keyboard.press("ControlOrMeta+a");
      await page.keyboard.type("saltp");
      await page.getByRole("option", { name: /^Saltpan Court/ }).waitFor();
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Enter");
      await dialog.getByRole("button", { name: "Show", exact: true }).focus();
      await page.keyboard.press("Enter");
      await dialog.waitFor({ state: "detached" });
      await page.getByText(/· Saltpan Court · all fault groups ·/).waitFor();
      expect(new URL(page.url()).hash).toMatch(/^#\/review\?last=quarter&site=[0-9a-f-]{36}$/);
      await counted();
      expect(await sentences().count()).toBe(1);
      const lifts = await page
        .getByRole("table", { name: /^Callouts per lift/ })
        .getByRole("rowheader")
        .allInnerTexts();
      expect(lifts.every((title) => title.startsWith("Saltpan Court"))).toBe(true);
    });

    test("the arches are chosen by key and open the callouts of the chain; the table says the same", async () => {
      await openReview();
      const chain = page.getByRole("button", {
        name: "Saltpan Court, Lift 1, doors: 4 callouts in this chain.",
      });
      await chain.focus();
      await page.keyboard.press("Enter");
      await page
        .getByRole("heading", { level: 1, name: "Saltpan Court, Lift 1: chain of repeats, doors" })
        .waitFor();
      await page.getByText("4 callouts", { exact: true }).waitFor();
      await page.goBack();
      await counted();
      await page.getByRole("button", { name: /^Table: \d+ of \d+ callouts/ }).click();
      const row = page
        .getByRole("table", { name: "Chains of repeats" })
        .getByRole("row")
        .filter({ hasText: "Saltpan" });
      expect(await row.filter({ hasText: "doors" }).getByRole("link", { name: /^4: / }).count()).toBe(1);
    });

    test("axe finds nothing on the page and in its dialog", async () => {
      await openReview();
      expect(await problems()).toEqual([]);
      await page.keyboard.press("f");
      await page.getByRole("dialog").waitFor();
      expect(await problems()).toEqual([]);
    });
  });
});

describe.each(screenKinds)("%s with a company that begins", (kind) => {
  afterEach(() => program.close());

  test("what is missing is said, until there is something to count", async () => {
    adopt(await startProgram(kind));
    await ask("company.start", { companyName: "Gull Lifts", personName: "Ada Finch", role: "team lead" });
    await atStartScreen();
    await openReview();
    await page.getByText("Nothing needs a person now").waitFor();
    await page.getByText(/as soon as callouts are logged/).waitFor();
    expect(await page.getByRole("link", { name: "Log the first callout" }).getAttribute("href")).toMatch(
      /\/desk$/,
    );

    const site = await ask<{ id: string }>("site.add", { name: "Old Ropery Lofts" }, "Ada Finch");
    const lift = await ask<{ id: string }>("lift.add", { siteId: site.id, name: "Lift 1" }, "Ada Finch");
    const day = 24 * 60 * 60 * 1000;
    const log = (daysAgo: number, group: string): Promise<unknown> => {
      const receivedAt = new Date(Date.now() - daysAgo * day).toISOString();
      const said = { liftId: lift.id, liftWords: "", said: "doors keep reopening", inside: "nobody", group };
      return ask("callout.log", { ...said, receivedAt }, "Ada Finch");
    };
    await log(20, "not yet known");
    await page.getByRole("heading", { name: "1 callout, no repeat within 30 days" }).waitFor();
    await page.getByText("A repeat takes two callouts of one lift and one fault group.").waitFor();
    await page.getByText("Nothing to compare with: the records begin on").first().waitFor();
    expect(await page.getByRole("columnheader", { name: /Year before/ }).count()).toBe(0);

    await log(15, "not yet known");
    await page.getByRole("heading", { name: "2 callouts, no repeat within 30 days" }).waitFor();
    await page.getByText("“Not yet known” is never a repeat by group.").waitFor();
    await log(9, "doors");
    await log(2, "doors");
    await page.getByRole("heading", { name: "1 of 4 callouts came back within 30 days" }).waitFor();
    await sentences().getByText("Old Ropery Lofts, Lift 1: first repeat of a door fault.").waitFor();
    await page.getByText(/On the same lift, whatever the fault group: 3\./).waitFor();
  });
});
