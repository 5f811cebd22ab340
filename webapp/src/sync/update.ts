/** The page's side of the service worker: registration, and the question whether to take a new version. */

import { effect, type ReadonlySignal, signal } from "@preact/signals";

import { opened } from "../store/opened";
import { sync } from "./state";

const ready = signal(false);

/** True when a new version is on this device and waits for the user's word. */
export const updateReady: ReadonlySignal<boolean> = ready;

let newest: ServiceWorker | null = null;

/** How often a page that stays open looks for a new version, and how often one that is looked at again. */
const EVERY = 3_600_000;
const EVERY_LOOK = 600_000;

/**
 * Registers the worker. Where there is none (plain http to another computer, say) the app works, but not from a cold
 * start without the server.
 */
export async function registerWorker(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
    follow(registration);
    lookForNew(registration);
  } catch {
    // No worker, no cold start; nothing else depends on it.
  }
}

function follow(registration: ServiceWorkerRegistration): void {
  const offerNewest = (): void => void offer(registration.waiting ?? registration.active);
  offerNewest();
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => coming.state === "installed" && offerNewest());
  });
  // The worker asks which build each open page came with, and keeps that build's files.
  navigator.serviceWorker.addEventListener("message", ({ data, ports }) => {
    if (data === "which build?") ports[0]?.postMessage(build());
  });
  navigator.serviceWorker.startMessages();
  void navigator.serviceWorker.ready.then(({ active }) => active?.postMessage("sweep"));
}

/** From time to time, when the page is looked at again, and when the home computer does not understand this version. */
function lookForNew(registration: ServiceWorkerRegistration): void {
  let looked = performance.now();
  const look = (atLeastApart: number): void => {
    if (performance.now() - looked < atLeastApart) return;
    looked = performance.now();
    void registration.update().catch(() => undefined);
  };
  setInterval(() => look(0), EVERY);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look(EVERY_LOOK));
  effect(() => {
    if (sync.value.refusal?.code === "app_older") look(0);
  });
}

/** What the user chose already is no offer; neither is a first installation. */
async function offer(worker: ServiceWorker | null): Promise<void> {
  if (!worker || (await ask(worker, "is this another version?")) !== true) return;
  newest = worker;
  ready.value = true;
}

/**
 * The user agreed: the new version is the one that opens from now on. Other open pages keep the files they came with,
 * and their worker: that opens the new version just as well.
 */
export async function takeUpdate(): Promise<void> {
  if (!newest) return;
  await opened.peek()?.drafts.flush();
  const isWaiting = newest.state === "installed";
  const over = new Promise((done) => navigator.serviceWorker.addEventListener("controllerchange", done));
  const changes = await ask(newest, "open with this");
  if (changes === true && isWaiting) await over; // a page that loads while the workers change places may wait for ever
  location.reload();
}

/** A worker's answer; one that never answers is a worker without one. */
function ask(worker: ServiceWorker, question: string): Promise<unknown> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage(question, [port2]);
  });
}

/** A page is known by its own script: every build's has another name. */
function build(): string {
  return document.querySelector<HTMLScriptElement>("script[type=module][src]")?.getAttribute("src") ?? "";
}
