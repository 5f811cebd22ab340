/** What the phone says about sync, as one signal. */

import { signal, type ReadonlySignal } from "@preact/signals";

import type { AppError } from "../generated/errors";

export type SyncState = {
  waiting: number;
  photosWaiting: number;
  phase: "idle" | "pushing" | "pulling" | "photos";
  lastHeard: string | null;
  refusal: AppError | null;
  words: string[];
};

export const sync: ReadonlySignal<SyncState> = signal<SyncState>({
  waiting: 0,
  photosWaiting: 0,
  phase: "idle",
  lastHeard: null,
  refusal: null,
  words: [],
});

/** Tries at once, whatever the back-off says. */
export function syncNow(): void {}
