/** Who hears of every save of this page: apart from the saving itself, which the first screen does without. */

/** What one save wrote: the entries, in the order of its changes. */
export type Saved = { records: string[]; entries: string[] };

const followers = new Set<(saved: Saved) => void>();

/** Called after every save of this page, so that sync tries at once, and what was done can be said and taken back. */
export function followSaves(follower: (saved: Saved) => void): void {
  followers.add(follower);
}

export function tellSaved(saved: Saved): void {
  for (const follower of followers) follower(saved);
}
