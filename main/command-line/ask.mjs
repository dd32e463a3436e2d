import { spawn } from "node:child_process";
import { join } from "node:path";
import { ensureBuilt } from "./ensure-built.mjs";
import { ensureInstalled } from "./ensure-installed.mjs";
import { projectRoot } from "./project-root.mjs";

// Standard output carries answers only, so everything said on the way goes to standard error.

if (
  (await ensureInstalled({ output: "show-as-errors" })) &&
  (await ensureBuilt({ output: "show-as-errors" }))
) {
  const child = spawn(
    process.execPath,
    [join(projectRoot, "out", "main", "ask.js"), ...process.argv.slice(2)],
    {
      // npm starts scripts in the project's folder; file names are meant from where the person stands.
      cwd: process.env.INIT_CWD ?? process.cwd(),
      stdio: "inherit",
    },
  );
  child.on("close", (code) => {
    process.exitCode = code ?? 1;
  });
} else {
  process.exitCode = 1;
}
