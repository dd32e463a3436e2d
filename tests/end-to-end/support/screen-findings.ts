import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright";

/** Frames in a row without any change after which a newly opened screen counts as drawn. */
const stillFrames = 10;

/**
 * Opens a screen and waits until it is drawn: the heading of the screen before is gone, the wanted words stand there,
 * and nothing changes any more.
 * @returns what stands there instead of the wanted words; empty where they came
 */
export async function openDrawn(page: Page, address: string, shows: string): Promise<string[]> {
  await page.evaluate((next) => {
    const isOther = location.hash.split("?")[0] !== `#${next.split("?")[0]}`;
    if (isOther) document.querySelector("h1, .print-sheet")?.setAttribute("data-before", "");
    location.hash = next;
  }, address);
  try {
    await page.waitForFunction((words) => {
      const main = document.querySelector("main");
      const title = main?.querySelector("h1, .print-sheet");
      return title != null && !title.hasAttribute("data-before") && main?.textContent?.includes(words);
    }, shows);
  } catch {
    const instead = await page.locator("main").textContent();
    return [`does not show “${shows}”, but: ${instead?.slice(0, 300)}`];
  }
  await drawn(page);
  return [];
}

/**
 * Waits until nothing in the page changes any more.
 * @param frames in a row without any change
 */
export async function drawn(page: Page, frames = stillFrames): Promise<void> {
  await page.evaluate(
    (wanted) =>
      new Promise<void>((resolve) => {
        let still = 0;
        const watch = new MutationObserver(() => {
          still = 0;
        });
        watch.observe(document.body, {
          subtree: true,
          childList: true,
          attributes: true,
          characterData: true,
        });
        const frame = (): void => {
          still += 1;
          if (still < wanted) requestAnimationFrame(frame);
          else {
            watch.disconnect();
            resolve();
          }
        };
        requestAnimationFrame(frame);
      }),
    frames,
  );
}

/**
 * What axe finds, whatever its weight. A second page cannot be opened in the harness, so axe runs within this one.
 * @param rules only these; left out: all
 */
export async function axeFindings(page: Page, rules?: readonly string[]): Promise<string[]> {
  // The announcer is the component library's own and empty.
  const axe = new AxeBuilder({ page }).setLegacyMode(true).exclude("[data-live-announcer]");
  const { violations } = await (rules === undefined ? axe : axe.withRules([...rules])).analyze();
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id} (${impact}): ${html.slice(0, 200)} ${failureSummary}`),
  );
}

/** Words that only a programming error shows a person. */
export async function wrongWords(page: Page): Promise<string[]> {
  const text = await page.evaluate(() => {
    const named = [...document.querySelectorAll("[aria-label], [title], [placeholder]")];
    const names = named.flatMap((one) =>
      ["aria-label", "title", "placeholder"].map((name) => one.getAttribute(name) ?? ""),
    );
    return [document.title, document.body.textContent, ...names].join(" \n");
  });
  const wrong =
    /undefined|NaN|Infinity|\[object|[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;
  return [...text.matchAll(wrong)].map(({ index }) => text.slice(Math.max(0, index - 40), index + 60));
}

/** By how much the page is wider than its window, and the first elements that stand out; empty where nothing does. */
export function sidewaysScroll(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    const main = document.querySelector("main");
    const over = [document.documentElement, document.body, main]
      .filter((one) => one !== null)
      .filter((one) => one.scrollWidth > one.clientWidth + 1);
    if (over.length === 0) return [];
    const out = [...document.querySelectorAll("main *")]
      .filter((one) => one.getBoundingClientRect().right > wide + 1)
      .slice(0, 3)
      .map((one) => `${one.tagName.toLowerCase()}.${one.getAttribute("class") ?? ""}`);
    return over.map((one) => `${one.tagName} ${one.scrollWidth} > ${one.clientWidth}: ${out.join(", ")}`);
  });
}
