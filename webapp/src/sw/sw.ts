/**
 * The service worker, and a boring one: the built files of each version in a cache of their own, so that the app opens
 * without a server; the API never. Which version opens is written down and changed by the user's word alone: a browser
 * lets a new worker take over whenever no page is open, and a phone closes pages as it likes, in the middle of a weighing
 * too. An old page that is still open keeps the files it came with.
 */

declare const self: ServiceWorkerGlobalScope;
/** Put in by the build: every built file with the first 16 digits of its SHA-256, and a name for all of them. */
declare const BUILT_FILES: readonly { url: string; hash: string }[];
declare const BUILD: string;

const PREFIX = "tarebook-";
const CACHE = PREFIX + BUILD;
/** Where the name of the cache that the user chose is written down; not itself a version's. */
const CHOICE = "chosen-tarebook";
const CHOSEN = "/chosen";
/** How long an open page may take to say which files it needs. */
const PATIENCE = 2_000;

self.addEventListener("install", (event) => event.waitUntil(fill().then(beFirst)));
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("message", (event) => {
  const answer = (value: unknown): void => event.ports[0]?.postMessage(value);
  if (event.data === "open with this") event.waitUntil(openWithThis(answer));
  // As pages of former versions ask for it; they wait until the workers have changed places.
  if (event.data === "take over")
    event.waitUntil(
      choose()
        .then(answer)
        .then(() => self.skipWaiting()),
    );
  if (event.data === "is this another version?") event.waitUntil(chosen().then((name) => answer(name !== CACHE)));
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

/** The first version needs nobody's word: there is no other. */
async function beFirst(): Promise<void> {
  if (!(await (await caches.open(CHOICE)).match(CHOSEN))) await choose();
}

async function choose(): Promise<void> {
  await (await caches.open(CHOICE)).put(CHOSEN, new Response(CACHE));
}

/**
 * Answers whether the workers now change places: they do where one page alone is open, and waits for it. Another page
 * that is at work keeps its worker from ending, and what is asked of that meanwhile may never be answered.
 */
async function openWithThis(answer: (changes: boolean) => void): Promise<void> {
  await choose();
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  const isAlone = pages.length <= 1;
  answer(isAlone);
  if (isAlone) await self.skipWaiting();
}

/** The name of the chosen version's cache; this worker's own when that one is not there any more. */
async function chosen(): Promise<string> {
  const name = await (await (await caches.open(CHOICE)).match(CHOSEN))?.text();
  return name !== undefined && (await caches.has(name)) ? name : CACHE;
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
  const cache = await caches.open(await chosen());
  return (await cache.match("/")) ?? fetch(request);
}

/** From the chosen version, else from another one whose page is still open, else from the network. */
async function file(request: Request): Promise<Response> {
  const cache = await caches.open(await chosen());
  return (await cache.match(request)) ?? (await caches.match(request)) ?? fetch(request);
}

/**
 * Deletes the files of versions that neither the user chose nor an open page came with; while a newer one is on its way,
 * nothing. Pages ask for it once they are open: before that they could not say what they need.
 */
async function sweep(): Promise<void> {
  const kept = [CACHE, await chosen()];
  const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && !kept.includes(name));
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
