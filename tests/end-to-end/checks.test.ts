import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { CheckStep } from "../../renderer/features/checks/check-types.ts";
import { screenKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// A signal check by keyboard, as on a car top: found step by step, kept on disk, compared with the previous time.

const who = "Ada Finch";
let program: Program;
let page: Page;
let liftId: string;

/** Asks from inside the page, as the screens do, whichever shell it runs in. */
async function ask<Value>(operation: string, input: unknown): Promise<Value> {
  const answer = await page.evaluate(
    async (request) => {
      const shell = (globalThis as { sillbook?: { request(asked: unknown): Promise<unknown> } }).sillbook;
      if (shell) return shell.request(request);
      const headers = { "content-type": "application/json" };
      const response = await fetch("/request", { method: "POST", headers, body: JSON.stringify(request) });
      return response.json();
    },
    { operation, input, as: who },
  );
  const { ok, value } = answer as { ok: boolean; value: Value };
  if (!ok) throw new Error(`${operation}: ${JSON.stringify(answer)}`);
  return value;
}

interface Saved {
  readonly id: string;
  readonly version: number;
}

async function fill(): Promise<void> {
  await ask("company.start", { companyName: "Gull Lifts", personName: who, role: "engineer" });
  // The program leaves its first start for the person's own screen by itself.
  await page.waitForURL(/#\/[a-z]+/);
  const site = await ask<Saved>("site.add", { name: "Saltpan Court", street: "3 Brine Lane" });
  const landings = [0, 3.1, 6.2].map((level, i) => ({ marking: String(i), name: `Floor ${i}`, level }));
  const lift = {
    siteId: site.id,
    name: "Lift 1",
    driveKind: "geared traction",
    upSlowdownDistance: 1.3,
    landings,
  };
  liftId = (await ask<Saved>("lift.add", lift)).id;
}

async function goTo(hash: string): Promise<void> {
  await page.evaluate((next) => {
    location.hash = next;
  }, hash);
}

async function openCheck(id: string): Promise<void> {
  await goTo("#/checks");
  await page.getByRole("heading", { level: 1, name: "Checks" }).waitFor();
  await goTo(`#/checks/${id}`);
  await page.getByRole("region", { name: /^Step 1 of / }).waitFor();
}

const start = async (planId: string): Promise<string> =>
  (await ask<Saved>("check.start", { liftId, planId })).id;
const stepsOf = async (id: string): Promise<readonly CheckStep[]> =>
  (await ask<{ steps: readonly CheckStep[] }>("check.find", { id })).steps;
const idOfPage = (): string => /checks\/([0-9a-f-]{36})/.exec(page.url())?.[1] ?? "";
const verdict = (word: string) => page.getByRole("status").getByText(word, { exact: true });
const atStep = (number: number, of: number) => page.getByRole("region", { name: `Step ${number} of ${of}:` });

async function problems(): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).include("main").analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

async function recordAll(checkId: string, wrongKey?: string): Promise<void> {
  for (const { key, expected } of await stepsOf(checkId)) {
    const found =
      expected.kind === "order"
        ? { kind: "order", order: key === wrongKey ? [...expected.order].reverse() : expected.order }
        : { kind: "value", value: 2 };
    await ask("check.recordStep", { checkId, stepKey: key, found });
  }
}

describe.each(screenKinds)("%s", (kind) => {
  beforeAll(async () => {
    program = await startProgram(kind, { viewport: { width: 1024, height: 700 } });
    page = program.page;
    await fill();
  });
  afterAll(() => program.close());

  test("is started and carried out by keyboard alone, each finding on disk before the next", async () => {
    await goTo("#/checks");
    await page.getByRole("heading", { level: 1, name: "Checks" }).waitFor();
    await page.getByRole("radio", { name: /^Zone sensors at every landing/ }).waitFor({ state: "attached" });
    expect(await problems()).toEqual([]);
    await page.keyboard.press("k");
    await page.keyboard.type("saltpn court");
    await page.getByRole("option", { name: /Saltpan Court, Lift 1/ }).waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.getByText("9 steps").waitFor();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    await page.getByRole("note", { name: "Caution" }).waitFor();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await atStep(1, 9).waitFor();
    const id = idOfPage();
    for (const number of [2, 3, 4]) {
      await page.keyboard.press("n");
      await atStep(number, 9).waitFor();
    }
    await atStep(4, 9).getByText("Landing 1, Floor 1").waitFor();
    // Sensors exchanged: moving up the lower one comes first. One press too many is taken back.
    for (const key of ["3", "1", "4", "4", "u", "2", "r"]) await page.keyboard.press(key);
    await verdict("Failed").waitFor();
    const [, , , failed] = await stepsOf(id);
    expect(failed).toMatchObject({
      verdict: "failed",
      found: { order: ["lower on", "upper on", "lower off", "upper off"] },
      by: { name: who },
    });
    await page.getByText(`found lower on, upper on, lower off, upper off.`).first().waitFor();
    expect(await problems()).toEqual([]);
    const ways = page.getByRole("navigation", { name: /^Ways on/ });
    const notes =
      (await ways.getByRole("link", { name: "Fault notes about this" }).getAttribute("href")) ?? "";
    expect(decodeURIComponent(notes)).toContain(`lift=${liftId}`);
    expect(await ways.getByRole("link", { name: /^Work it out/ }).getAttribute("href")).toContain(
      `/bench/zone-sensors?lift=${liftId}&landing=${failed?.landingId}`,
    );
    await ways.getByRole("link", { name: "Fault notes about this" }).press("Enter");
    await page
      .getByRole("heading", { level: 2, name: /reversed/i })
      .first()
      .waitFor();
  });

  test("a step that cannot be checked stays unchecked and keeps its note", async () => {
    const id = await start("zone-sensors");
    await openCheck(id);
    await page.getByLabel("Note").fill("Lobby is being painted");
    await page.getByRole("button", { name: /^Cannot be checked now/ }).click();
    await verdict("Unchecked").waitFor();
    await expect.poll(async () => (await stepsOf(id))[0]?.note).toBe("Lobby is being painted");
    expect((await stepsOf(id))[0]).toMatchObject({ verdict: "unchecked", found: { kind: "not checked" } });
    await page.getByText(`Recorded by ${who},`).waitFor();
  });

  test("what was pressed and not recorded is there after the window was closed", async () => {
    const id = await start("zone-sensors");
    await openCheck(id);
    await page.keyboard.press("n");
    await atStep(2, 9).waitFor();
    await page.keyboard.press("3");
    await page
      .getByText(/draft kept/)
      .first()
      .waitFor();
    await page.reload();
    await atStep(2, 9).getByRole("list", { name: "Order seen" }).getByText("lower on").waitFor();
    await page.keyboard.press("e");
    const dialog = page.getByRole("alertdialog", { name: "Finish the check" });
    await dialog.getByText("Entered but not recorded").waitFor();
    expect(await problems()).toEqual([]);
    await page.keyboard.press("Escape");
    expect((await stepsOf(id)).every(({ at }) => at === null)).toBe(true);
  });

  // Only here can a test stand between the page and the program; what the page does with a refusal is the same program.
  if (kind === "local-web") {
    test("a refused write keeps what was chosen and can be repeated as it is", async () => {
      const id = await start("door-commands");
      await openCheck(id);
      const full = { code: "disk-full", message: "Not saved: the disk is full.", details: {} };
      await page.route("**/request", (route) =>
        route.request().postData()?.includes('"check.recordStep"') === true
          ? route.fulfill({ json: { ok: false, error: full } })
          : route.continue(),
      );
      await page.getByLabel("Note").fill("Reads 24 V");
      await page.getByRole("button", { name: /^On/ }).click();
      await page.getByRole("main").getByText("Not saved: the disk is full.").waitFor();
      expect((await stepsOf(id))[0]?.at).toBeNull();
      expect(await page.getByRole("button", { name: /^On/ }).getAttribute("aria-pressed")).toBe("true");
      expect(await page.getByLabel("Note").inputValue()).toBe("Reads 24 V");
      await page.unroute("**/request");
      await page.getByRole("button", { name: "Record it again" }).click();
      await verdict("Passed").waitFor();
      expect((await stepsOf(id))[0]).toMatchObject({
        found: { kind: "state", on: true },
        note: "Reads 24 V",
      });
    });
  }

  test("nothing is recorded while a danger is open, in words, and what was pressed stays", async () => {
    const id = await start("zone-sensors");
    await openCheck(id);
    await page.keyboard.press("2");
    const danger = await ask<Saved>("danger.record", {
      liftId,
      words: "Lead found across both door contacts",
    });
    await page.getByText("Nothing more is recorded in this check until then.").waitFor();
    await page.keyboard.press("r");
    await goTo(`#/checks?lift=${liftId}&plan=zone-sensors`);
    await page.getByText(/^A car door and a landing door were found bridged together/).waitFor();
    expect(await page.getByRole("button", { name: /^Start the check/ }).isDisabled()).toBe(true);
    await page.getByRole("region", { name: "Open bridges" }).getByText("Lead found across both").waitFor();
    expect((await stepsOf(id)).every(({ at }) => at === null)).toBe(true);
    const people = await ask<{ people: readonly Saved[] }>("person.list", {});
    const cleared = {
      id: danger.id,
      version: danger.version,
      how: "Lead removed",
      clearedBy: people.people[0]?.id,
    };
    await ask("danger.clear", cleared);
    await goTo(`#/checks/${id}`);
    await page.getByRole("list", { name: "Order seen" }).getByText("upper off").waitFor();
    await page.keyboard.press("r");
    await expect.poll(async () => (await stepsOf(id))[0]?.verdict).toBe("failed");
  });

  test("a value that cannot be meant is asked back; a right one is compared with its limit", async () => {
    const id = await start("terminal-slowdown");
    await openCheck(id);
    await page.getByText("at least 1.3\u00a0m").first().waitFor();
    await page.getByLabel("Measured").fill("1280");
    await page.keyboard.press("Enter");
    await page.getByText(/Then enter 1.28.*Nothing was recorded/).waitFor();
    expect((await stepsOf(id))[0]?.at).toBeNull();
    await page.getByLabel("Measured").fill("1.28");
    await page.keyboard.press("Enter");
    await page.getByText(/^Expected at least 1.3.*found 1.28/).waitFor();
    expect((await stepsOf(id))[0]).toMatchObject({ verdict: "failed", found: { value: 1.28 } });
    expect(await problems()).toEqual([]);
  });

  test("a finished check is read beside the previous time, not changed, and printed on whole pages", async () => {
    const first = await start("zone-sensors");
    await recordAll(first);
    await ask("check.finish", { id: first, version: 1 });
    const second = await start("zone-sensors");
    await recordAll(second, (await stepsOf(second))[1]?.key);
    await openCheck(second);
    await page.getByText("was in order before").waitFor();
    await page.keyboard.press("e");
    await page.getByRole("alertdialog").getByRole("button", { name: "Finish", exact: true }).click();
    await page.getByText("One of 9 steps failed.").waitFor();
    await page.getByText(/^A finished check is a record/).waitFor();
    expect(await page.getByRole("button", { name: /^Record/ }).count()).toBe(0);
    expect(await page.getByRole("cell", { name: "the same" }).count()).toBe(8);
    expect(await problems()).toEqual([]);
    await page.getByRole("link", { name: "Print the record" }).click();
    const sheets = page.locator(".print-sheet");
    await page.getByRole("article", { name: /page 1 of [2-9]$/ }).waitFor();
    const heights = await sheets.evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
    const millimetre = 96 / 25.4;
    expect(Math.max(...heights)).toBeLessThanOrEqual(277 * millimetre + 1);
    await page.getByText("Failed: ").first().waitFor();
    expect(await problems()).toEqual([]);
    await goTo("#/checks");
    await page.getByRole("region", { name: "Finished" }).getByRole("link").first().waitFor();
    const rows = page.getByRole("region", { name: "Finished" }).getByRole("link");
    expect(await rows.first().textContent()).toContain("1 failed");
  });

  test("open bridges of all lifts lead to their lift", async () => {
    const bridge = {
      liftId,
      contact: "governor contact",
      points: "21-22",
      reason: "Fault finding",
      control: "inspection",
    };
    await ask("bridge.set", bridge);
    await goTo("#/checks");
    const link = page.getByRole("region", { name: "Open bridges" }).getByRole("link");
    await link.getByText("21-22").waitFor();
    expect(await link.getAttribute("href")).toContain(`/lift/${liftId}`);
  });
});
