import { spawn } from "node:child_process";
import { join } from "node:path";
import { desktopObstacle, forwardStop, runDesktop } from "./desktop-shell.mjs";
import { obtainElectron } from "./electron-binary.mjs";
import { ensureBuilt } from "./ensure-built.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { projectRoot } from "./project-root.mjs";
import { doorArguments, readStartOptions, startUsage } from "./start-options.mjs";

// Everything here runs before the install: plain Node, no package.

process.exitCode = await start(process.argv.slice(2));

/**
 * @param {readonly string[]} args
 * @returns {Promise<number>} exit code
 */
async function start(args) {
  const read = readStartOptions(args);
  if ("problem" in read) {
    console.error(`${read.problem}\n\n${startUsage}`);
    return 2;
  }
  if (!(await ensureInstalled())) return 1;
  if (!(await ensureBuilt())) return 1;
  const doorArgs = doorArguments(read.options);
  if (read.options.shell === "web") return runLocalWeb(doorArgs);
  const desktop = await tryDesktop(doorArgs);
  if ("exitCode" in desktop) return desktop.exitCode;
  console.log(`No desktop window: ${desktop.reason}. Starting the local web shell instead.`);
  return runLocalWeb(doorArgs);
}

/**
 * @param {readonly string[]} doorArgs
 * @returns {Promise<{ exitCode: number } | { reason: string }>}
 */
async function tryDesktop(doorArgs) {
  const obstacle = desktopObstacle({
    platform: process.platform,
    env: process.env,
    userId: process.getuid?.(),
  });
  if (obstacle) return { reason: obstacle };
  const electron = await obtainElectron();
  if ("reason" in electron) return electron;
  return runDesktop(electron.binary, doorArgs);
}

/**
 * @param {readonly string[]} doorArgs
 * @returns {Promise<number>}
 */
function runLocalWeb(doorArgs) {
  const child = spawn(process.execPath, [join(projectRoot, "out", "main", "local-web.js"), ...doorArgs], {
    stdio: "inherit",
  });
  const stopForwarding = forwardStop(child);
  return new Promise((done) => {
    child.on("error", (error) => {
      console.error(error.message);
      done(1);
    });
    child.on("close", (code) => {
      stopForwarding();
      done(code ?? 1);
    });
  });
}
