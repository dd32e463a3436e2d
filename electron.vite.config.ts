import { resolve } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig } from "electron-vite";
import type { Plugin } from "vite";

// The workbook libraries zip and unzip in workers that the content security policy of the page forbids.
const workbooksWithoutWorkers: Plugin = {
  name: "workbooks-without-workers",
  enforce: "pre",
  resolveId: (source, importer) =>
    source === "fflate" && /zip(To|From)ArrayBuffer\.js$/.test(importer ?? "")
      ? resolve(import.meta.dirname, "renderer/zip-in-page.ts")
      : null,
};

// One bundle per door. The data worker is imported as `./worker?modulePath` and shared by the doors;
// the preload must be one CommonJS file because a sandboxed preload cannot load chunks.
export default defineConfig({
  main: {
    build: {
      outDir: "out/main",
      // Bundled, so that the worker finds them also when it is unpacked from a packaged program's archive; sql.js stays
      // outside, as its WebAssembly file is read from disk.
      externalizeDeps: {
        exclude: [
          "zod",
          "fuse.js",
          "csv-parse",
          "csv-stringify",
          "fflate",
          "read-excel-file",
          "write-excel-file",
        ],
      },
      minify: false,
      rollupOptions: {
        input: {
          desktop: "main/desktop/main.ts",
          "local-web": "main/local-web/main.ts",
          ask: "main/command-line/ask.ts",
        },
      },
    },
  },
  preload: {
    build: {
      outDir: "out/preload",
      rollupOptions: {
        input: { preload: "main/desktop/preload.ts" },
        output: { format: "cjs", entryFileNames: "[name].cjs" },
      },
    },
  },
  renderer: {
    root: "renderer",
    plugins: [react(), workbooksWithoutWorkers],
    build: {
      outDir: "out/renderer",
      minify: true,
      rollupOptions: { input: "renderer/index.html" },
    },
  },
});
