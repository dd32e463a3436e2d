import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, chromium, type Page } from "playwright";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { chromiumArguments, chromiumPath } from "../../desktop-harness/chromium-launch.mjs";

// The kit in a real browser, under the content security policy of the shells.

const address = "https://kit.invalid/";
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self' 'nonce-test-nonce'; img-src 'self' data: blob:; " +
  "font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
const types: { readonly [ending: string]: string } = {
  html: "text/html",
  js: "text/javascript",
  css: "text/css",
  woff2: "font/woff2",
};

const files = new Map<string, string | Uint8Array>();
let browser: Browser;

beforeAll(async () => {
  const root = new URL(".", import.meta.url).pathname;
  const built = await build({
    root,
    configFile: false,
    logLevel: "silent",
    build: { write: false, rolldownOptions: { input: `${root}kit-page.html` } },
  });
  if (!("output" in built)) throw new Error("The kit page was not built into one set of files.");
  for (const file of built.output) {
    files.set(file.fileName, file.type === "chunk" ? file.code : file.source);
  }
  browser = await chromium.launch({ executablePath: chromiumPath(), args: chromiumArguments() });
}, 120_000);

afterAll(async () => {
  await browser.close();
});

interface KitPage {
  readonly page: Page;
  /** Errors of the page and breaches of the content security policy. */
  readonly complaints: string[];
}

async function openKit(options: Parameters<Browser["newContext"]>[0] = {}): Promise<KitPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  await page.route(`${address}**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const body = files.get(name);
    if (body === undefined) return route.fulfill({ status: 404 });
    await route.fulfill({
      body: typeof body === "string" ? body : Buffer.from(body),
      contentType: types[name.split(".").at(-1) ?? ""] ?? "application/octet-stream",
      headers: { "content-security-policy": policy },
    });
  });
  await page.goto(`${address}kit-page.html`);
  await page.getByRole("heading", { level: 1 }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  return { page, complaints };
}

const told = (page: Page, name: string) => page.locator(`[data-told="${name}"]`).textContent();

describe("seen", () => {
  test.each([
    { colorScheme: "light" },
    { colorScheme: "dark" },
    { forcedColors: "active" },
    { viewport: { width: 640, height: 800 } },
  ] as const)("no rule of accessibility is broken: %o", async (options) => {
    const { page, complaints } = await openKit(options);
    const results = await new AxeBuilder({ page }).analyze();
    expect(results.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(" | ")}`)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  test("the bundled faces are used and whatever is pressed is 44 px high and wide", async () => {
    const { page } = await openKit();
    const faces = await page.evaluate(() =>
      [...document.fonts].filter((face) => face.status === "loaded").map((face) => face.family),
    );
    expect([...new Set(faces.map((face) => face.replaceAll('"', "")))].sort()).toEqual([
      "Sillbook Lettering",
      "Sillbook Marking",
      "Sillbook Text",
    ]);
    const small = await page
      .locator("button:not(.entry-button), .choice-word, .checkbox, [role=option], .entry")
      .evaluateAll((all) =>
        all
          .map((one) => ({ words: one.textContent, box: one.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 43.9 || box.width < 43.9)
          .map(({ words }) => words),
      );
    expect(small).toEqual([]);
    await page.context().close();
  });

  test("with text at 200 % in a narrow window nothing sticks out sideways but drawings in their frame", async () => {
    const { page } = await openKit({ viewport: { width: 640, height: 800 } });
    await page.evaluate(() => {
      document.documentElement.style.fontSize = "200%";
    });
    const stickingOut = await page.locator(".kit-columns *").evaluateAll((all) =>
      all
        .filter((one) => one.closest(".scroll-frame, svg, .seen-by-reader-only, [hidden]") === null)
        .filter((one) => one.getBoundingClientRect().right > 641)
        .map((one) => one.outerHTML.slice(0, 120)),
    );
    expect(stickingOut).toEqual([]);
    await page.context().close();
  });
});

describe("typed fields", () => {
  test("a number stays as typed; a wrong one is kept and explained on leaving", async () => {
    const { page } = await openKit();
    const field = page.getByLabel("Magnet length");
    expect(await field.inputValue()).toBe("3.0");
    await field.fill("3,0,0");
    expect(await page.getByText("“3,0,0” is not a number.").count()).toBe(0);
    await field.blur();
    await page.getByText("“3,0,0” is not a number.").waitFor();
    expect(await field.inputValue()).toBe("3,0,0");
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    expect(await told(page, "length")).toBe("null");
    await field.fill("−11");
    expect(await told(page, "length")).toBe("-11");
    await page.context().close();
  });

  test("a moment in words is read back beside the label", async () => {
    const { page } = await openKit();
    const field = page.getByLabel("Arrived");
    await field.fill("yesterday 14:10");
    await page.getByText(/read as .* 14:10/).waitFor();
    const moment = new Date((await told(page, "moment")) ?? "");
    expect(moment.getHours() * 60 + moment.getMinutes()).toBe(14 * 60 + 10);
    await field.fill("soonish");
    await field.blur();
    await page.getByText("“soonish” is not understood as a time.").waitFor();
    await page.context().close();
  });
});

