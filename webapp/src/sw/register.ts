/** The page's side of the service worker: registration, and the question whether to take a new version. */

import { signal, type ReadonlySignal } from "@preact/signals";

/** True when a new version is installed and waits for the user's word. */
export const updateReady: ReadonlySignal<boolean> = signal(false);

/** Registers the worker. Without a secure context the app works, but not from a cold start without the server. */
export async function registerWorker(): Promise<void> {}

/** The user agreed: the new version takes over and the page reloads. */
export function takeUpdate(): void {}
