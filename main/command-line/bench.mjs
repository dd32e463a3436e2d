import { readdirSync } from "node:fs";
import { join } from "node:path";
import { ensureBuilt } from "./ensure-built.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { obtainChromium } from "./find-chromium.mjs";
import { projectRoot } from "./project-root.mjs";
import { runCommand } from "./run-command.mjs";

// npm run bench [-- part-of-a-name ...]: every tests/benchmarks/*.bench.ts in a process of its own, so that memory
// and warm caches of one do not reach the next.

process.exitCode = await bench(process.argv.slice(2));

/**
 * @param {readonly string[]} wanted
 * @returns {Promise<number>}
 */
async function bench(wanted) {
  if (!(await ensureInstalled()) || !(await ensureBuilt())) return 1;
  const folder = join(projectRoot, "tests", "benchmarks");
  const files = readdirSync(folder)
    .filter((name) => name.endsWith(".bench.ts"))
    .filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)))
    .sort();
  if (files.length === 0) {
    console.error("There is no benchmark of that name.");
    return 2;
  }
  const browser = await obtainChromium();
  const env = "path" in browser ? { ...process.env, SILLBOOK_CHROMIUM: browser.path } : process.env;
  if ("problem" in browser) console.error(browser.problem);
  let exitCode = 0;
  for (const file of files) {
    console.log(`\n${file}`);
    const runner = join(projectRoot, "main", "command-line", "run-benchmark.mjs");
    const { code } = await runCommand(process.execPath, ["--expose-gc", runner, join(folder, file)], { env });
    if (code !== 0) exitCode = 1;
  }
  return exitCode;
}
