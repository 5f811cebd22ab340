/** What a run of sync works with. Everything that reaches outside is handed in, so that tests can be the outside. */

import type { LiveGarage } from "../garage/garage";
import type { Store } from "../store/store";
import type { Wire } from "../wire/request";

export type Phase = "idle" | "pushing" | "pulling" | "photos";

export type Post = {
  wire: Wire;
  store: Store;
  live: LiveGarage;
  now: () => Date;
  /** Told of every phase as it begins, and of every answer of the home computer. */
  onPhase: (phase: Phase) => void;
  onHeard: () => void;
  /** When the home computer last proved a backup of all it had; null: never. */
  onProven: (proven: string | null) => void;
  /** What people call the devices of the garage, by their ids. */
  onNames: (names: Readonly<Record<string, string>>) => void;
  /** How much of the photos that waited when this run came to them is over there: 0 to 1. */
  onShare: (share: number) => void;
  /** Entries that made the home computer fail, and until when (milliseconds) they stand back for the others. */
  distrusted: Map<string, { until: number; tries: number }>;
  /** How many entries the next batch may have. */
  batch: number;
  /** When the home computer last said that it has a photo (milliseconds), by hash. */
  confirmed: Map<string, number>;
};

export const PROTOCOL = 1;
export const MOST_ENTRIES = 500;

export function newPost(outside: Omit<Post, "distrusted" | "batch" | "confirmed">): Post {
  return { ...outside, distrusted: new Map(), batch: MOST_ENTRIES, confirmed: new Map() };
}
