import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    // Left to itself one core stays idle: of two that is half.
    maxWorkers: "100%",
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["packages/**/*.test.{ts,tsx}", "checks/**/*.test.ts", "tests/**/*.test.ts"],
          exclude: ["**/node_modules/**", "tests/app/**"],
          pool: "threads",
          // The core is read once by a worker, not once by every file: that took as long as all the small tests. Nothing
          // in it remembers from one plan to the next, and what a test replaces is put back after it.
          isolate: false,
          restoreMocks: true,
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          // The built app in Chromium. One file after another: what is measured or waited for must not hang on neighbours.
          name: "screen",
          include: ["tests/app/**/*.test.ts"],
          globalSetup: ["tests/app/support/build-app.ts"],
          fileParallelism: false,
          pool: "forks",
          testTimeout: 90_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
