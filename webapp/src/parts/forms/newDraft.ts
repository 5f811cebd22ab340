/**
 * Drafts of new records. Each has a name of its own, and goes on in the tab it was begun in while that is there: two tabs
 * of one phone never type into one another's record. A killed page lets go of its lock, and the next takes up its draft.
 */
import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import { newId } from "../../garage/write";
import type { Typed } from "./keeping";

/** `page`: which one it is typed in. */
export type Kept = { id: string; typed: Typed; page?: string };

const LOCK = "tarebook-page-";
let own: string | null = null;

/** The name of this page, known to the other tabs for as long as it is there. */
export function thisPage(): string {
  if (own) return own;
  own = newId();
  void navigator.locks?.request(LOCK + own, () => new Promise(() => undefined)).catch(() => undefined);
  return own;
}

export function draftNameOf(kind: string, id: string, isNew: boolean): string {
  return isNew ? `form:${kind}:new:${id}` : `form:${kind}:${id}`;
}

/** A new record of the kind that was begun, not saved, and is typed at in no other tab. */
export async function begunBefore(kind: string): Promise<Kept | null> {
  const names = (await drafts.names()).filter((name) => name.startsWith(`form:${kind}:new:`));
  if (names.length === 0) return null;
  const held = (await navigator.locks?.query())?.held ?? [];
  const alive = new Set(held.map(({ name }) => name));
  for (const name of names.sort()) {
    const kept = await drafts.load<Kept>(name);
    if (kept && !garage.value.byId.has(kept.id) && !alive.has(LOCK + kept.page)) return kept;
  }
  return null;
}
