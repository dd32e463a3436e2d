import type { Page } from "playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Address } from "./support/every-address.ts";
import { programKinds } from "./support/program-kinds.ts";
import { drawn, sidewaysScroll, wrongWords } from "./support/screen-findings.ts";
import { type Program, usualViewport } from "./support/start-program.ts";
import { startOnDemonstration, visitScreens } from "./support/visit-screens.ts";

// Every address of the program on the demonstration company. What pages write to their console, or try against their
// content security policy, fails at the end when the program is closed.

const small = { width: 1024, height: 700 };
/** What is left of the small window for a person who enlarges everything to 200 %. */
const smallAt200 = { width: 512, height: 350 };

describe.each(programKinds)("every screen in %s", (kind) => {
  let program: Program;
  let page: Page;
  let addresses: readonly Address[];

  beforeAll(async () => {
    ({ program, addresses } = await startOnDemonstration(kind));
    page = program.page;
  });
  afterAll(() => program.close());

  /** @param text size of the text, in percent of the usual one */
  async function wider(size: { readonly width: number; readonly height: number }, text = 100) {
    await page.setViewportSize(size);
    await page.evaluate((percent) => {
      document.documentElement.style.fontSize = percent === 100 ? "" : `${percent}%`;
    }, text);
    await drawn(page, 3);
    const found = await sidewaysScroll(page);
    return found.map((one) => `${size.width}x${size.height}, text ${text} %: ${one}`);
  }

  async function widths(address: string): Promise<readonly string[]> {
    const found = await wider(small);
    // A sheet keeps the size of its paper: enlarged it is moved about in, like a drawing.
    if (!address.startsWith("/print/")) {
      found.push(...(await wider(small, 200)));
      found.push(...(await wider(smallAt200)));
    }
    found.push(...(await wider(usualViewport)));
    return found;
  }

  // The same pages in every shell: their widths are measured in one.
  const isMeasured = kind === "local-web";
  const said = isMeasured ? ", and nothing is wider than its window, small or with text at 200 %" : "";
  test(`every page is drawn, words are words${said}`, async () => {
    const findings = await visitScreens(page, addresses, async (address) => [
      ...(await wrongWords(page)).map((words) => `“${words}”`),
      ...(isMeasured ? await widths(address) : []),
    ]);
    expect(findings).toEqual([]);
  });
});
