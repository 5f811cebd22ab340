/** One page, hashed assets, no inline script or data: address, so that a strict Content-Security-Policy holds. */
import { defineConfig } from "vite";
import { serviceWorker } from "./service_worker_plugin.ts";

export default defineConfig({
  plugins: [serviceWorker("src/sw/sw.ts")],
  resolve: { alias: { dexie: "dexie/dist/modern/dexie.mjs" } },
  build: {
    outDir: "../server/tarebook/static_app",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
    // What the first screen needs is one file: a slow phone waits for each file more than for its bytes.
    // It names every file fetched later, so those are named by their content alone, and shortly.
    rolldownOptions: {
      output: {
        codeSplitting: { groups: [{ name: "first", tags: ["$initial"] }] },
        chunkFileNames: "assets/[hash:7].js",
        assetFileNames: "assets/[hash:6][extname]",
      },
    },
  },
});
