/**
 * The save button in thumb's reach, and what became of the last press: a trouble with what to do, or nothing.
 *
 * "Saved" is never said here on a press; a screen says it when `save()` has resolved.
 */
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { AppError } from "../../generated/errors";
import { TroubleNotice } from "../frame/Notice";
import { showFirstTrouble } from "./firstTrouble";
import { troubleOf } from "./trouble";

export type Saving = { busy: boolean; trouble: AppError | null; run: (work: () => Promise<void>) => Promise<void> };

/** Runs one save at a time and keeps what went wrong. */
export function useSaving(): Saving {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const run = async (work: () => Promise<void>) => {
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

type Props = {
  label: string;
  saving: Saving;
  onSave: () => Promise<void>;
  /** Why saving makes no sense yet, in words; shown when pressed anyway. */
  missing?: string | null;
  children?: ComponentChildren;
};

export function SaveDock({ label, saving, onSave, missing, children }: Props) {
  const [asked, setAsked] = useState(false);
  const press = () => {
    setAsked(!!missing);
    if (missing) showFirstTrouble();
    else void saving.run(onSave);
  };
  return (
    <div class="dock">
      {children}
      {asked && missing && (
        <p class="small" role="alert">
          <strong>{missing}</strong>
        </p>
      )}
      <TroubleNotice trouble={saving.trouble} />
      <button type="button" class="button main" disabled={saving.busy} onClick={press}>
        {saving.busy ? "Saving…" : label}
      </button>
    </div>
  );
}
