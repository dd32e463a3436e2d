import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright";
import { startElectron } from "./start-electron.ts";
import { startHarness } from "./start-harness.ts";
import { startLocalWeb } from "./start-local-web.ts";

export type ProgramKind = "local-web" | "desktop-harness" | "electron";

export interface StartOptions {
  /** Default: a new folder that is removed at the end. A folder named here is kept, to be started on again. */
  readonly folder?: string;
  readonly demonstration?: boolean;
  /** Default 1280 x 800. */
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly colorScheme?: "light" | "dark";
}

/** What each way of starting the program gives. */
export interface StartedShell {
  readonly page: Page;
  complaints(): Promise<{
    readonly securityViolations: readonly string[];
    readonly consoleErrors: readonly string[];
  }>;
  /** Ends the program in order. @returns its exit code */
  stop(): Promise<number>;
  /** What the program printed so far. */
  printed(): string;
}

export interface Program extends StartedShell {
  readonly kind: ProgramKind;
  readonly folder: string;
  /**
   * Ends the program and fails on anything its pages complained about.
   * @param options `allowed`: console errors that the test provoked
   */
  close(options?: { readonly allowed?: RegExp }): Promise<void>;
}

const starters = { "local-web": startLocalWeb, "desktop-harness": startHarness, electron: startElectron };

/** Starts the built program on a data folder of its own and opens its first page. */
export async function startProgram(kind: ProgramKind, options: StartOptions = {}): Promise<Program> {
  const folder = options.folder ?? (await mkdtemp(join(tmpdir(), "sillbook-data-")));
  const removeFolder = async (): Promise<void> => {
    if (options.folder === undefined) await rm(folder, { recursive: true, force: true });
  };
  let shell: StartedShell;
  try {
    shell = await starters[kind]({ ...options, folder });
  } catch (error) {
    await removeFolder();
    throw error;
  }
  return {
    ...shell,
    kind,
    folder,
    close: async ({ allowed } = {}) => {
      const { securityViolations, consoleErrors } = await shell.complaints();
      const exitCode = await shell.stop();
      await removeFolder();
      const complaints = [...securityViolations, ...consoleErrors].filter((words) => !allowed?.test(words));
      if (complaints.length > 0) throw new Error(`The page complained:\n${complaints.join("\n")}`);
      if (exitCode !== 0)
        throw new Error(`The program ended with exit code ${exitCode}:\n${shell.printed()}`);
    },
  };
}

/** The options as arguments of the built doors. */
export function doorArguments({
  folder,
  demonstration,
}: StartOptions & { readonly folder: string }): string[] {
  return ["--data", folder, ...(demonstration ? ["--demo"] : []), "--port", "0", "--no-open"];
}

export const usualViewport = { width: 1280, height: 800 };
