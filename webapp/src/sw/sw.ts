/**
 * The service worker, and a boring one: the built files of one version in a cache of their own, so that the app opens
 * without a server; the API never. A new version waits until the user agrees, and an old page that is still open keeps
 * the files it came with.
 */

declare const self: ServiceWorkerGlobalScope;
/** Put in by the build: every built file with the first 16 digits of its SHA-256, and a name for all of them. */
declare const BUILT_FILES: readonly { url: string; hash: string }[];
declare const BUILD: string;

const PREFIX = "tarebook-";
const CACHE = PREFIX + BUILD;
/** How long an open page may take to say which files it needs. */
const PATIENCE = 2_000;

self.addEventListener("install", (event) => event.waitUntil(fill()));
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(self.skipWaiting());
  if (event.data === "sweep") event.waitUntil(sweep());
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin || url.pathname.startsWith("/api/")) return;
  event.respondWith(request.mode === "navigate" ? page(request) : file(request));
});

/** All files or none: a version with a hole would fail later, without a server. */
async function fill(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(BUILT_FILES.map(({ url, hash }) => fetchInto(cache, url, hash)));
}

async function fetchInto(cache: Cache, url: string, hash: string): Promise<void> {
  const answer = await fetch(url, { cache: "reload", credentials: "omit" });
  const bytes = await answer.arrayBuffer();
  if (!answer.ok || !(await digest(bytes)).startsWith(hash)) throw new Error(`${url} is not of this build`);
  await cache.put(url, new Response(bytes, { headers: unpacked(answer.headers) }));
}

/** The page's policy stays with it; what was true of the transfer only does not. */
function unpacked(headers: Headers): Headers {
  const kept = new Headers(headers);
  kept.delete("Content-Encoding");
  kept.delete("Content-Length");
  return kept;
}

async function digest(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The one page, whatever the address: the app finds its screen after the #. */
async function page(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match("/")) ?? fetch(request);
}

/** From this version, else from an older one whose page is still open, else from the network. */
async function file(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request)) ?? (await caches.match(request)) ?? fetch(request);
}

/**
 * Deletes the files of versions that no open page came with; while a newer one is on its way, nothing. Pages ask for it
 * once they are open: before that they could not say what they need.
 */
async function sweep(): Promise<void> {
  const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  if (old.length === 0 || self.registration.installing || self.registration.waiting) return;
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  const scripts = await Promise.all(pages.map(scriptOf));
  for (const name of old) {
    if (!(await isNeeded(name, scripts))) await caches.delete(name);
  }
}

/** A page that does not answer may need anything. */
async function isNeeded(name: string, scripts: (string | null)[]): Promise<boolean> {
  const cache = await caches.open(name);
  for (const script of scripts) {
    if (script === null || (await cache.match(script))) return true;
  }
  return false;
}

/** The script an open page was built with, or null when it does not say. */
function scriptOf(page: Client): Promise<string | null> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(typeof data === "string" ? data : null);
    setTimeout(() => resolve(null), PATIENCE);
    page.postMessage("which build?", [port2]);
  });
}

export {};
