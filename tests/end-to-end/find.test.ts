import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { screenKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// The engineer's way: a symptom, its fault note, the calculator filled in from the lift; and two people at one note.

const company = { companyName: "Gull Lifts", personName: "Ada Finch", role: "engineer" };
let program: Program;
let page: Page;
let liftId: string;
let calloutId: string;
let fixId: string;

interface Asked {
  readonly ok: boolean;
  readonly value: Record<string, string>;
}

/** Asks from inside the page, as the screens do, whichever shell it runs in. */
async function ask(operation: string, input: unknown, as?: string): Promise<Record<string, string>> {
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
  const { ok, value } = answer as Asked;
  if (!ok) throw new Error(`${operation}: ${JSON.stringify(answer)}`);
  return value;
}

async function fill(): Promise<void> {
  await ask("company.start", company);
  await ask("person.add", { name: "Teo Marlow", role: "engineer" }, "Ada Finch");
  const site = await ask("site.add", { name: "Old Ropery Lofts", street: "12 Ropewalk" }, "Ada Finch");
  const lift = { siteId: site.id, name: "Lift 1", controllerFamily: "Dunlin", magnetLength: 0.3 };
  liftId = (await ask("lift.add", lift, "Ada Finch")).id ?? "";
  const said = { liftId, liftWords: "", said: "hums like a beehive at the attic landing", inside: "nobody" };
  calloutId =
    (await ask("callout.log", { ...said, receivedAt: "2026-06-03T08:00:00.000Z" }, "Ada Finch")).id ?? "";
  const people = (await ask("person.list", {})) as unknown as { people: { id: string; name: string }[] };
  const visit = {
    liftId,
    calloutId,
    kind: "callout",
    engineerId: people.people.find(({ name }) => name === "Ada Finch")?.id,
    arrivedAt: "2026-06-03T09:00:00.000Z",
    leftAt: "2026-06-03T10:00:00.000Z",
    found: "Fan rubs on its cover",
    done: "Cover straightened",
    fix: {
      cause: "Brake magnet fan rubs on its cover",
      fix: "Cover straightened and screwed down",
      group: "brake",
    },
  };
  fixId = (await ask("visit.record", visit, "Ada Finch")).fixId ?? "";
}

async function goTo(hash: string, where: Page = page): Promise<void> {
  await where.evaluate((next) => {
    location.hash = next;
  }, hash);
}

const box = (): ReturnType<Page["locator"]> => page.getByRole("combobox", { name: /^Find fault notes/ });
const chosen = (): ReturnType<Page["locator"]> => page.locator("[role=option][aria-selected=true]");
const address = (): string => new URL(page.url()).hash;

async function openFind(search = ""): Promise<void> {
  await goTo("#/note/new");
  await page.getByRole("heading", { level: 1, name: "New fault note" }).waitFor();
  await goTo(`#/find${search}`);
  await box().waitFor();
}

async function seriousProblems(): Promise<string[]> {
  // In the harness a second page cannot be opened, so axe runs within this one. What react-aria reads out is no part of it.
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .include("main")
    .exclude("[data-live-announcer]")
    .analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

async function newNote(title: string): Promise<string> {
  const note = {
    title,
    group: "doors",
    symptoms: ["reopens for no reason"],
    causes: [
      { key: "first", title: "Light curtain dirty" },
      { key: "second", title: "Track bent" },
    ],
  };
  return (await ask("faultNote.write", note, "Ada Finch")).id ?? "";
}

describe.each(screenKinds)("%s", (kind) => {
  beforeAll(async () => {
    program = await startProgram(kind);
    page = program.page;
    page.setDefaultTimeout(7000);
    await fill();
  });
  afterAll(() => program.close());

  test("one step leads to the fault note, a second to its calculator with the lift", async () => {
    await openFind(`?lift=${liftId}`);
    await box().pressSequentially("zone signals reversed");
    // At once, before any answer can be there.
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Zone signals arrive in reversed order" }).waitFor();
    await page.getByText("Starter note: general practice, check on site.").waitFor();
    expect(await seriousProblems()).toEqual([]);
    const calculator = page.getByRole("link", { name: "Open with Old Ropery Lofts, Lift 1" });
    await calculator.focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/#\/bench\/zone-sensors\?/);
    expect(address()).toMatch(new RegExp(`lift=${liftId}&note=[0-9a-f-]{36}$`));
    await page.goBack();
    await page.goBack();
    await box().waitFor();
    expect(await box().inputValue()).toBe("zone signals reversed");
  });

  test("the arrows walk the results while the box keeps the text, Escape clears", async () => {
    await openFind();
    await box().pressSequentially("zone signals reversed");
    await page.getByRole("heading", { level: 2, name: "Zone signals arrive in reversed order" }).waitFor();
    const first = await chosen().getAttribute("id");
    expect(await box().getAttribute("aria-activedescendant")).toBe(first);
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => box().getAttribute("aria-activedescendant")).not.toBe(first);
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => box().getAttribute("aria-activedescendant")).toBe(first);
    expect(await box().inputValue()).toBe("zone signals reversed");
    await expect.poll(address).toBe("#/find?q=zone+signals+reversed");
    expect(await seriousProblems()).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await box().inputValue()).toBe("");
    await page.getByRole("heading", { level: 2, name: /^All fault notes/ }).waitFor();
    await expect.poll(address).toBe("#/find");
  });

  test("a corrected word can be taken as typed", async () => {
    await openFind("?q=zoen%20signals%20reversed");
    await page.getByText("“zoen” read as “zone”").waitFor();
    await page.getByRole("button", { name: "Take “zoen” as typed" }).click();
    await page.getByText("“zoen” taken as typed").waitFor();
    await expect.poll(address).toContain("keep=");
  });

  test("a filter is chosen by key and stands in the address; without it everything is back", async () => {
    await openFind("?q=zone%20signals%20reversed");
    await chosen().waitFor();
    await page.getByRole("button", { name: /^fault group:/ }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("option", { name: "Hydraulics" }).waitFor();
    await page.keyboard.type("hyd");
    await page.keyboard.press("Enter");
    await expect.poll(address).toContain("group=hydraulics");
    await page.getByRole("button", { name: /^fault group: Hydraulics/ }).waitFor();
  });

  test("words that find nothing get advice and can become a note", async () => {
    await openFind();
    await box().fill("qqxzv wwkjh");
    await page.getByText(/^Nothing found\./).waitFor();
    await page.getByRole("link", { name: "Write a new fault note from these words" }).click();
    await page.getByRole("heading", { level: 1, name: "New fault note" }).waitFor();
    await expect
      .poll(() => page.getByRole("textbox", { name: "Symptom 1" }).inputValue())
      .toBe("qqxzv wwkjh");
    await page.getByRole("button", { name: "Save as a draft note" }).click();
    await page.getByText("A title is needed: what it is, in one line.").waitFor();
    expect(await page.getByRole("textbox", { name: "Symptom 1" }).inputValue()).toBe("qqxzv wwkjh");
  });

  test("10,000 characters do not stall the page", async () => {
    await openFind();
    const long = "zone signals reversed at landing ".repeat(304).slice(0, 10_000);
    const started = Date.now();
    await box().fill(long);
    await chosen().waitFor();
    await box().press("End");
    await box().pressSequentially("x");
    expect(await box().inputValue()).toBe(`${long}x`);
    expect(Date.now() - started).toBeLessThan(5000);
  });

  test("a callout shows what ended it, and its fix becomes a fault note that it proves", async () => {
    await openFind("?q=beehive%20attic");
    await page.getByRole("option", { name: /hums like a beehive/ }).click();
    await page.getByRole("heading", { level: 2, name: /hums like a beehive/ }).waitFor();
    await page.getByText("Cover straightened and screwed down").first().waitFor();
    await goTo(`#/note/new?fromFix=${fixId}`);
    await expect
      .poll(() => page.getByRole("textbox", { name: "Cause 1" }).inputValue())
      .toBe("Brake magnet fan rubs on its cover");
    expect(await page.getByRole("textbox", { name: "Symptom 1" }).inputValue()).toMatch(/beehive/);
    expect(await seriousProblems()).toEqual([]);
    await page.keyboard.press("Control+s");
    await page.getByRole("heading", { level: 1, name: "Brake magnet fan rubs on its cover" }).waitFor();
    await page.getByText("1 of 1").waitFor();
    await page
      .getByRole("link", { name: /Old Ropery Lofts, Lift 1/ })
      .first()
      .waitFor();
  });

  test("a note is confirmed and withdrawn with a reason, deleted and restored", async () => {
    const id = await newNote("Doors reopen in the rain");
    await goTo(`#/note/${id}`);
    await page.getByRole("button", { name: "Confirm" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Confirm" }).click();
    await page.getByText(/^Confirmed by Ada Finch, /).waitFor();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Withdraw" }).click();
    await page.getByText("Say why: the next person reads it.").waitFor();
    await page.getByLabel("Why").fill("It was the roof, not the doors");
    await page.getByRole("dialog").getByRole("button", { name: "Withdraw" }).click();
    await page.getByText(/^Withdrawn by Ada Finch, .*: It was the roof, not the doors$/).waitFor();
    await page.getByRole("button", { name: "Delete" }).click();
    await page.getByRole("alertdialog").getByRole("button", { name: "Delete" }).click();
    await page.getByRole("heading", { level: 1, name: "Deleted fault note" }).waitFor();
    await page.getByRole("button", { name: "Restore it" }).click();
    await page.getByRole("heading", { level: 1, name: "Doors reopen in the rain" }).waitFor();
    expect(await seriousProblems()).toEqual([]);
  });

  test("causes are moved by keys, and what was typed survives leaving the page", async () => {
    const id = await newNote("Doors reopen at noon");
    await goTo(`#/note/${id}`);
    await page.getByRole("heading", { level: 1, name: "Doors reopen at noon" }).waitFor();
    await page.keyboard.press("e");
    const second = page.getByRole("textbox", { name: "Cause 2" });
    await second.focus();
    await page.keyboard.press("Alt+ArrowUp");
    await expect.poll(() => page.getByRole("textbox", { name: "Cause 1" }).inputValue()).toBe("Track bent");
    await page.keyboard.type(" by a trolley");
    await expect
      .poll(() => page.getByRole("textbox", { name: "Cause 1" }).inputValue())
      .toContain(" by a trolley");
    await openFind();
    await goTo(`#/note/${id}`);
    await page.getByRole("button", { name: "Go on editing" }).click();
    expect(await page.getByRole("textbox", { name: "Cause 1" }).inputValue()).toContain(" by a trolley");
    expect(await seriousProblems()).toEqual([]);
    await page.keyboard.press("Control+s");
    await page.getByText(/Ada Finch changed causes/).waitFor();
    expect(await page.locator(".note-causes tbody tr").first().textContent()).toContain("by a trolley");
  });

  test("a change made elsewhere is said while editing, and saving shows both texts", async () => {
    const id = await newNote("Doors reopen in frost");
    await goTo(`#/note/${id}`);
    await page.getByRole("heading", { level: 1, name: "Doors reopen in frost" }).waitFor();
    await page.keyboard.press("e");
    await page.getByLabel("Title").fill("Doors reopen in hard frost");
    const theirs = { title: "Doors reopen below zero", source: "seen on four sites" };
    await ask("faultNote.change", { id, version: 1, fields: theirs }, "Teo Marlow");
    await page.getByText(/This note was changed meanwhile by Teo Marlow/).waitFor();
    await page.keyboard.press("Control+s");
    const both = page.getByRole("region", { name: "Two versions of this record" });
    await both.getByText("Doors reopen in hard frost").waitFor();
    await both.getByText("Doors reopen below zero").waitFor();
    await page.getByText("Changed meanwhile and kept as it is in either case: Source.").waitFor();
    expect(await seriousProblems()).toEqual([]);
    const stored = (await ask("faultNote.find", { id })) as unknown as { note: { title: string } };
    expect(stored.note.title).toBe("Doors reopen below zero");
    await both.getByRole("button", { name: "Save yours as the newest" }).click();
    await page.getByRole("heading", { level: 1, name: "Doors reopen in hard frost" }).waitFor();
    await page.getByText("Source: seen on four sites").waitFor();
  });
});

test("two windows edit one note: the second sees both texts and may go on from the saved one", async () => {
  program = await startProgram("local-web");
  page = program.page;
  await ask("company.start", company);
  const id = await newNote("Doors reopen in fog");
  const other = await page.context().newPage();
  await other.goto(page.url().split("#")[0] ?? "");
  for (const window of [page, other]) {
    await goTo(`#/note/${id}`, window);
    await window.getByRole("heading", { level: 1, name: "Doors reopen in fog" }).waitFor();
    await window.keyboard.press("e");
    await window.getByLabel("Title").waitFor();
  }
  await page.getByLabel("Title").fill("Doors reopen in sea fog");
  await other.getByLabel("Title").fill("Doors reopen in thick fog");
  await other.keyboard.press("Control+s");
  await other.getByRole("heading", { level: 1, name: "Doors reopen in thick fog" }).waitFor();
  await page.getByText(/This note was changed meanwhile/).waitFor();
  await page.getByRole("button", { name: "Save", exact: true }).click();
  const both = page.getByRole("region", { name: "Two versions of this record" });
  await both.getByText("Doors reopen in sea fog").waitFor();
  await both.getByText("Doors reopen in thick fog").waitFor();
  await both.getByRole("button", { name: "Go on from the saved one" }).click();
  await expect.poll(() => page.getByLabel("Title").inputValue()).toBe("Doors reopen in thick fog");
  await page.getByLabel("Title").fill("Doors reopen in thick sea fog");
  await page.keyboard.press("Control+s");
  for (const window of [page, other]) {
    await window.getByRole("heading", { level: 1, name: "Doors reopen in thick sea fog" }).waitFor();
  }
  await program.close();
});
