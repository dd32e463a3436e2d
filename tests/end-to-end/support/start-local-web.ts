import { spawn } from "node:child_process";
import { join } from "node:path";
import { chromium } from "playwright";
import { projectRoot } from "../../../main/command-line/project-root.mjs";
import { chromiumArguments, chromiumPath } from "../../desktop-harness/chromium-launch.mjs";
import { collectComplaints } from "../../desktop-harness/collect-complaints.mjs";
import { ProgramProcess } from "./program-process.ts";
import { doorArguments, type StartedShell, type StartOptions, usualViewport } from "./start-program.ts";

/** The local web shell in a process of its own, and a Chromium that opens the address it printed. */
export async function startLocalWeb(
  options: StartOptions & { readonly folder: string },
): Promise<StartedShell> {
  const door = join(projectRoot, "out", "main", "local-web.js");
  const program = new ProgramProcess(
    spawn(process.execPath, [door, ...doorArguments(options)], { stdio: ["ignore", "pipe", "pipe"] }),
  );
  const address = (await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+\/open\?token=[0-9a-f]+)\s/))[1] ?? "";
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: chromiumArguments() });
  const context = await browser.newContext({
    viewport: options.viewport ?? usualViewport,
    colorScheme: options.colorScheme ?? "light",
  });
  const complaints = await collectComplaints(context);
  const page = await context.newPage();
  await page.goto(address);
  return {
    page,
    complaints: async () => complaints,
    printed: () => program.printed,
    stop: async () => {
      await browser.close();
      return program.stop();
    },
  };
}
