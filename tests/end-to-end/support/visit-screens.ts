import type { Page } from "playwright";
import { type Address, everyAddress } from "./every-address.ts";
import { drawn, openDrawn } from "./screen-findings.ts";
import { type Program, type ProgramKind, startProgram } from "./start-program.ts";

/** The demonstration company with every address of it. */
export async function startOnDemonstration(
  kind: ProgramKind,
): Promise<{ readonly program: Program; readonly addresses: readonly Address[] }> {
  const program = await startProgram(kind, { demonstration: true });
  const { page } = program;
  page.setDefaultTimeout(10_000);
  await page.getByRole("heading", { level: 1, name: "New callout" }).waitFor({ timeout: 100_000 });
  return { program, addresses: await everyAddress(page) };
}

/** Goes to every screen and gathers what `look` finds there, each finding with the name of the screen. */
export async function visitScreens(
  page: Page,
  addresses: readonly Address[],
  look: (address: string) => Promise<readonly string[]>,
): Promise<string[]> {
  const findings: string[] = [];
  for (const [what, address, shows, key] of addresses) {
    const missing = await openDrawn(page, address, shows);
    if (key !== undefined) {
      await page.keyboard.press(key.press);
      await page.getByText(key.shows, { exact: true }).first().waitFor();
      await drawn(page);
    }
    findings.push(...[...missing, ...(await look(address))].map((finding) => `${what}: ${finding}`));
    if (key?.closes !== undefined) await page.keyboard.press(key.closes);
  }
  return findings;
}
