import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "./project-root.mjs";
import { packageScript, runCommand } from "./run-command.mjs";

const fetchLimitMilliseconds = 20_000;
const memoryMilliseconds = 24 * 60 * 60 * 1000;

/**
 * The installed Electron binary, or undefined.
 * @param {string} [root]
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {string | undefined}
 */
export function findElectron(root = projectRoot, env = process.env) {
  const folder = join(root, "node_modules", "electron");
  const pathFile = join(folder, "path.txt");
  const name = existsSync(pathFile) ? readFileSync(pathFile, "utf8").trim() : usualName(process.platform);
  const binary = join(env.ELECTRON_OVERRIDE_DIST_PATH || join(folder, "dist"), name);
  return existsSync(binary) ? binary : undefined;
}

/**
 * Finds the Electron binary or fetches it. A failed attempt is remembered for a day, so that a machine without the
 * download host does not wait at every start.
 * @param {object} [options]
 * @param {string} [options.root]
 * @param {() => number} [options.now]
 * @param {number} [options.limitMilliseconds]
 * @returns {Promise<{ binary: string } | { reason: string }>}
 */
export async function obtainElectron({
  root = projectRoot,
  now = Date.now,
  limitMilliseconds = fetchLimitMilliseconds,
} = {}) {
  const present = findElectron(root);
  if (present) return { binary: present };
  const memory = join(root, "node_modules", ".sillbook-electron-failed");
  const failedAt = rememberedFailure(memory);
  if (failedAt !== undefined && now() - failedAt < memoryMilliseconds && now() >= failedAt) {
    return { reason: "no Electron binary is installed, and fetching one failed less than a day ago" };
  }
  console.log(
    `Fetching the Electron binary for the desktop window (at most ${limitMilliseconds / 1000} s) ...`,
  );
  const { timedOut } = await runCommand(process.execPath, [installScript(root)], {
    output: "keep",
    limitMilliseconds,
  });
  const fetched = findElectron(root);
  if (fetched) {
    rmSync(memory, { force: true });
    return { binary: fetched };
  }
  writeFileSync(memory, new Date(now()).toISOString());
  const why = timedOut ? `not finished after ${limitMilliseconds / 1000} s` : "the download failed";
  return { reason: `no Electron binary is installed, and one could not be fetched (${why})` };
}

/** @param {string} root */
function installScript(root) {
  return root === projectRoot
    ? packageScript("electron", "install-electron")
    : join(root, "node_modules", "electron", "install.js");
}

/** @param {string} memory */
function rememberedFailure(memory) {
  if (!existsSync(memory)) return undefined;
  const time = Date.parse(readFileSync(memory, "utf8"));
  return Number.isNaN(time) ? undefined : time;
}

/** @param {NodeJS.Platform} platform */
function usualName(platform) {
  if (platform === "darwin") return "Electron.app/Contents/MacOS/Electron";
  return platform === "win32" ? "electron.exe" : "electron";
}
