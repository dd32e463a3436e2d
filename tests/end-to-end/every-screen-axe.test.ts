import type { Page } from "playwright";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Address } from "./support/every-address.ts";
import { axeFindings, drawn } from "./support/screen-findings.ts";
import type { Program } from "./support/start-program.ts";
import { startOnDemonstration, visitScreens } from "./support/visit-screens.ts";

// The same pages in every shell: once is enough.

let program: Program;
let page: Page;
let addresses: readonly Address[];
beforeAll(async () => {
  ({ program, addresses } = await startOnDemonstration("local-web"));
  page = program.page;
});
afterAll(() => program.close());

test("axe finds nothing, and the dark colours stand out enough", async () => {
  const findings = await visitScreens(page, addresses, async () => {
    const light = await axeFindings(page);
    await page.emulateMedia({ colorScheme: "dark" });
    await drawn(page, 3);
    const dark = await axeFindings(page, ["color-contrast"]);
    await page.emulateMedia({ colorScheme: "light" });
    return [...light, ...dark.map((found) => `dark ${found}`)];
  });
  expect(findings).toEqual([]);
}, 600_000);
