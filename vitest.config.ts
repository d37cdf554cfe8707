import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Tests read the TypeScript sources directly, so no build is needed to run one file. */
export default defineConfig({
  resolve: {
    alias: [
      { find: /^@fusebook\/core\/(.+)$/, replacement: here("./packages/core/src/$1/index.ts") },
      { find: /^@fusebook\/paper\/charts$/, replacement: here("./packages/paper/src/charts/index.ts") },
      { find: /^@fusebook\/(intake|paper|store|solver)$/, replacement: here("./packages/$1/src/index.ts") },
      { find: /^@fusebook\/fixtures$/, replacement: here("./fixtures/src/index.ts") },
    ],
  },
  test: {
    include: [
      "packages/*/src/**/*.test.ts",
      "apps/*/src/**/*.test.ts",
      "fixtures/src/**/*.test.ts",
      "checks/**/*.test.ts",
      "tools/**/*.test.ts",
    ],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    pool: "forks",
    maxWorkers: 2,
  },
});
