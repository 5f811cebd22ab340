/**
 * Builds the service worker last, as one classic script at a fixed address, and tells it what was built.
 *
 * The worker caches exactly the files of one build, so it must know their names and contents: after the page is
 * written, every file in the output folder is listed with the hash of its bytes, and the list goes into sw.js in
 * place of BUILT_FILES. BUILD is the hash of that list: another build, another cache.
 */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { build, type Plugin } from "vite";

type BuiltFile = { url: string; hash: string };

function shortHash(bytes: string | Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex").slice(0, 16);
}

function filesUnder(folder: string): string[] {
  const paths = readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name));
  return paths.filter((path) => statSync(path).isFile()).sort();
}

/** The page is asked for as "/", every other file by its own name. */
function listBuilt(folder: string): BuiltFile[] {
  return filesUnder(folder).map((path) => {
    const name = relative(folder, path).split(sep).join("/");
    return { url: name === "index.html" ? "/" : `/${name}`, hash: shortHash(readFileSync(path)) };
  });
}

async function buildWorker(entry: string, outDir: string): Promise<void> {
  const files = listBuilt(outDir);
  await build({
    configFile: false,
    publicDir: false,
    logLevel: "warn",
    define: { BUILT_FILES: JSON.stringify(files), BUILD: JSON.stringify(shortHash(JSON.stringify(files))) },
    build: {
      outDir,
      emptyOutDir: false,
      target: "es2022",
      rollupOptions: { input: entry, output: { format: "iife", entryFileNames: "sw.js" } },
    },
  });
}

export function serviceWorker(entry: string): Plugin {
  let outDir = "";
  return {
    name: "tarebook-service-worker",
    apply: "build",
    configResolved(config) {
      outDir = resolve(config.root, config.build.outDir);
    },
    async closeBundle() {
      if (existsSync(entry)) await buildWorker(entry, outDir);
    },
  };
}
