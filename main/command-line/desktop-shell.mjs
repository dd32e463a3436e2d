import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { projectRoot } from "./project-root.mjs";

const shownLimitMilliseconds = 60_000;

/**
 * What can be known to stand in the way of a window before anything is fetched or started.
 * @param {{ platform: NodeJS.Platform, env: NodeJS.ProcessEnv, userId: number | undefined }} machine
 * @returns {string | undefined}
 */
export function desktopObstacle({ platform, env, userId }) {
  if (platform !== "linux") return undefined;
  if (!env.DISPLAY && !env.WAYLAND_DISPLAY) return "there is no display here";
  // Chromium gives the root user no sandbox, and the sandbox is never switched off to get a window.
  if (userId === 0) return "it runs as root, where the window has no usable sandbox";
  return undefined;
}

/**
 * One line saying why a window did not come up, from what the process printed before it ended.
 * @param {string} printed
 * @param {number | null} code
 */
export function windowFailure(printed, code) {
  const library = /error while loading shared libraries: ([^:\s]+)/.exec(printed)?.[1];
  if (library) return `the system library ${library} is missing`;
  if (/no usable sandbox|SUID sandbox helper|without --no-sandbox/i.test(printed))
    return "there is no usable sandbox";
  if (/Missing X server|cannot open display|Failed to connect to Wayland/i.test(printed)) {
    return "the display could not be opened";
  }
  return code === null
    ? "the window did not come up in time"
    : `the window did not come up (exit code ${code})`;
}

/**
 * Starts the desktop window and follows it to its end.
 * @param {string} binary
 * @param {readonly string[]} doorArgs
 * @param {{ root?: string, limitMilliseconds?: number }} [options]
 * @returns {Promise<{ exitCode: number } | { reason: string }>} a reason when no window was ever shown.
 */
export function runDesktop(
  binary,
  doorArgs,
  { root = projectRoot, limitMilliseconds = shownLimitMilliseconds } = {},
) {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env;
  const child = spawn(binary, [root, ...doorArgs], { env, stdio: ["inherit", "pipe", "pipe"] });
  let settled = false;
  let printed = "";
  const keep = (/** @type {string} */ text) => {
    if (!settled) printed += `${text}\n`;
  };
  createInterface({ input: child.stdout }).on("line", (line) => {
    if (isSettledLine(line)) {
      settled = true;
      return;
    }
    console.log(line);
  });
  createInterface({ input: child.stderr }).on("line", (line) => {
    keep(line);
    if (settled) console.error(line);
  });
  const stopForwarding = forwardStop(child);
  return new Promise((done) => {
    const limit = setTimeout(() => {
      if (!settled) child.kill("SIGKILL");
    }, limitMilliseconds);
    const finish = (/** @type {number | null} */ code) => {
      clearTimeout(limit);
      stopForwarding();
      done(settled ? { exitCode: code ?? 1 } : { reason: windowFailure(printed, code) });
    };
    child.on("error", (error) => {
      keep(error.message);
      finish(1);
    });
    child.on("close", finish);
  });
}

/**
 * The desktop door says `window-shown` when its window is up, and `answered` when it ended for a reason that another
 * shell would meet too (a damaged store, a folder in use); it has then said that reason itself.
 * @param {string} line
 */
function isSettledLine(line) {
  return line === "sillbook: window-shown" || line === "sillbook: answered";
}

/**
 * Passes a stop on to the child. Ctrl-C in a terminal reaches the child as well, so it is told with another signal: a
 * second SIGINT would mean to it that the person does not want to wait.
 * @param {import("node:child_process").ChildProcess} child
 * @returns {() => void} ends the passing on
 */
export function forwardStop(child) {
  const signals = /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"]);
  const pass = () => child.kill("SIGTERM");
  for (const signal of signals) process.on(signal, pass);
  return () => {
    for (const signal of signals) process.off(signal, pass);
  };
}
