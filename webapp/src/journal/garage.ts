/** The garage as a signal: what every screen reads. It changes only after a transaction has completed. */

import { signal, type ReadonlySignal } from "@preact/signals";

import type { Garage } from "./types";

export type { AsideEntry, Garage, Head, Rec, Value } from "./types";

const EMPTY: Garage = { byId: new Map(), of: () => [], aside: [] };

export const garage: ReadonlySignal<Garage> = signal(EMPTY);
