import { accessSync, constants, existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { packageScript, runCommand } from "./run-command.mjs";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge"];
const macPaths = ["Google Chrome", "Chromium", "Microsoft Edge"].map(
  (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
);
const windowsPaths = ["Google\\Chrome\\Application\\chrome.exe", "Microsoft\\Edge\\Application\\msedge.exe"];

/**
 * A Chromium that is already on this machine: named by the environment, on the path, or at its usual place.
 * @param {NodeJS.ProcessEnv} [env]
 * @param {NodeJS.Platform} [platform]
 * @returns {string | undefined}
 */
export function findChromium(env = process.env, platform = process.platform) {
  const named = env.SILLBOOK_CHROMIUM || env.CHROMIUM;
  if (named) return isExecutable(named) ? named : undefined;
  return usualPlaces(env, platform).find(isExecutable);
}

/**
 * @param {NodeJS.ProcessEnv} env
 * @param {NodeJS.Platform} platform
 */
function usualPlaces(env, platform) {
  if (platform === "darwin") return macPaths;
  if (platform === "win32") {
    const roots = [env.PROGRAMFILES, env["PROGRAMFILES(X86)"], env.LOCALAPPDATA];
    return roots.flatMap((root) => (root ? windowsPaths.map((path) => join(root, path)) : []));
  }
  const folders = (env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return names.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** @param {string} path */
function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * A Chromium for the tests: an installed one, else Playwright's own, else (as root on Debian) the distribution's.
 * Called after the install.
 * @returns {Promise<{ path: string } | { problem: string }>}
 */
export async function obtainChromium() {
  const named = process.env.SILLBOOK_CHROMIUM || process.env.CHROMIUM;
  const present = findChromium();
  if (present) return { path: present };
  if (named) return { problem: `The Chromium named by the environment cannot be run: ${named}` };
  const { chromium } = await import("playwright");
  if (existsSync(chromium.executablePath())) return { path: chromium.executablePath() };
  console.log("No Chromium found. Fetching Playwright's own ...");
  await runCommand(process.execPath, [packageScript("playwright"), "install", "chromium"], {
    limitMilliseconds: 240_000,
  });
  if (existsSync(chromium.executablePath())) return { path: chromium.executablePath() };
  if (isRootOnDebian()) {
    console.log("Installing the distribution's chromium package ...");
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    await runCommand("apt-get", ["update"], { env, output: "keep" });
    await runCommand("apt-get", ["install", "-y", "--no-install-recommends", "chromium"], { env });
    const installed = findChromium();
    if (installed) return { path: installed };
  }
  return {
    problem:
      "No Chromium: none is installed, Playwright's own could not be fetched, and no Debian package could be installed. " +
      "Install Chromium, Chrome or Edge, or name one in the environment variable CHROMIUM.",
  };
}

function isRootOnDebian() {
  if (process.getuid?.() !== 0 || !existsSync("/etc/os-release")) return false;
  return /^ID(_LIKE)?=.*debian/m.test(readFileSync("/etc/os-release", "utf8"));
}
