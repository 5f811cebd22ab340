/** Whether the browser has promised not to clear this phone's storage. It is asked once something is worth keeping. */

import { type ReadonlySignal, signal } from "@preact/signals";

const promised = signal<boolean | null>(null);

/** Null: this browser does not say. */
export const protection: ReadonlySignal<boolean | null> = promised;

export async function lookAtProtection(): Promise<void> {
  promised.value =
    (await manager()
      ?.persisted?.()
      .catch(() => null)) ?? null;
}

/** Asks for the promise; the browser may refuse, or ask the person. */
export async function askForProtection(): Promise<void> {
  if (promised.value === true) return;
  await manager()
    ?.persist?.()
    .catch(() => false);
  await lookAtProtection();
}

/** Bytes used and bytes there are, where the browser says. */
export async function storageRoom(): Promise<{ used: number; room: number } | null> {
  const { usage, quota } =
    (await manager()
      ?.estimate?.()
      .catch(() => null)) ?? {};
  return usage === undefined || quota === undefined ? null : { used: usage, room: quota };
}

/** WebKitGTK has no storage manager at all. */
function manager(): Partial<StorageManager> | undefined {
  return navigator.storage;
}
