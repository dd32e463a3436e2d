import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Envelope } from "#shared-lib/contract/operation.ts";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { programKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// The office's day on the screen, by keyboard: first start, calls, events, endings; what is shown is what is stored.

const keepHouse = { name: "Tern Quay House", street: "7 Tern Quay", town: "Wendle Bay" };
const longWords =
  "the caller spoke for a long time about the door and the landing and the noise it makes ".repeat(20);

describe.each(programKinds)("Desk in %s", (kind) => {
  let program: Program;
  let page: Page;
  let personId = "";
  let engineerId = "";
  let liftId = "";

  async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
    const envelope = (await page.evaluate(
      async (request) => {
        const shell = (globalThis as { sillbook?: { request(asked: unknown): Promise<unknown> } }).sillbook;
        if (shell) return shell.request(request);
        const headers = { "content-type": "application/json" };
        const answer = await fetch("/request", { method: "POST", headers, body: JSON.stringify(request) });
        return answer.json();
      },
      { operation: name, input, as: personId || undefined },
    )) as Envelope<OutputOf<Name>>;
    if (!envelope.ok) throw new Error(`${name}: ${envelope.error.message}`);
    return envelope.value;
  }

  const lift = () => page.getByRole("combobox", { name: "Which lift" });
  const dialog = () => page.getByRole("dialog");
  const rows = () => page.getByRole("grid", { name: "Open callouts" }).locator("[data-index]");

  async function goTo(hash: string): Promise<void> {
    await page.evaluate((next) => {
      (globalThis as unknown as { location: { hash: string } }).location.hash = next;
    }, hash);
  }

  /** Chooses the lift whose name was typed, as a person does: type, arrow down, Enter. */
  async function chooseLift(typed: string, title: string): Promise<void> {
    await lift().pressSequentially(typed);
    await page.getByRole("option", { name: title }).waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.getByText("landings").or(page.getByText("In service")).first().waitFor();
  }

  async function expectNoBarrier(): Promise<void> {
    // `region` is about the frame round the screens; the announcer is the component library's own and empty.
    const { violations } = await new AxeBuilder({ page })
      .disableRules(["region"])
      .exclude("[data-live-announcer]")
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  }

  beforeAll(async () => {
    program = await startProgram(kind);
    page = program.page;
    page.setDefaultTimeout(20_000);
  });
  afterAll(() => program.close());

  test("the first start asks for company and name, then says what to do first", async () => {
    const company = page.getByRole("textbox", { name: "Company" });
    await company.waitFor();
    await expectNoBarrier();
    await page.getByRole("button", { name: "Begin" }).click();
    await page.getByText("Write the company’s name").waitFor();
    await company.fill("Gull Lifts");
    await page.getByRole("textbox", { name: "Your name" }).fill("Ada Finch");
    await page.keyboard.press("Enter");
    await page.getByRole("link", { name: "Add a site and lift" }).waitFor();
    await page.getByRole("link", { name: "Add people" }).waitFor();
    personId = (await ask("person.list", {})).people[0]?.id ?? "";
    const site = await ask("site.add", keepHouse);
    liftId = (await ask("lift.add", { siteId: site.id, name: "Lift 1" })).id;
    await ask("lift.add", { siteId: site.id, name: "Lift 2" });
    const engineer = { name: "Bram Oakes", role: "engineer", telephone: "555 0111", onDuty: true } as const;
    engineerId = (await ask("person.add", engineer)).id;
    await page.getByRole("link", { name: "Add a site and lift" }).waitFor({ state: "detached" });
  });

  test("what is half typed survives a closed window; then the call is logged by keyboard alone", async () => {
    await chooseLift("tern quay 1", "Tern Quay House, Lift 1");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    await page.keyboard.press("Tab");
    await page.keyboard.type("doors keep reopening");
    await page.locator("form").getByText("draft kept").waitFor();
    const kept = async () => JSON.stringify((await ask("draft.find", { key: "desk.newCallout" })).draft);
    await expect.poll(kept).toContain("doors keep reopening");
    await page.reload();
    const said = page.getByRole("textbox", { name: "What the caller says" });
    await expect.poll(() => said.inputValue()).toBe("doors keep reopening");
    await expect.poll(() => lift().inputValue()).toBe("Tern Quay House, Lift 1");
    await said.focus();
    await page.keyboard.press("End");
    await page.keyboard.type(" at the lobby");
    await page.keyboard.press("Tab");
    await page.keyboard.type("Wenna Alder");
    await page.keyboard.press("Tab");
    await page.keyboard.type("555 0142");
    await expectNoBarrier();
    await page.keyboard.press("Control+Enter");
    await dialog().getByRole("option", { name: "Bram Oakes" }).waitFor();
    await page.keyboard.press("Enter");
    await page.getByText("saved and passed on").waitFor();
    const { callouts, total } = await ask("callout.list", { filter: { open: true } });
    expect(total).toBe(1);
    expect(callouts[0]).toMatchObject({
      liftId,
      said: "doors keep reopening at the lobby",
      group: "doors",
      inside: "nobody",
      callBack: "555 0142",
      engineer: { name: "Bram Oakes" },
    });
    expect(await lift().inputValue()).toBe("");
  });

  test("a second caller for the open callout is added to it, not logged twice", async () => {
    await chooseLift("tern quay 1", "Tern Quay House, Lift 1");
    await page.getByText("Open on this lift already").waitFor();
    await page.getByRole("textbox", { name: "What the caller says" }).fill("the doors again");
    await page.keyboard.press("Alt+j");
    await page.getByText("caller added").waitFor();
    const { callouts, total } = await ask("callout.list", { filter: { open: true } });
    expect(total).toBe(1);
    expect(callouts[0]?.callerCount).toBe(2);
  });

  test("nothing is saved without an answer whether anyone is inside; an entrapment shows what to say", async () => {
    await lift().fill("the goods lift by the harbour");
    await page.getByRole("textbox", { name: "What the caller says" }).fill("stuck between floors");
    await page.keyboard.press("Control+s");
    await page.getByText("Ask whether anyone is inside").waitFor();
    await page.getByText("People inside", { exact: true }).click();
    await page.getByText("Stay clear of the doors").waitFor();
    await page.getByRole("textbox", { name: "How many" }).fill("2");
    await expectNoBarrier();
    await page.keyboard.press("Control+s");
    await page
      .locator("form")
      .getByText(/\S+-\S+ saved \d/)
      .waitFor();
    await expect.poll(() => rows().first().textContent()).toContain("Person inside");
    expect(await rows().first().textContent()).toContain("2 people inside");
    expect(await rows().first().textContent()).toContain("the goods lift by the harbour");
  });

  test("the next events are one key each; a time before the call is refused in a sentence", async () => {
    await page.keyboard.press("Alt+o");
    await page.keyboard.press("n");
    await dialog().getByRole("option", { name: "Bram Oakes" }).waitFor();
    await page.keyboard.press("Enter");
    await dialog().waitFor({ state: "detached" });
    // The key records what the row names as next, so a person looks there first.
    await expect.poll(() => rows().first().textContent()).toMatch(/arrived.*Bram Oakes/s);
    await page.keyboard.press("n");
    await dialog().getByRole("button", { name: "Record arrived" }).waitFor();
    await dialog().getByRole("textbox", { name: "When" }).fill("3 Jan 2020 09:05");
    await page.keyboard.press("Enter");
    await dialog().getByText("An event cannot be before the call").waitFor();
    await dialog().getByRole("textbox", { name: "When" }).fill("now");
    await page.keyboard.press("Enter");
    await dialog().waitFor({ state: "detached" });
    await expect.poll(() => rows().first().locator(".progress").textContent()).toBe("people released");
    await page.keyboard.press("n");
    await dialog().getByRole("button", { name: "Record people released" }).waitFor();
    await page.keyboard.press("Enter");
    await dialog().waitFor({ state: "detached" });
    const { callouts } = await ask("callout.list", { filter: { open: true, text: "harbour" } });
    expect(callouts[0]?.made).toEqual(["received", "passed on", "arrived", "people released"]);
  });

  test("the callout says why back in service is refused, until the bridge is out and looked at twice", async () => {
    await ask("bridge.set", {
      liftId,
      contact: "landing door contact",
      points: "34-35",
      reason: "find the open contact",
      control: "inspection",
    });
    const [open] = (await ask("callout.list", { filter: { open: true, liftId } })).callouts;
    await goTo(`/callout/${open?.id}`);
    await page.getByRole("button", { name: "Record removal" }).waitFor();
    await page.getByRole("button", { name: "Hand over" }).waitFor();
    await expectNoBarrier();
    await page.keyboard.press("n");
    await dialog().getByText("back in service", { exact: true }).click();
    await dialog()
      .getByRole("button", { name: /Choose a person/ })
      .click();
    await page.getByRole("option", { name: "Bram Oakes" }).click();
    await dialog().getByRole("button", { name: "Record back in service" }).click();
    await dialog().getByText("is open. The lift cannot be recorded as back in service").waitFor();
    await dialog().getByText("The way out:").waitFor();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Record removal" }).click();
    await dialog().getByRole("button", { name: "Record removal" }).click();
    await page.getByRole("button", { name: "Confirm removal" }).click();
    await dialog()
      .getByRole("button", { name: /Choose a person/ })
      .click();
    await page.getByRole("option", { name: "Bram Oakes" }).click();
    await dialog().getByRole("textbox", { name: "What proves" }).fill("door opened: no start");
    await dialog().getByRole("button", { name: "Confirm removal" }).click();
    await page.getByRole("region", { name: "Open bridge" }).waitFor({ state: "detached" });
    const [line] = (await ask("callout.list", { filter: { open: true, liftId } })).callouts;
    expect(line?.openBridges).toEqual([]);
  });

  test("a visit with its fix is recorded and attached, and the callout ends as left out of service", async () => {
    const note = await ask("faultNote.write", {
      title: "Door rollers worn",
      group: "doors",
      symptoms: ["doors keep reopening"],
      causes: [{ key: "rollers", title: "Rollers worn flat" }],
    });
    await page.keyboard.press("v");
    await page.getByRole("textbox", { name: "Arrived" }).fill("now");
    await page.getByRole("textbox", { name: "Found" }).fill(longWords.slice(0, 1500));
    await page.getByRole("textbox", { name: "Cause" }).fill("door rollers worn flat");
    await page.keyboard.press("Control+s");
    await page.getByText("say what ended it too").waitFor();
    await page.getByRole("textbox", { name: "Fix" }).fill("rollers renewed");
    await page.getByRole("textbox", { name: "Parts used" }).fill("2 door rollers, DR-40");
    await expectNoBarrier();
    await page.keyboard.press("Control+s");
    await page.getByRole("button", { name: "Attach to Door rollers worn" }).click();
    await page.getByText("Rollers worn flat", { exact: true }).click();
    await page.getByRole("button", { name: "Attach the fix" }).click();
    await page.getByText("It is attached to").waitFor();
    await page.getByRole("button", { name: "Back to the callout" }).click();
    const [visit] = (await ask("visit.list", { liftId })).visits;
    expect(visit).toMatchObject({
      engineerId,
      parts: [{ name: "door rollers", quantity: 2, marking: "DR-40" }],
      fix: { cause: "door rollers worn flat", noteId: note.id, causeKey: "rollers" },
    });
    await page.getByRole("button", { name: "Record a visit" }).waitFor();
    await page.keyboard.press("x");
    await dialog().getByText("left out of service", { exact: true }).click();
    await dialog().getByRole("button", { name: "End the callout" }).click();
    await dialog().getByText("Say why the lift is left out of service").waitFor();
    await dialog().getByRole("textbox", { name: "Reason" }).fill("second door operator awaited");
    await dialog().getByText("A part", { exact: true }).click();
    await dialog().getByRole("textbox", { name: "Return visit on" }).fill("in 3 days");
    await dialog().getByRole("button", { name: "End the callout" }).click();
    await page.getByText(/^Ended .*Awaits part/).waitFor();
    expect((await ask("lift.find", { id: liftId })).line).toMatchObject({ state: "out of service" });
  });

  test("opened again, a time is corrected with the old one to be seen; taken back events stay visible", async () => {
    await page.getByRole("button", { name: "Open it again" }).click();
    await dialog().getByRole("textbox", { name: "Why" }).fill("closed too early");
    await page.keyboard.press("Enter");
    await page.getByText("Opened again: closed too early").waitFor();
    await page.getByRole("button", { name: "Correct passed on" }).click();
    await dialog().getByText("It did not happen").click();
    await dialog().getByRole("textbox", { name: "Why it is taken back" }).fill("he was ill");
    await dialog().getByRole("button", { name: "Take it back" }).click();
    await page.getByText("Taken back by Ada Finch").last().waitFor();
    await page.getByRole("button", { name: "Correct received" }).click();
    await dialog().getByRole("textbox", { name: "When it happened" }).fill("2 h ago");
    await dialog().getByRole("button", { name: "Correct the time" }).click();
    await page.getByText("corrected by Ada Finch").waitFor();
    await page.getByRole("button", { name: "History" }).click();
    await dialog().getByText("How it ended: ").first().waitFor();
    expect(await dialog().textContent()).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}/);
    await page.keyboard.press("Escape");
  });

  test("what was written is corrected; another's change in between is not overwritten", async () => {
    const [line] = (await ask("callout.list", { filter: { open: true, liftId } })).callouts;
    await page.keyboard.press("e");
    const caller = dialog().getByRole("textbox", { name: /^Caller/ });
    await caller.fill("Wenna Alder, caretaker");
    await ask("callout.change", {
      id: line?.id ?? "",
      version: line?.version ?? 0,
      fields: { caller: "Mr Alder" },
    });
    await dialog().getByRole("button", { name: "Save" }).click();
    await dialog().getByText("Saved meanwhile").waitFor();
    await dialog().getByText("Mr Alder").waitFor();
    await dialog().getByRole("button", { name: "Save yours as the newest" }).click();
    await dialog().waitFor({ state: "detached" });
    const { callout } = await ask("callout.find", { id: line?.id ?? "" });
    expect(callout.caller).toBe("Wenna Alder, caretaker");
  });

  test("a list of callouts stands at an address, filters, and opens a row by Enter", async () => {
    const all = (await ask("callout.list", { filter: {} })).callouts;
    const [first] = all;
    await goTo(`/desk?ids=${first?.id}&title=Counted`);
    await page.getByRole("heading", { name: "Counted" }).waitFor();
    await page.getByText("1 callout", { exact: true }).waitFor();
    await page.getByRole("link", { name: "All callouts" }).click();
    await page.getByText(`${all.length} callouts`, { exact: true }).waitFor();
    await expectNoBarrier();
    await page
      .getByRole("textbox", { name: "Filter" })
      .or(page.getByRole("searchbox", { name: "Filter" }))
      .fill("harbour");
    await page.getByText("1 callout", { exact: true }).waitFor();
    await page.getByRole("grid").locator("[data-index='0']").focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: /the goods lift by the harbour/ }).waitFor();
    await page.getByText("Not settled yet").waitFor();
  });

  test("duty is handed over from Desk", async () => {
    await ask("person.add", { name: "Suri Fenn", role: "engineer", telephone: "555 0113" });
    await goTo("/desk");
    await page.getByText("On duty:").waitFor();
    await page.keyboard.press("Alt+h");
    await dialog().getByRole("option", { name: "Suri Fenn" }).waitFor();
    await page.keyboard.press("Enter");
    await dialog().waitFor({ state: "detached" });
    const onDuty = (await ask("person.list", {})).people.filter((person) => person.onDuty);
    expect(onDuty.map(({ name }) => name)).toContain("Suri Fenn");
    expect(onDuty).toHaveLength(2);
  });

  test("slip and visit sheet print on one page, however much was said", async () => {
    const said = longWords.slice(0, 1500);
    const { id } = await ask("callout.log", {
      liftId,
      liftWords: "",
      inside: "nobody",
      said,
      caller: "",
      callBack: "",
      displayReading: "",
    });
    const [visit] = (await ask("visit.list", { liftId })).visits;
    for (const [address, title] of [
      [`/print/callout/${id}`, /Callout slip/],
      [`/print/visit/${visit?.id}`, /Visit sheet/],
    ] as const) {
      await goTo(address);
      await page.getByRole("article", { name: title }).waitFor();
      const pages = (await page.pdf({ preferCSSPageSize: true }))
        .toString("latin1")
        .match(/\/Type\s*\/Page\b(?!s)/g);
      expect(pages).toHaveLength(1);
    }
  });
});
