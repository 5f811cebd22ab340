/** What the phone says about sync, as one signal. */

import { computed, type ReadonlySignal, signal } from "@preact/signals";

import type { AppError } from "../errors";
import { live } from "../garage/garage";
import { protection } from "../store/protection";
import type { Phase } from "./post";
import { wordsFor } from "./words";

/** `waiting`: records not known to be on the home computer. `refusal`: why the last try did not go through. */
export type SyncState = {
  waiting: number;
  photosWaiting: number;
  phase: Phase;
  lastHeard: string | null;
  refusal: AppError | null;
  words: string[];
};

/** What the station notes down, and nobody else. */
export const noted = {
  phase: signal<Phase>("idle"),
  photosWaiting: signal(0),
  photoShare: signal(0),
  stuck: signal(0),
  photosStuck: signal(0),
  lastHeard: signal<string | null>(null),
  proven: signal<string | null>(null),
  inBackup: signal(false),
  trouble: signal<AppError | null>(null),
};

export const sync: ReadonlySignal<SyncState> = computed(() => {
  const waiting = live.value?.waiting.value ?? 0;
  const photosWaiting = noted.photosWaiting.value;
  const lastHeard = noted.lastHeard.value;
  const refusal = noted.trouble.value;
  const words = wordsFor({
    waiting,
    photosWaiting,
    photoShare: noted.photoShare.value,
    stuck: noted.stuck.value,
    photosStuck: noted.photosStuck.value,
    inBackup: noted.inBackup.value,
    lastHeard,
    failing: refusal !== null,
    protected: protection.value,
  });
  return { waiting, photosWaiting, phase: noted.phase.value, lastHeard, refusal, words };
});

/** Set by the station that is running. */
export const trigger = signal<() => void>(() => undefined);

/** Tries at once, whatever the back-off says. */
export function syncNow(): void {
  trigger.peek()();
}
