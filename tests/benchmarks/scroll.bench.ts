import type { Page } from "playwright";
import { askFromPage, goTo } from "../end-to-end/support/drive-page.ts";
import { startLocalWeb } from "../end-to-end/support/start-local-web.ts";
import { largeCompany } from "./support/large-company.ts";
import { printTable, quantile, type Row } from "./support/report.ts";

const milliseconds = 5000;
/** One step of the wheel, in pixels; several come in one frame when a person scrolls fast. */
const step = 400;
const longFrame = 50;

/** The list of all callouts scrolled by the wheel in Chromium, and an empty box of the same height beside it. */
export async function run(): Promise<void> {
  const rows: Row[] = [];
  for (const size of [10_000, 100_000]) rows.push(...(await measure(size)));
  printTable("scrolling the list of all callouts; target: no frame over 50 ms at 100,000", rows);
}

async function measure(size: number): Promise<Row[]> {
  const { folder } = await largeCompany(size);
  const program = await startLocalWeb({ folder });
  try {
    const { page } = program;
    await page.getByRole("heading", { level: 1, name: "New callout" }).waitFor({ timeout: 120_000 });
    // The ranked index is being built: until then answers come late and rows that are not read are cheap to scroll.
    while ((await askFromPage(page, "search.find", { text: "doors" })).warming);
    await goTo(page, "/desk?list=all");
    const list = page.getByRole("grid", { name: "All callouts" });
    await list.locator("[data-index='0']").getByRole("gridcell").nth(1).waitFor({ timeout: 120_000 });
    const box = await list.evaluate((grid) => ({
      width: grid.clientWidth,
      height: grid.clientHeight,
      inside: grid.scrollHeight,
    }));
    const own = await scroll(page, "[role=grid]");
    await list.getByText("reading", { exact: true }).first().waitFor({ state: "detached", timeout: 120_000 });
    const empty = await page.context().newPage();
    await empty.setContent(
      `<div id="empty" style="overflow:auto;width:${box.width}px;height:${box.height}px">` +
        `<div style="height:${box.inside}px"></div></div>`,
    );
    const bare = await scroll(empty, "#empty");
    return [
      row("list of all callouts", size, own, bare),
      row("empty box of the same height", size, bare, bare),
    ];
  } finally {
    await program.stop();
  }
}

interface Scrolled {
  /** Milliseconds between one frame and the next. */
  readonly frames: readonly number[];
  readonly pixels: number;
}

/** Turns the wheel over an element for some seconds and takes the time of every frame meanwhile. */
async function scroll(page: Page, selector: string): Promise<Scrolled> {
  await page.bringToFront();
  const box = page.locator(selector).first();
  await box.hover();
  await page.evaluate(() => {
    const times: number[] = [];
    const frame = (time: number): void => {
      times.push(time);
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    Object.assign(globalThis, { frameTimes: times });
  });
  const until = Date.now() + milliseconds;
  while (Date.now() < until) await page.mouse.wheel(0, step);
  const times = await page.evaluate(() => (globalThis as unknown as { frameTimes: number[] }).frameTimes);
  const pixels = await box.evaluate((element) => element.scrollTop);
  if (pixels < step) throw new Error(`${selector} was not scrolled.`);
  return { frames: times.slice(1).map((time, index) => time - (times[index] ?? time)), pixels };
}

function row(what: string, callouts: number, scrolled: Scrolled, baseline: Scrolled): Row {
  const p95 = quantile(scrolled.frames, 0.95);
  return {
    what,
    callouts: String(callouts),
    "p95 ms": p95,
    "worst ms": Math.max(...scrolled.frames),
    "over 50 ms": String(scrolled.frames.filter((frame) => frame > longFrame).length),
    frames: String(scrolled.frames.length),
    pixels: String(Math.round(scrolled.pixels)),
    "p95 ratio": p95 / quantile(baseline.frames, 0.95),
  };
}
