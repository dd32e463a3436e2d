import { ensureBuilt } from "./ensure-built.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { packageScript, runCommand } from "./run-command.mjs";

// npm run package [-- electron-builder options]: an installable desktop program for this platform, into dist/.

process.exitCode = await makePackage(process.argv.slice(2));

/**
 * @param {readonly string[]} args
 * @returns {Promise<number>}
 */
async function makePackage(args) {
  if (!(await ensureInstalled()) || !(await ensureBuilt())) return 1;
  const script = packageScript("electron-builder");
  const options = ["--config", "electron-builder.yml", "--publish", "never", ...args];
  const { code, output } = await runCommand(process.execPath, [script, ...options], { output: "keep" });
  console.log(output);
  if (code === 0) return 0;
  console.error(failureWords(output));
  return 1;
}

/** @param {string} output */
function failureWords(output) {
  const isDownload = /ENOTFOUND|ECONNREFUSED|EAI_AGAIN|ETIMEDOUT|ECONNRESET|fetch failed/;
  if (!isDownload.test(output)) return "Packaging failed; electron-builder says why above.";
  const host = /(?:ENOTFOUND|EAI_AGAIN) (\S+)/.exec(output)?.[1];
  return `Packaging stopped at a download${host ? `: ${host} could not be reached` : ""}. No package was made.`;
}
