import { spawn } from "node:child_process";
import { join } from "node:path";
import { text } from "node:stream/consumers";
import type { Envelope } from "#shared-lib/contract/operation.ts";
import { projectRoot } from "../../../main/command-line/project-root.mjs";

export interface AskResult {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built third door as a command of its own, with `input` on its standard input. */
export async function runAsk(args: readonly string[], input = ""): Promise<AskResult> {
  const child = spawn(process.execPath, [join(projectRoot, "out", "main", "ask.js"), ...args], {
    stdio: ["pipe", "pipe", "pipe"],
  });
  // A command that refuses its arguments reads no input.
  child.stdin.on("error", () => {});
  child.stdin.end(input);
  const ended = new Promise<number | null>((done) => child.on("close", done));
  const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr)]);
  return { code: await ended, stdout, stderr };
}

/** One operation on a data folder. */
export async function askOne(
  folder: string,
  operation: string,
  input: unknown = {},
  as?: string,
): Promise<{ readonly code: number | null; readonly envelope: Envelope }> {
  const args = ["--data", folder, ...(as === undefined ? [] : ["--as", as]), operation, "-"];
  const { code, stdout, stderr } = await runAsk(args, JSON.stringify(input));
  try {
    return { code, envelope: JSON.parse(stdout) as Envelope };
  } catch {
    throw new Error(`ask answered no JSON (exit code ${code}):\n${stdout}\n${stderr}`);
  }
}
