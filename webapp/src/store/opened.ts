/** The garage that is open on this page: its store, and who this device is in it. Null before pairing. */

import { signal } from "@preact/signals";

import type { Drafts } from "./drafts";
import type { Store } from "./store";

export type Pairing = { garage: string; device: string; token: string; demo: boolean; name: string };
export type Opened = Pairing & { store: Store; drafts: Drafts };

export const opened = signal<Opened | null>(null);
