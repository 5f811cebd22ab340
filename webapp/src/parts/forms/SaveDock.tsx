/**
 * The save button in thumb's reach, and what became of the last press: a trouble with what to do, or nothing.
 *
 * "Saved" is never said here on a press; a screen says it when `save()` has resolved.
 */
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { TroubleNotice } from "../frame/Notice";
import { showFirstTrouble } from "./firstTrouble";
import type { Saving } from "./saving";

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
