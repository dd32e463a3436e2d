import react from "@vitejs/plugin-react";
import { defineConfig } from "electron-vite";

// One bundle per door. The data worker is imported as `./worker?modulePath` and shared by the doors;
// the preload must be one CommonJS file because a sandboxed preload cannot load chunks.
export default defineConfig({
  main: {
    build: {
      outDir: "out/main",
      // Bundled, so that the worker finds them also when it is unpacked from a packaged program's archive; sql.js stays
      // outside, as its WebAssembly file is read from disk.
      externalizeDeps: {
        exclude: ["zod", "fuse.js", "csv-parse", "csv-stringify", "fflate", "read-excel-file"],
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
    plugins: [react()],
    build: {
      outDir: "out/renderer",
      minify: true,
      rollupOptions: { input: "renderer/index.html" },
    },
  },
});
