import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["packages/**/*.test.{ts,tsx}", "checks/**/*.test.ts", "tests/**/*.test.ts"],
    pool: "threads",
    // Left to itself one core stays idle: of two that is half.
    maxWorkers: "100%",
    testTimeout: 60_000,
  },
});
