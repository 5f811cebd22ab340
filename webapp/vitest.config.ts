/** The TypeScript tests stand beside the Python ones in ../tests; run from here so that packages are found. */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: { dir: "../tests", include: ["**/*.test.ts"], environment: "node" },
});
