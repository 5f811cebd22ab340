/** Saving: a list of changes becomes entries, written in one strict transaction. */

import type { Value } from "./types";

export type { NewPhoto } from "../store/photos";
import type { NewPhoto } from "../store/photos";

/** One change to one record. Without `record` a new one is made; without `base` the record's heads of now are taken. */
export type Change = { kind: string; record?: string; set: Record<string, Value>; base?: string[] };

/** A new id, UUIDv7: for a record that photos or other changes of the same save must name. */
export function newId(): string {
  return crypto.randomUUID();
}

/**
 * Saves changes and photos together: all or none. Resolves with the record id of each change, in order, and only
 * after the transaction's complete event. Rejects with AppError.
 */
export async function save(changes: Change[], photos: NewPhoto[] = []): Promise<string[]> {
  throw new Error(`not filled yet: ${changes.length} ${photos.length}`);
}
