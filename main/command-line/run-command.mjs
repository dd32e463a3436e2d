import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "./project-root.mjs";

/**
 * @typedef {object} RunOptions
 * @property {string} [cwd]
 * @property {NodeJS.ProcessEnv} [env]
 * @property {"show" | "show-as-errors" | "keep"} [output] `show-as-errors` sends what the command prints to standard error,
 *   for commands whose own standard output must stay clean.
 * @property {number} [limitMilliseconds] The command is ended after this time.
 */

/**
 * @typedef {object} RunResult
 * @property {number} code Exit code; 1 when the command was ended by a signal or could not be started.
 * @property {string} output Both streams, when they were kept.
 * @property {boolean} timedOut
 */

/**
 * Runs one command to its end.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 * @returns {Promise<RunResult>}
 */
export function runCommand(command, args, options = {}) {
  const { cwd = projectRoot, env = process.env, output = "show", limitMilliseconds } = options;
  /** @type {import("node:child_process").StdioOptions} */
  const stdio =
    output === "show"
      ? "inherit"
      : output === "show-as-errors"
        ? ["inherit", 2, 2]
        : ["ignore", "pipe", "pipe"];
  return new Promise((done) => {
    const child = spawn(command, args, { cwd, env, stdio, shell: needsShell(command), windowsHide: true });
    let kept = "";
    let timedOut = false;
    const limit = limitMilliseconds
      ? setTimeout(() => {
          timedOut = true;
          child.kill("SIGKILL");
          // A grandchild may still hold the pipes; waiting for them would make the limit no limit.
          child.stdout?.destroy();
          child.stderr?.destroy();
        }, limitMilliseconds)
      : undefined;
    const finish = (/** @type {number} */ code) => {
      clearTimeout(limit);
      done({ code, output: kept, timedOut });
    };
    child.stdout?.on("data", (chunk) => {
      kept += chunk;
    });
    child.stderr?.on("data", (chunk) => {
      kept += chunk;
    });
    child.on("error", (error) => {
      kept += error.message;
      finish(1);
    });
    child.on("close", (code) => finish(code ?? 1));
  });
}

/** Windows starts `.cmd` files only through its command processor. @param {string} command */
function needsShell(command) {
  return process.platform === "win32" && /\.(cmd|bat)$/i.test(command);
}

/**
 * npm as this process was started with it, else the one on the path.
 * @param {readonly string[]} args
 * @returns {[string, string[]]}
 */
export function npmCommand(args) {
  const npmScript = process.env.npm_execpath;
  if (npmScript?.endsWith(".js")) return [process.execPath, [npmScript, ...args]];
  return [process.platform === "win32" ? "npm.cmd" : "npm", [...args]];
}

/**
 * The script behind an installed package's command, to be run with this Node: the same on every platform, no `.cmd`.
 * @param {string} packageName
 * @param {string} [binName]
 * @returns {string}
 */
export function packageScript(packageName, binName = packageName) {
  const folder = join(projectRoot, "node_modules", ...packageName.split("/"));
  const { bin } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return join(folder, typeof bin === "string" ? bin : bin[binName]);
}
