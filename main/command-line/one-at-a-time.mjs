import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "./project-root.mjs";

const waitMilliseconds = 250;

/**
 * Two commands started together must not both install or both build. The lock of a process that died is taken over.
 * @template Result
 * @param {string} name
 * @param {() => Promise<Result>} work
 * @param {string} [folder]
 * @returns {Promise<Result>}
 */
export async function oneAtATime(name, work, folder = join(projectRoot, ".sillbook")) {
  mkdirSync(folder, { recursive: true });
  const lock = join(folder, `${name}.lock`);
  while (!takeLock(lock)) await new Promise((resume) => setTimeout(resume, waitMilliseconds));
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
}

/** @param {string} lock */
function takeLock(lock) {
  try {
    writeFileSync(lock, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EEXIST") throw error;
  }
  if (!holderIsAlive(lock)) rmSync(lock, { force: true });
  return false;
}

/** @param {string} lock */
function holderIsAlive(lock) {
  try {
    const holder = Number(readFileSync(lock, "utf8"));
    // Between creation and the first byte the file is empty: its writer is alive.
    if (holder === 0) return true;
    process.kill(holder, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === "EPERM";
  }
}
