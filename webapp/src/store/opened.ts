/** The garage that is open on this page: its store, and who this device is in it. Null before pairing. */

import { signal } from "@preact/signals";

import type { Paired } from "../generated/routes";
import type { Drafts } from "./drafts";
import type { Store } from "./store";

export type Pairing = Paired;
export type Opened = Pairing & { store: Store; drafts: Drafts };

export const opened = signal<Opened | null>(null);
