import { defineConfig } from "vitest/config";

// Two projects of one runner: pure and data tests run first, as many at a time as there are cores; then what starts
// programs, browsers or disk torture, two files at a time, because each starts several processes of its own.
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          // A busy machine may take seconds for what is polled; only a state that never comes may fail.
          expect: { poll: { timeout: 20_000 } },
          include: ["tests/**/*.test.ts"],
          exclude: [
            "tests/end-to-end/**",
            "tests/durability/**",
            "tests/desktop-harness/**",
            "tests/real-log/**",
          ],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: "whole-program",
          // A busy machine may take seconds for what is polled; only a state that never comes may fail.
          expect: { poll: { timeout: 20_000 } },
          include: [
            "tests/end-to-end/**/*.test.ts",
            "tests/durability/**/*.test.ts",
            "tests/desktop-harness/**/*.test.ts",
            "tests/real-log/**/*.test.ts",
          ],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
