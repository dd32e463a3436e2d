import type { Page } from "playwright";
import { afterEach, describe, expect, test } from "vitest";
import { formatFraction } from "#shared-lib/format.ts";
import { askFromPage, goTo, tabTo } from "./support/drive-page.ts";
import { axeFindings, drawn } from "./support/screen-findings.ts";
import { type Program, startProgram } from "./support/start-program.ts";

// From what the caller said to the cause: ranked by the company's own callouts, the next check answered by keys, the
// answer taken back and given again, and the path on the visit sheet.

let program: Program;
afterEach(() => program?.close());

const rows = (page: Page) => page.locator(".cause-table tbody tr");

describe("the way to the cause", () => {
  test("counts behind each cause, checks answered at once, the path kept and printed", async () => {
    program = await startProgram("local-web", { demonstration: true });
    const { page } = program;
    const { callouts } = await askFromPage(page, "callout.list", { filter: { open: true } });
    const callout = callouts.find(({ said }) => said.startsWith("doors keep reopening"));
    if (!callout) throw new Error("the demonstration has no door callout");
    await goTo(page, `/callout/${callout.id}`);
    await page.getByText(/^Ranked by/).waitFor();
    const { notes } = await askFromPage(page, "faultNote.suggest", {
      text: callout.said,
      liftId: callout.liftId,
    });
    const about = { noteId: notes[0]?.id ?? "", calloutId: callout.id };
    const before = await askFromPage(page, "cause.rank", about);
    expect(before.evidence.thin).toBe(false);
    for (const [index, cause] of before.causes.entries()) {
      const words = await rows(page).nth(index).textContent();
      expect(words).toContain(cause.title);
      expect(words).toContain(formatFraction(cause.callouts, before.evidence.callouts));
    }
    const check = before.next;
    const outcome = check?.outcomes[0];
    if (!check || !outcome) throw new Error("no check is offered");
    await page.getByText(check.why, { exact: true }).waitFor();
    const button = page.getByRole("button", { name: `${outcome.words}, found at ${check.title}` });
    await tabTo(page, button);
    await page.keyboard.press("Enter");
    const takeBack = page.getByRole("button", { name: `Take back: ${check.title}` });
    await takeBack.waitFor();
    const after = await askFromPage(page, "cause.rank", about);
    expect(after.answers).toHaveLength(1);
    expect(after.causes.map(({ probability }) => probability)).not.toEqual(
      before.causes.map(({ probability }) => probability),
    );
    await drawn(page);
    expect(await rows(page).first().textContent()).toContain(after.causes[0]?.title);
    expect(await axeFindings(page)).toEqual([]);
    await takeBack.click();
    await button.waitFor();
    await page.getByText("taken back by").waitFor();
    await button.click();
    await takeBack.waitFor();
    const visit = await askFromPage(
      page,
      "visit.record",
      {
        liftId: callout.liftId ?? "",
        calloutId: callout.id,
        kind: "callout",
        engineerId: callout.engineer?.id ?? "",
        arrivedAt: new Date().toISOString(),
        found: "as the checks showed",
        fix: { cause: "a stone in the groove", fix: "taken out", group: "doors" },
      },
      callout.engineer?.id,
    );
    await goTo(page, `/print/visit/${visit.id}`);
    await page.getByText("Checks answered on the way to the cause").waitFor();
    expect(await page.locator(".print-sheet").textContent()).toContain(outcome.words);
    await goTo(page, `/callout/${callout.id}?fix=${visit.fixId}`);
    await page.getByText("its checks were answered on the way to this fix").waitFor();
    expect(await page.locator(".fix-to-note .suggestion").first().textContent()).toContain(after.noteTitle);
  });
});
