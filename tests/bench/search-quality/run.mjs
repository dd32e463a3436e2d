// Bundles a measuring script with vite, so that what is timed is plain JavaScript as it is shipped, and runs it.
//   node tests/bench/search-quality/run.mjs quality [folder ...] [--quick]
//   node --expose-gc tests/bench/search-quality/run.mjs speed [number of notes]
import { mkdtemp, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const here = dirname(fileURLToPath(import.meta.url));
const scripts = new Map([
  ["quality", "measure-quality"],
  ["speed", "measure-speed"],
  ["tune", "tune-settings"],
]);
const script = scripts.get(process.argv[2] ?? "quality");
if (!script) {
  console.error(`Say which: ${[...scripts.keys()].join(", ")}.`);
  process.exit(2);
}
// Inside node_modules, so that the bundle finds the packages it leaves outside.
const root = join(here, "../../..");
const folder = await mkdtemp(join(root, "node_modules/.search-quality-"));
try {
  await build({
    root,
    configFile: false,
    logLevel: "error",
    build: {
      ssr: join(here, `${script}.ts`),
      outDir: folder,
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: "measure.mjs" } },
    },
  });
  const { run } = await import(pathToFileURL(join(folder, "measure.mjs")).href);
  await run(process.argv.slice(3));
} finally {
  await rm(folder, { recursive: true, force: true });
}
