/** Taking acts back, deleting, and bringing back. */

import { type Act, actBy, actsOn, deleting, takenBack } from "../journal/history";
import { garage } from "./garage";
import { type Change, save } from "./write";

/** What was done to a record, the latest first. */
export function historyOf(record: string, most?: number): Act[] {
  return actsOn(garage.value.folded(), record, most);
}

/** One act as it stands now; null for an entry that does not count. */
export function actNamed(entry: string): Act | null {
  return actBy(garage.value.folded(), entry);
}

/** Takes acts back, all in one save, and so that this can be taken back too. */
export async function takeBack(entries: readonly string[]): Promise<void> {
  const acts = entries.map((name) => actNamed(name)).filter((act) => act !== null);
  const changes = acts.flatMap((act) => takenBack(act, garage.value.hung(act.entry.record)));
  if (changes.length > 0) await save(changes.map((change): Change => ({ ...change, exact: true })));
}

/** The deletions of a record that stand, the latest first. */
export function deletionsOf(record: string): Act[] {
  return historyOf(record).filter(({ entry, stands }) => entry.set.deleted === true && stands.length > 0);
}

/** Gives a deleted record back, with what hung on it. */
export function bringBack(record: string): Promise<void> {
  return takeBack(deletionsOf(record).map(({ entry }) => entry.id));
}

/** Deletes a record with all that is known to hang on it. */
export function deletion(kind: string, record: string): Change {
  return { kind, record, set: deleting(kind, garage.value.hung(record)) };
}
