/**
 * The TypeScript tests stand beside the Python ones in ../tests; run from here so that packages are found.
 *
 * The time a test may take only ends one that hangs: a busy machine is no fault, and speed is measured in tests/bench.
 */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: { dir: "../tests", include: ["**/*.test.ts"], environment: "node", testTimeout: 120_000, hookTimeout: 120_000 },
});
