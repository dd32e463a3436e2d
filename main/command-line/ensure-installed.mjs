import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { oneAtATime } from "./one-at-a-time.mjs";
import { projectRoot } from "./project-root.mjs";
import { npmCommand, runCommand } from "./run-command.mjs";

/**
 * Whether what is installed is what the lock file says.
 * @param {string} [root]
 */
export function isInstalled(root = projectRoot) {
  const memory = memoryFile(root);
  return existsSync(memory) && readFileSync(memory, "utf8") === lockHash(root);
}

/**
 * Installs what the lock file says, when it is not installed already. The hash of the lock file is remembered inside
 * node_modules, so it is forgotten together with what it describes.
 * @param {{ output?: "show" | "show-as-errors" }} [options]
 * @returns {Promise<boolean>} false when the install failed; npm has then said why.
 */
export async function ensureInstalled({ output = "show" } = {}) {
  const tooOld = nodeIsTooOld(process.versions.node);
  if (tooOld) {
    console.error(tooOld);
    return false;
  }
  if (isInstalled()) return true;
  return oneAtATime("install", async () => {
    if (isInstalled()) return true;
    const say = output === "show" ? console.log : console.error;
    say("Installing what the lock file says (npm ci) ...");
    const [command, args] = npmCommand(["ci", "--include=dev"]);
    const { code } = await runCommand(command, args, { output });
    if (code !== 0) return false;
    writeFileSync(memoryFile(projectRoot), lockHash(projectRoot));
    return true;
  });
}

/**
 * The sentence for a Node that the packages do not run on, or undefined.
 * @param {string} version
 */
export function nodeIsTooOld(version) {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 20)) return undefined;
  return `Sillbook needs Node 20.20 or newer; this is Node ${version}. Install a newer one from nodejs.org.`;
}

/** @param {string} root */
function memoryFile(root) {
  return join(root, "node_modules", ".sillbook-install");
}

/** @param {string} root */
function lockHash(root) {
  // Packages with native parts differ by platform and by Node's major version, so a shared folder is installed anew.
  const machine = `${process.platform} ${process.arch} ${process.versions.node.split(".")[0]}`;
  return createHash("sha256")
    .update(readFileSync(join(root, "package-lock.json")))
    .update(machine)
    .digest("hex");
}
