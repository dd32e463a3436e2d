// Bundles the measuring script with vite and runs it: node tests/bench/cause-ranking/run.mjs
import { mkdtemp, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "../../..");
// Inside node_modules, so that the bundle finds the packages it leaves outside.
const folder = await mkdtemp(join(root, "node_modules/.cause-ranking-"));
try {
  await build({
    root,
    configFile: false,
    logLevel: "error",
    build: {
      ssr: join(here, "measure-causes.ts"),
      outDir: folder,
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: "measure.mjs" } },
    },
  });
  const { run } = await import(pathToFileURL(join(folder, "measure.mjs")).href);
  await run();
} finally {
  await rm(folder, { recursive: true, force: true });
}
