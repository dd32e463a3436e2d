import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { oneAtATime } from "./one-at-a-time.mjs";
import { projectRoot } from "./project-root.mjs";
import { packageScript, runCommand } from "./run-command.mjs";

const sources = [
  "main",
  "renderer",
  "shared-lib",
  "electron.vite.config.ts",
  "tsconfig.json",
  "package-lock.json",
];

/**
 * Builds when any source differs from what the present build was made of.
 * @param {{ output?: "show" | "show-as-errors" }} [options]
 * @returns {Promise<boolean>} false when the build failed; the build tool has then said why.
 */
export async function ensureBuilt({ output = "show" } = {}) {
  if (isBuilt()) return true;
  return oneAtATime("build", async () => {
    if (isBuilt()) return true;
    const say = output === "show" ? console.log : console.error;
    say("Building ...");
    // Taken before the build: a source saved while it runs must make the next start build again.
    const hash = sourceHash(projectRoot);
    const script = packageScript("electron-vite");
    const { code, output: words } = await runCommand(
      process.execPath,
      [script, "build", "--logLevel", "warn"],
      {
        output: "keep",
      },
    );
    if (code !== 0) {
      console.error(words);
      return false;
    }
    writeFileSync(memoryFile(projectRoot), hash);
    return true;
  });
}

/** @param {string} [root] */
export function isBuilt(root = projectRoot) {
  const memory = memoryFile(root);
  return existsSync(memory) && readFileSync(memory, "utf8") === sourceHash(root);
}

/** @param {string} root */
function memoryFile(root) {
  return join(root, "out", ".sillbook-build");
}

/**
 * A hash over names and contents of all sources; contents, not times, because a checkout changes times at will.
 * @param {string} root
 */
export function sourceHash(root) {
  const hash = createHash("sha256");
  for (const file of sources.flatMap((source) => filesUnder(join(root, source)))) {
    hash
      .update(`${relative(root, file)}\0`)
      .update(readFileSync(file))
      .update("\0");
  }
  return hash.digest("hex");
}

/**
 * @param {string} path
 * @returns {string[]}
 */
function filesUnder(path) {
  if (!existsSync(path)) return [];
  try {
    return readdirSync(path, { withFileTypes: true })
      .sort((one, other) => (one.name < other.name ? -1 : 1))
      .flatMap((entry) => filesUnder(join(path, entry.name)));
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === "ENOTDIR") return [path];
    throw error;
  }
}
