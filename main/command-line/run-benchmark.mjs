import { runnerImport } from "vite";
import { projectRoot } from "./project-root.mjs";

// One benchmark: a TypeScript file that exports run(). Vite compiles it on the way, as Node 20 cannot.

const file = process.argv[2];
if (file === undefined) throw new Error("run-benchmark needs the path of a benchmark");
/** @type {{ module: { run(): Promise<void> } }} */
const { module } = await runnerImport(file, { root: projectRoot, configFile: false, logLevel: "warn" });
await module.run();