describe("chosen fields", () => {
  test("arrow keys change a choice and a select, and the check takes the space bar", async () => {
    const { page } = await openKit();
    await page.getByRole("radio", { name: "Nobody" }).focus();
    await page.keyboard.press("Space");
    expect(await told(page, "inside")).toBe("nobody");
    await page.keyboard.press("ArrowRight");
    expect(await told(page, "inside")).toBe("people");
    await page.getByRole("button", { name: /Fault group/ }).press("ArrowDown");
    await page.getByRole("option", { name: "brake" }).waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    expect(await told(page, "group")).toBe("brake");
    const check = page.getByRole("checkbox");
    await check.focus();
    await page.keyboard.press("Space");
    expect(await check.isChecked()).toBe(true);
    await page.context().close();
  });

  test("a combo field offers what was found, chooses by keys, and leaves free words alone", async () => {
    const { page } = await openKit();
    const field = page.getByRole("combobox", { name: "Which lift" });
    await field.focus();
    await page.keyboard.type("saltpan");
    await page.getByRole("option").first().waitFor();
    expect(await page.getByRole("option").count()).toBe(2);
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    expect(await told(page, "lift")).toBe("SaltpanCourtLift2: Saltpan Court, Lift 2");
    await field.fill("the one by the ferry");
    expect(await told(page, "lift")).toBe("none: the one by the ferry");
    await field.blur();
    expect(await field.inputValue()).toBe("the one by the ferry");
    await page.context().close();
  });
});

describe("lists and tables", () => {
  test("ten thousand rows: only those seen are drawn, keys reach the last, Enter opens it", async () => {
    const { page } = await openKit();
    const list = page.getByRole("listbox", { name: "Many lifts" });
    await list.focus();
    expect(await list.getByRole("option").count()).toBeLessThan(60);
    await page.keyboard.press("End");
    await list.getByRole("option", { name: "Lift 9999" }).waitFor();
    const active = await list.getAttribute("aria-activedescendant");
    expect(await page.locator(`[id="${active}"]`).textContent()).toBe("Lift 9999");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Enter");
    expect(await told(page, "opened")).toBe("Lift 9998");
    await page.context().close();
  });

  test("a row of a long table takes the focus", async () => {
    const { page } = await openKit();
    const grid = page.getByRole("grid", { name: "Many waits" });
    await grid.getByRole("row", { name: "Lift 0 0 min" }).focus();
    await page.keyboard.press("ArrowDown");
    await page.waitForFunction(() => document.activeElement?.getAttribute("data-index") === "1");
    await page.keyboard.press("End");
    await page.waitForFunction(() => document.activeElement?.getAttribute("data-index") === "9999");
    await page.keyboard.press("Enter");
    expect(await told(page, "opened")).toBe("row of Lift 9999");
    await page.context().close();
  });

  test("a table says its order in words", async () => {
    const { page } = await openKit();
    const table = page.getByRole("table", { name: "Open callouts" });
    await table.getByRole("button", { name: "Waiting" }).click();
    await table.getByRole("button", { name: "Waiting, shortest first" }).click();
    await table.getByRole("button", { name: "Waiting, longest first" }).waitFor();
    const first = await table.getByRole("rowheader").allTextContents();
    expect(first[0]).toBe("Kittiwake House, Lift 2");
    await page.context().close();
  });
});

describe("dialogs and pictures", () => {
  test("a dialog takes the focus and gives it back", async () => {
    const { page } = await openKit();
    const opener = page.getByRole("button", { name: "Open the question" });
    await opener.press("Enter");
    const dialog = page.getByRole("alertdialog", { name: "Give up what was typed?" });
    await dialog.waitFor();
    expect(await dialog.evaluate((one) => one.contains(document.activeElement))).toBe(true);
    expect((await new AxeBuilder({ page }).include("[role=alertdialog]").analyze()).violations).toEqual([]);
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    await page.waitForFunction(() => document.activeElement?.textContent === "Open the question");
    await page.context().close();
  });

  test("a saved picture needs no style sheet", async () => {
    const { page } = await openKit();
    const waiting = page.waitForEvent("download");
    await page.getByRole("button", { name: /^Save picture/ }).press("Enter");
    const download = await waiting;
    expect(download.suggestedFilename()).toBe("waits.svg");
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    const svg = Buffer.concat(chunks).toString("utf8");
    expect(svg).toContain('xmlns="http://www.w3.org/2000/svg"');
    expect(svg).toContain('stroke="rgb(176, 42, 8)"');
    expect(svg).toContain('id="hatch"');
    expect(svg).not.toContain("var(--");
    await page.getByRole("button", { name: /^Table/ }).press("Enter");
    await page.getByRole("table", { name: "Waits" }).waitFor();
    await page.context().close();
  });
});
