/** The page's side of the service worker: registration, and the question whether to take a new version. */

import { signal, type ReadonlySignal } from "@preact/signals";

const ready = signal(false);

/** True when a new version is installed and waits for the user's word. */
export const updateReady: ReadonlySignal<boolean> = ready;

let waiting: ServiceWorker | null = null;

/** How often a page that stays open looks for a new version. */
const EVERY = 3_600_000;

/**
 * Registers the worker. Where there is none (plain http to another computer, say) the app works, but not from a cold
 * start without the server.
 */
export async function registerWorker(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
    follow(registration);
    setInterval(() => void registration.update().catch(() => undefined), EVERY);
  } catch {
    // No worker, no cold start; nothing else depends on it.
  }
}

function follow(registration: ServiceWorkerRegistration): void {
  offer(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => coming.state === "installed" && offer(registration.waiting));
  });
  // The worker asks which build each open page came with, and keeps that build's files.
  navigator.serviceWorker.addEventListener("message", ({ data, ports }) => {
    if (data === "which build?") ports[0]?.postMessage(build());
  });
  navigator.serviceWorker.startMessages();
  void navigator.serviceWorker.ready.then(({ active }) => active?.postMessage("sweep"));
}

/** A first installation is no update: there is nothing to replace. */
function offer(worker: ServiceWorker | null): void {
  if (!worker || !navigator.serviceWorker.controller) return;
  waiting = worker;
  ready.value = true;
}

/** The user agreed: the new version takes over and this page reloads. Other open pages keep the files they came with. */
export function takeUpdate(): void {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting?.postMessage("take over");
}

/** A page is known by its own script: every build's has another name. */
function build(): string {
  return document.querySelector<HTMLScriptElement>("script[type=module][src]")?.getAttribute("src") ?? "";
}
