import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { ensureBuilt } from "./ensure-built.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { obtainChromium } from "./find-chromium.mjs";
import { projectRoot } from "./project-root.mjs";
import { packageScript, runCommand } from "./run-command.mjs";
import { countTests, summaryLine } from "./test-count.mjs";

// Plain Node until the install is done. Arguments are passed on to the test runner: npm test -- tests/some/path

/** @typedef {import("./test-count.mjs").Count} Count */

const counts = await runAll(process.argv.slice(2));
process.exitCode = counts.some((count) => count.failed > 0) ? 1 : 0;
console.log(summaryLine(counts));

/**
 * @param {readonly string[]} args
 * @returns {Promise<Count[]>}
 */
async function runAll(args) {
  if (!(await ensureInstalled())) return [one(false, "install")];
  const browser = await obtainChromium();
  if ("problem" in browser) {
    console.error(browser.problem);
    return [one(false, "Chromium for the tests")];
  }
  return [
    one(await checkTypes(), "types"),
    one(await run("@biomejs/biome", "biome", ["check", "--error-on-warnings", "."]), "lint"),
    one(await ensureBuilt(), "build"),
    await runTests(args, browser.path),
  ];
}

async function checkTypes() {
  let good = true;
  for (const folder of ["shared-lib", "main", "renderer", "tests"]) {
    good = (await run("typescript", "tsc", ["-p", folder])) && good;
  }
  return good;
}

/**
 * @param {string} packageName
 * @param {string} binName
 * @param {readonly string[]} args
 */
async function run(packageName, binName, args) {
  const { code } = await runCommand(process.execPath, [packageScript(packageName, binName), ...args]);
  return code === 0;
}

/**
 * @param {readonly string[]} args
 * @param {string} chromium
 * @returns {Promise<Count>}
 */
async function runTests(args, chromium) {
  const report = join(projectRoot, "tests", "results", "vitest.json");
  mkdirSync(join(projectRoot, "tests", "results"), { recursive: true });
  rmSync(report, { force: true });
  const vitest = packageScript("vitest");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const { code } = await runCommand(process.execPath, [vitest, "run", ...reporters, ...args], {
    env: { ...process.env, SILLBOOK_CHROMIUM: chromium },
  });
  return countTests(existsSync(report) ? readFileSync(report, "utf8") : undefined, code);
}

/**
 * @param {boolean} good
 * @param {string} what
 * @returns {Count}
 */
function one(good, what) {
  console.log(`${what}: ${good ? "passed" : "failed"}`);
  return good ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}
