import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { _electron } from "playwright";
import { findElectron } from "../../../main/command-line/electron-binary.mjs";
import { projectRoot } from "../../../main/command-line/project-root.mjs";
import { collectComplaints } from "../../desktop-harness/collect-complaints.mjs";
import { doorArguments, type StartedShell, type StartOptions, usualViewport } from "./start-program.ts";

/** The built program in real Electron. */
export async function startElectron(
  options: StartOptions & { readonly folder: string },
): Promise<StartedShell> {
  const executablePath = findElectron();
  if (!executablePath) throw new Error("No Electron binary is installed.");
  const userData = await mkdtemp(join(tmpdir(), "sillbook-electron-"));
  const program = await _electron.launch({
    executablePath,
    args: [projectRoot, `--user-data-dir=${userData}`, ...doorArguments(options)],
    ...(options.colorScheme ? { colorScheme: options.colorScheme } : {}),
  });
  const child = program.process();
  let printed = "";
  const keep = (chunk: Buffer): void => {
    printed += chunk.toString("utf8");
  };
  child.stdout?.on("data", keep);
  child.stderr?.on("data", keep);
  const ended = new Promise<number>((done) => child.once("exit", (code) => done(code ?? -1)));
  const complaints = await collectComplaints(program.context());
  const page = await program.firstWindow();
  await page.setViewportSize(options.viewport ?? usualViewport);
  return {
    page,
    complaints: async () => complaints,
    printed: () => printed,
    stop: async () => {
      await program.close();
      const exitCode = await ended;
      await rm(userData, { recursive: true, force: true });
      return exitCode;
    },
  };
}
