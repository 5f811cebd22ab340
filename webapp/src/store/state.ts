/** How far this phone has read, and what it knows of the home computer: one row, moved only together with its data. */

import type { Readable } from "./as_it_is";
import { FIRST_STATE, type State } from "./database";
import type { Store } from "./store";

export async function readState(store: Readable): Promise<State> {
  return (await store.read((db) => db.meta.get("state")))?.value ?? FIRST_STATE;
}

/** Remembers over restarts when the home computer last answered, and when it had last proven a backup. */
export async function rememberHeard(store: Store, heard: string, proven: string | null): Promise<void> {
  await store.write([], async (_db, state) => {
    state.heard = heard;
    state.proven = proven;
  });
}
