/** Saving from a screen: one save at a time, and what became of the last. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { troubleOf } from "./trouble";

export type Saving = { busy: boolean; trouble: AppError | null; run: (work: () => Promise<unknown>) => Promise<void> };

/** Runs one save at a time and keeps what went wrong. */
export function useSaving(): Saving {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const run = async (work: () => Promise<unknown>) => {
    if (busy) return;
    setBusy(true);
    setTrouble(null);
    try {
      await work();
    } catch (error) {
      setTrouble(troubleOf(error));
    } finally {
      setBusy(false);
    }
  };
  return { busy, trouble, run };
}
