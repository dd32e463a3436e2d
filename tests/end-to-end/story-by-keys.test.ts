import type { Locator, Page } from "playwright";
import { afterEach, beforeEach, expect, test } from "vitest";
import { askFromPage, tabTo } from "./support/drive-page.ts";
import { type Program, startProgram } from "./support/start-program.ts";
import { beginStory, type StoryCompany } from "./support/story-company.ts";

// The main part of the story without a mouse: nothing here presses, chooses or fills but the keyboard.

const said = "lift stops a hand's breadth too low at 2, people out";
const noteTitle = "Car stops low, high or short at one landing only";
/** The office has 30 seconds while the caller speaks; a script that types at once must be well below. */
const mostMilliseconds = 15_000;

let program: Program;
let page: Page;
let story: StoryCompany;

const keys = async (...pressed: readonly string[]): Promise<void> => {
  for (const key of pressed) await page.keyboard.press(key);
};
const type = (text: string): Promise<void> => page.keyboard.type(text);
const dialog = (): Locator => page.getByRole("dialog");
const hasFocus = (target: Locator): Promise<void> =>
  expect.poll(() => target.evaluate((element) => element === document.activeElement)).toBe(true);

async function logTheCall(): Promise<void> {
  await hasFocus(page.getByRole("combobox", { name: "Which lift" }));
  const started = Date.now();
  await type("kittiwake 2");
  await page.getByRole("option", { name: story.liftTitle }).waitFor();
  await keys("ArrowDown", "Enter", "Tab", "Space", "Tab");
  await type(said);
  await keys("Control+Enter");
  await hasFocus(dialog().getByRole("option", { name: story.engineer }));
  await keys("Enter");
  await page.getByText("saved and passed on").waitFor();
  expect(Date.now() - started).toBeLessThan(mostMilliseconds);
  const { callouts } = await askFromPage(page, "callout.list", { filter: { open: true } });
  expect(callouts).toHaveLength(1);
  expect(callouts[0]).toMatchObject({ said, liftId: story.liftId, inside: "nobody", next: "arrived" });
}

/** N proposes the next event, Enter records it. */
async function recordEvents(): Promise<void> {
  await keys("Alt+o");
  await hasFocus(page.getByRole("row", { name: new RegExp(said.slice(0, 20)) }));
  for (const kind of ["arrived", "made safe"]) {
    await keys("n");
    await hasFocus(dialog().getByRole("button", { name: `Record ${kind}` }));
    await keys("Enter");
    await dialog().waitFor({ state: "detached" });
    await expect
      .poll(
        async () => (await askFromPage(page, "callout.list", { filter: { open: true } })).callouts[0]?.made,
      )
      .toContain(kind);
  }
}

async function becomeEngineer(): Promise<void> {
  await tabTo(page, page.getByRole("button", { name: /Change person$/ }));
  await keys("Enter");
  await page.getByRole("menuitemradio", { name: story.engineer }).waitFor();
  await type("bram");
  await keys("Enter");
  await page.getByRole("button", { name: `${story.engineer},` }).waitFor();
}

async function findTheNote(): Promise<void> {
  await keys("g", "f");
  const box = page.getByRole("combobox", { name: /^Find fault notes/ });
  await box.waitFor();
  await tabTo(page, box);
  await type("stops too low at one landing");
  await keys("Enter");
  await page.getByRole("heading", { level: 1, name: noteTitle }).waitFor();
}

async function openCalculatorForTheLift(): Promise<void> {
  await tabTo(page, page.getByRole("link", { name: "Open Zone sensors and magnets" }));
  await keys("Enter");
  await page.getByRole("heading", { level: 1, name: "Zone sensors and magnets" }).waitFor();
  await keys("l");
  await hasFocus(dialog().getByRole("combobox", { name: "Lift" }));
  await type("kittiwake");
  await page.getByRole("option", { name: story.liftTitle }).waitFor();
  await keys("ArrowDown", "Enter");
  await tabTo(page, dialog().getByRole("button", { name: /Landing/ }));
  await keys("Enter");
  await page.getByRole("option", { name: /^2/ }).waitFor();
  await type("2");
  await keys("Enter");
  await tabTo(page, dialog().getByRole("button", { name: "Take this lift" }));
  await keys("Enter");
  await page.getByText(`${story.liftTitle}, landing 2`).first().waitFor();
}

async function workItOutAndSave(): Promise<void> {
  await tabTo(page, page.getByRole("radio", { name: "Edge positions" }));
  await keys("ArrowLeft");
  await expect.poll(() => page.getByRole("radio", { name: "Zone centre" }).isChecked()).toBe(true);
  for (const [label, text] of [
    ["Zone centre, up", "-11"],
    ["Zone centre, down", "-23"],
    ["Car sill to landing sill, measured", "-14"],
  ] as const) {
    await tabTo(page, page.getByRole("textbox", { name: label, exact: true }));
    await type(text);
  }
  await expect
    .poll(() => page.getByRole("region", { name: "Verdict" }).textContent())
    .toMatch(/^Misplaced\./);
  await keys("Control+s");
  await page.getByText(/^Saved \d\d:\d\d$/).waitFor();
  const place = { liftId: story.liftId, landingId: story.landingId };
  const { calculations } = await askFromPage(page, "calculation.list", place);
  expect(calculations).toHaveLength(1);
  expect(calculations[0]).toMatchObject({
    by: { name: story.engineer },
    verdictWord: "Misplaced",
    inputs: { measured: "positions", centreUp: -0.011, centreDown: -0.023, sillDistance: -0.014 },
  });
}

beforeEach(async () => {
  program = await startProgram("local-web");
  page = program.page;
  page.setDefaultTimeout(20_000);
  story = await beginStory(page);
});
afterEach(() => program.close());

test("a callout, its events, the fault note and the calculator by keyboard alone", async () => {
  await logTheCall();
  await recordEvents();
  await becomeEngineer();
  await findTheNote();
  await openCalculatorForTheLift();
  await workItOutAndSave();
});
