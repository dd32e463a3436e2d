import type { Locator, Page } from "playwright";
import type { Envelope } from "#shared-lib/contract/operation.ts";
import type { InputOf, OperationName, OutputOf } from "#shared-lib/contract/operations.ts";

/**
 * Asks from inside the page, as the screens do, whichever shell it runs in.
 * @param as name or id of the person who writes
 */
export async function askFromPage<Name extends OperationName>(
  page: Page,
  operation: Name,
  input: InputOf<Name>,
  as?: string,
): Promise<OutputOf<Name>> {
  const envelope = (await page.evaluate(
    async (request) => {
      const shell = (globalThis as { sillbook?: { request(asked: unknown): Promise<unknown> } }).sillbook;
      if (shell) return shell.request(request);
      const headers = { "content-type": "application/json" };
      const answer = await fetch("/request", { method: "POST", headers, body: JSON.stringify(request) });
      return answer.json();
    },
    { operation, input, ...(as === undefined ? {} : { as }) },
  )) as Envelope<OutputOf<Name>>;
  if (!envelope.ok) throw new Error(`${operation}: ${JSON.stringify(envelope.error)}`);
  return envelope.value;
}

/** Opens a screen by its address: "/review?last=quarter". */
export async function goTo(page: Page, address: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, address);
}

/** Presses Tab until `target` has the keyboard: whoever cannot use a mouse gets there the same way. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.first().waitFor();
  for (let presses = 0; presses < 80; presses += 1) {
    if (await target.first().evaluate((element) => element === element.ownerDocument.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab does not lead to ${target}.`);
}

/** The person who writes, chosen at the foot of the column. */
export async function switchPerson(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name: /Change person$/ }).click();
  await page.getByRole("menuitemradio", { name }).click();
  await page.getByRole("button", { name: `${name},` }).waitFor();
}
