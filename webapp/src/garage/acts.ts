/** What this page did last, and taking acts back. */

import { signal } from "@preact/signals";
import { type Act, deleting, takenBack } from "../journal/history";
import { garage } from "./garage";
import { type Change, followSaves, save } from "./write";

/** The entries of the last save of this page, in order; none once they were taken back or put out of sight. */
export const lastDone = signal<readonly string[]>([]);

/** Called once, at the start. */
export function followActs(): void {
  followSaves(({ entries }) => {
    lastDone.value = entries;
  });
}

/** Takes acts back, all in one save, and so that this can be taken back too. */
export async function takeBack(entries: readonly string[]): Promise<void> {
  const acts = entries.map((name) => garage.value.act(name)).filter((act) => act !== null);
  const changes = acts.flatMap((act) => takenBack(act, garage.value.hung(act.entry.record)));
  if (changes.length > 0) await save(changes.map((change): Change => ({ ...change, exact: true })));
}

/** The deletions of a record that stand, the latest first. */
export function deletionsOf(record: string): Act[] {
  return garage.value.history(record).filter(({ entry, stands }) => entry.set.deleted === true && stands.length > 0);
}

/** Gives a deleted record back, with what hung on it. */
export function bringBack(record: string): Promise<void> {
  return takeBack(deletionsOf(record).map(({ entry }) => entry.id));
}

/** Deletes a record with all that is known to hang on it. */
export function deletion(kind: string, record: string): Change {
  return { kind, record, set: deleting(kind, garage.value.hung(record)) };
}
