/** Who this browser is: paired to which garage, as which device. */

import { signal, type ReadonlySignal } from "@preact/signals";

export type Session = { state: "unpaired" | "ready" | "opening" | "blocked"; garage?: string; device?: string; demo?: boolean };

export const session: ReadonlySignal<Session> = signal<Session>({ state: "opening" });

/** Pairs this browser by a one-time code (null: the demo, which asks none). Rejects with AppError. */
export async function pair(code: string | null): Promise<void> {
  throw new Error(`not filled yet: ${code ?? ""}`);
}
