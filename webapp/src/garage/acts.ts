/** What this page did last; `undo` takes it back. */

import { signal } from "@preact/signals";
import { followSaves } from "./saves";

/** The entries of the last save of this page, in order; none once they were taken back or put out of sight. */
export const lastDone = signal<readonly string[]>([]);

/** Called once, at the start. */
export function followActs(): void {
  followSaves(({ entries }) => {
    lastDone.value = entries;
  });
}
