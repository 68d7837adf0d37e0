import { defineConfig } from "vitest/config";

/**
 * Two projects. `node` runs in parallel and needs nothing but Node and the Debian voices. `browser` tests run
 * in Node too, but each drives a real Chromium and a real server, so their files run one after another:
 * two browsers at once would measure each other.
 */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "node",
          environment: "node",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/browser/**"],
          // Only a hang is to be caught: the speech models alone take a busy machine half a minute.
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: "browser",
          environment: "node",
          include: ["tests/browser/**/*.test.ts"],
          testTimeout: 300_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
