import { AxeBuilder } from "@axe-core/playwright";
import type { Locator, Page } from "playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";
import { screenKinds } from "./support/program-kinds.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// The sketch's case: landing 3 of a lift whose five other landings are within 2 mm.

const origin = (page: Page): string => page.url().replace(/#.*$/, "");

/** Asks from inside the page, as the screens do, whichever shell it runs in. */
async function ask<Name extends OperationName>(
  page: Page,
  operation: Name,
  input: InputOf<Name>,
  as?: string,
): Promise<OutputOf<Name>> {
  const envelope = await page.evaluate(
    async (request): Promise<{ ok: boolean; value?: unknown; error?: unknown }> => {
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

const otherCentres = [
  ["0", 0.001],
  ["1", -0.002],
  ["2", 0],
  ["4", 0.002],
  ["5", -0.001],
] as const;

interface Place {
  readonly liftId: string;
  readonly landingId: string;
}

async function fill(page: Page): Promise<Place> {
  const { personId } = await ask(page, "company.start", {
    companyName: "Marram Lift Care",
    personName: "Ines Calder",
    role: "engineer",
  });
  const site = await ask(page, "site.add", { name: "Kittiwake House", street: "1 Quay Road" }, personId);
  const landings = ["0", "1", "2", "3", "4", "5"].map((marking, index) => ({ marking, level: index * 2.93 }));
  const lift = await ask(
    page,
    "lift.add",
    {
      siteId: site.id,
      name: "Lift 2",
      ratedSpeed: 1,
      magnetLength: 0.3,
      sensorSpacing: 0.06,
      unlockNeeds: "both",
      unlockingZone: 0.2,
      zoneTolerance: 0.005,
      upSlowdownDistance: 2.1,
      landings,
    },
    personId,
  );
  const found = await ask(page, "lift.find", { id: lift.id });
  const landing = (marking: string): string =>
    found.landings.find((one) => one.marking === marking)?.id ?? "none";
  for (const [marking, centre] of otherCentres) {
    const inputs = { magnetLength: 0.3, sensorSpacing: 0.06, centreUp: centre, centreDown: centre };
    await ask(
      page,
      "calculation.save",
      { calculatorId: "zone-sensors", liftId: lift.id, landingId: landing(marking), inputs },
      personId,
    );
  }
  return { liftId: lift.id, landingId: landing("3") };
}

/** Presses Tab until `target` has the keyboard: whoever cannot use a mouse gets there the same way. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    if (await target.evaluate((element) => element === element.ownerDocument.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error("Tab does not lead there.");
}

async function typeInto(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, page.getByRole("textbox", { name: label, exact: true }));
  await page.keyboard.type(text);
}

describe.each(screenKinds)("the bench in %s", (kind) => {
  let program: Program;
  let page: Page;
  let place: Place;
  const open = async (calculator: string, search: string, heading: string): Promise<void> => {
    await page.goto(`${origin(page)}#/bench/${calculator}?${search}`);
    await page.getByRole("heading", { level: 1, name: heading }).waitFor();
    await page.getByRole("form", { name: "What is entered" }).waitFor();
  };
  const zoneAt3 = (): string => `lift=${place.liftId}&landing=${place.landingId}`;
  const verdict = (): Locator => page.getByRole("region", { name: "Verdict" });

  beforeAll(async () => {
    program = await startProgram(kind);
    page = program.page;
    page.setDefaultTimeout(10_000);
    place = await fill(page);
    await page.reload();
  });
  afterAll(() => program.close());

  test("by keys alone: from what is said to the calculator, the lift, the finding, and the saved result", async () => {
    const word = page.getByRole("navigation").getByRole("link", { name: "Bench" });
    await word.waitFor();
    await tabTo(page, word);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Bench" }).waitFor();
    await page.keyboard.press("/");
    await page.keyboard.type("zone signals reversed");
    const found = page.getByRole("list", { name: "Calculators" }).getByRole("link").first();
    await page.getByText(/Calculators.*1 of/).waitFor();
    await tabTo(page, found);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { level: 1, name: "Zone sensors and magnets" }).waitFor();

    await page.keyboard.press("l");
    const dialog = page.getByRole("dialog", { name: "Which lift" });
    await dialog.getByRole("combobox", { name: "Lift" }).waitFor();
    await page.keyboard.type("kittiwake");
    await page.getByRole("option", { name: /Kittiwake House, Lift 2/ }).waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await tabTo(page, dialog.getByRole("button", { name: /Landing/ }));
    await page.keyboard.press("Enter");
    await page.getByRole("option", { name: /^3/ }).waitFor();
    await page.keyboard.type("3");
    await page.keyboard.press("Enter");
    await tabTo(page, dialog.getByRole("button", { name: "Take this lift" }));
    await page.keyboard.press("Enter");
    await page.getByText("from landing 3").first().waitFor();

    await typeInto(page, "Zone centre, up", "-11");
    await typeInto(page, "Zone centre, down", "-23");
    await typeInto(page, "Check speed", "3.0");
    // While it is typed nothing is found fault with; having left the field, its sentence stands there.
    expect(await page.getByText("Above this lift's 1.00").count()).toBe(0);
    await typeInto(page, "Car sill to landing sill, measured", "-14");
    await page.keyboard.press("Tab");
    await page.getByText(/Above this lift's 1\.00\sm\/s\. A slipped point, 0\.30/).waitFor();

    const says = ((await verdict().textContent()) ?? "").replaceAll("\u00a0", " ");
    expect(says).toContain("The magnet at landing 3 sits 17 mm low against the other landings.");
    expect(says).toContain(
      "The other five checked landings are within 2 mm, so it is this magnet, not the sensors.",
    );
    expect(says).toMatch(/Zone centre −17 mm: outside the site's own tolerance, ±5 mm/);
    expect(says).toMatch(/Reach, both signals, 137 mm: within the unlocking zone, ±200 mm, EN 81-20:2020/);
    expect(says).toMatch(/Car sill to landing sill −14 mm: outside the stopping accuracy, ±10 mm/);
    expect(says).toContain("Local codes and licensed practice decide.");

    await page.keyboard.press("Control+s");
    await page.getByText(/^Saved \d\d:\d\d$/).waitFor();
    const { calculations } = await ask(page, "calculation.list", {
      liftId: place.liftId,
      landingId: place.landingId,
    });
    expect(calculations[0]).toMatchObject({
      by: { name: "Ines Calder" },
      inputs: { centreUp: -0.011, centreDown: -0.023, sillDistance: -0.014, magnetLength: 0.3 },
      verdictSentence: "The magnet at landing 3 sits 17 mm low against the other landings.".replace(
        "17 mm",
        "17\u00a0mm",
      ),
    });
  });

  test("opened again, what was saved fills the form and stands in the table", async () => {
    await page.goto(`${origin(page)}#/bench`);
    await page.getByRole("list", { name: "Saved last" }).getByRole("link").first().click();
    const up = page.getByRole("textbox", { name: "Zone centre, up" });
    await up.waitFor();
    expect(await up.inputValue()).toBe("−11");
    expect(await page.getByText(/^from the result of/).count()).toBeGreaterThan(0);
    const rows = page.getByRole("table", { name: "Earlier at this landing" }).getByRole("row");
    await expect.poll(() => rows.count()).toBe(2);
    expect(await rows.nth(1).textContent()).toMatch(/Ines Calder[\s\S]*misplaced[\s\S]*as on the screen/);
    await up.fill("-1");
    await expect.poll(() => rows.nth(1).textContent()).toMatch(/now \+5/);
    await page.getByText("Zone at landing 3: now and place on").waitFor();
    await page.getByRole("button", { name: "Start anew" }).click();
    await expect.poll(() => page.getByRole("textbox", { name: "Zone centre, up" }).inputValue()).toBe("−11");
  });

  test("what is typed survives the window, and units come and go without a trace", async () => {
    await open("zone-sensors", zoneAt3(), "Zone sensors and magnets");
    const length = page.getByRole("textbox", { name: "Magnet length" });
    await length.fill("301.0");
    await page
      .getByText(/not saved yet · draft kept/)
      .first()
      .waitFor();
    await page.reload();
    await page.getByText(/begun earlier/).waitFor();
    expect(await length.inputValue()).toBe("301.0");
    await page.getByRole("button", { name: /^Feet and pounds/ }).click();
    expect(await length.inputValue()).toBe("11.85");
    await page.getByRole("button", { name: /^Metric/ }).click();
    expect(await length.inputValue()).toBe("301.0");
    await page.getByRole("button", { name: "Start anew" }).click();
  });

  test("what is typed before a lift is chosen goes with it; nothing unreadable is saved over", async () => {
    await open("terminal-slowdown", "", "Terminal slowdown distance");
    await page.getByRole("textbox", { name: "Retardation" }).fill("0.8");
    await page.getByRole("textbox", { name: "Jerk at the start" }).fill("0,8");
    await page.getByRole("textbox", { name: "Reaction time" }).fill("about 200");
    await page.keyboard.press("Control+s");
    await page.getByText("“about 200” is not a number.").waitFor();
    await page.getByRole("textbox", { name: "Reaction time" }).fill("200");
    await page.getByRole("textbox", { name: "Speed at the switch" }).fill("");
    await page.keyboard.press("Control+s");
    await page.getByText("Still needed. Nothing is saved without it.").waitFor();
    await page.getByRole("textbox", { name: "Speed at the switch" }).fill("1");
    await page.keyboard.press("Control+s");
    const dialog = page.getByRole("dialog", { name: "Which lift" });
    await dialog.getByRole("combobox", { name: "Lift" }).fill("kittiwake");
    await page.getByRole("option", { name: /Kittiwake House, Lift 2/ }).click();
    await dialog.getByRole("button", { name: "Take this lift" }).click();
    await page.getByText("Within.").waitFor();
    expect(await page.getByRole("textbox", { name: "Jerk at the start" }).inputValue()).toBe("0,8");
    await page
      .getByRole("img", { name: /Top landing, moving up: latest place of the switch 1\.325/ })
      .waitFor();
    await page.keyboard.press("Control+s");
    await page.getByText(/^Saved \d\d:\d\d$/).waitFor();
    await expect
      .poll(() => ask(page, "draft.find", { key: "bench/terminal-slowdown/no lift/no landing" }))
      .toEqual({ draft: null });
  });

  test("an observed order is entered by digits, and told", async () => {
    await open("zone-sensors", `lift=${place.liftId}`, "Zone sensors and magnets");
    await page.getByText("Order only").click();
    for (const [direction, digits] of [
      ["up", "2143"],
      ["down", "12343"],
    ] as const) {
      const list = page.getByRole("group", { name: `Order, moving ${direction}` });
      await list.getByRole("button").first().focus();
      await page.keyboard.type(digits);
    }
    await page.keyboard.press("Backspace");
    await expect.poll(() => verdict().textContent()).toMatch(/^Reversed\./);
    await page.getByRole("img", { name: /Moving up, seen: upper on 2 to 4/ }).waitFor();
    await page.getByRole("button", { name: "Table: Order of the zone signals" }).click();
    await page.getByRole("cell", { name: "lower on, upper on, lower off, upper off" }).first().waitFor();
  });

  test("the record prints on one page, with the verdict and the title block", async () => {
    await open("zone-sensors", zoneAt3(), "Zone sensors and magnets");
    await expect.poll(() => verdict().textContent()).toMatch(/^Misplaced\./);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    expect(/\/Type \/Pages[\s\S]*?\/Count (\d+)/.exec(pdf)?.[1] ?? /\/Count (\d+)/.exec(pdf)?.[1]).toBe("1");
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    const sheet = page.getByRole("article", { name: "Zone sensors and magnets, page 1 of 1" });
    expect(await sheet.textContent()).toMatch(/Misplaced[\s\S]*Kittiwake House, Lift 2, landing 3/);
    expect(await sheet.locator("svg.d").count()).toBe(1);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    await page.getByRole("form", { name: "What is entered" }).waitFor();
  });

  test.each([
    ["zone-sensors", "Zone sensors and magnets"],
    ["terminal-slowdown", "Terminal slowdown distance"],
    ["panel-bus", "Panel bus: termination, length, supply drop"],
  ])("axe finds nothing on %s", async (calculator, heading) => {
    await open(calculator, calculator === "zone-sensors" ? zoneAt3() : `lift=${place.liftId}`, heading);
    const { violations } = await new AxeBuilder({ page }).include("main").setLegacyMode(true).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
  });

  test("axe finds nothing on the list; a calculator of another version is said not to be here", async () => {
    await page.goto(`${origin(page)}#/bench`);
    await page.getByRole("list", { name: "Saved last" }).getByRole("link").first().waitFor();
    const { violations } = await new AxeBuilder({ page }).include("main").setLegacyMode(true).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
    await page.goto(`${origin(page)}#/bench/horoscope`);
    await page.getByText("has no calculator called “horoscope”").waitFor();
  });
});
