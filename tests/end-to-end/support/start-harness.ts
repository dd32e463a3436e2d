import { fork } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright";
import { projectRoot } from "../../../main/command-line/project-root.mjs";
import type { Complaints } from "../../desktop-harness/collect-complaints.mjs";
import { ProgramProcess } from "./program-process.ts";
import { doorArguments, type StartedShell, type StartOptions, usualViewport } from "./start-program.ts";

export interface HarnessShell extends StartedShell {
  /** Asks the stand-in for Electron something; its commands are in tests/desktop-harness/stand-in/test-control.mjs. */
  control<Value>(command: string, argument?: unknown): Promise<Value>;
}

export interface HarnessOptions extends StartOptions {
  readonly folder: string;
  /** Further arguments of the program. */
  readonly extraArguments?: readonly string[];
  /** The folder Electron would keep its own things in; default: a new one that is removed at the end. */
  readonly userData?: string;
}

/** The built desktop door under Node, with the stand-in for Electron; its window is a page of a real Chromium. */
export async function startHarness(options: HarnessOptions): Promise<HarnessShell> {
  const userData = options.userData ?? (await mkdtemp(join(tmpdir(), "sillbook-electron-")));
  const program = forkHarness(options, userData);
  const control = controller(program);
  await program.waitFor(/sillbook: window-shown/);
  const browser = await chromium.connectOverCDP(await control<string>("endpoint"));
  const page = browser.contexts()[0]?.pages()[0];
  if (!page) throw new Error("The stand-in for Electron opened no page.");
  await page.setViewportSize(options.viewport ?? usualViewport);
  await page.emulateMedia({ colorScheme: options.colorScheme ?? "light" });
  return {
    page,
    control,
    complaints: () => control<Complaints>("complaints"),
    printed: () => program.printed,
    stop: async () => {
      const exitCode = await program.stop();
      if (options.userData === undefined) await rm(userData, { recursive: true, force: true });
      return exitCode;
    },
  };
}

/** Starts the process and waits for nothing. */
export function forkHarness(options: HarnessOptions, userData: string): ProgramProcess {
  const registration = new URL("../../desktop-harness/register-stand-in.mjs", import.meta.url).href;
  const child = fork(
    join(projectRoot, "out", "main", "desktop.js"),
    [...doorArguments(options), ...(options.extraArguments ?? [])],
    {
      execArgv: ["--import", registration],
      env: { ...process.env, SILLBOOK_HARNESS_FOLDER: userData },
      stdio: ["ignore", "pipe", "pipe", "ipc"],
    },
  );
  return new ProgramProcess(child);
}

function controller(program: ProgramProcess): HarnessShell["control"] {
  const { child } = program;
  const waiting = new Map<number, (answer: { json?: string; error?: string }) => void>();
  let last = 0;
  child.on("message", (answer: { id: number; json?: string; error?: string }) => {
    waiting.get(answer.id)?.(answer);
    waiting.delete(answer.id);
  });
  child.on("exit", () => {
    for (const answer of waiting.values()) answer({ error: `The program ended:\n${program.printed}` });
  });
  return async <Value>(command: string, argument?: unknown): Promise<Value> => {
    last += 1;
    const id = last;
    const answer = await new Promise<{ json?: string; error?: string }>((resolve) => {
      waiting.set(id, resolve);
      child.send({ id, command, argument }, (error) => {
        if (error) resolve({ error: `The program has ended:\n${program.printed}` });
      });
    });
    if (answer.json === undefined) throw new Error(answer.error);
    return JSON.parse(answer.json) as Value;
  };
}
