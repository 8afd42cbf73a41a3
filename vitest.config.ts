import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["packages/**/*.test.ts", "checks/**/*.test.ts", "tests/**/*.test.ts"],
    pool: "threads",
    testTimeout: 60_000,
  },
});
