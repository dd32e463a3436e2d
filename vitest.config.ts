import { defineConfig } from "vitest/config";

// Two projects of one runner: pure and data tests run in parallel; what starts programs, browsers or
// disk torture runs one file at a time so that a two-core machine gives every run the same conditions.
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: [
            "tests/end-to-end/**",
            "tests/durability/**",
            "tests/desktop-harness/**",
            "tests/real-log/**",
          ],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: "whole-program",
          include: [
            "tests/end-to-end/**/*.test.ts",
            "tests/durability/**/*.test.ts",
            "tests/desktop-harness/**/*.test.ts",
            "tests/real-log/**/*.test.ts",
          ],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
