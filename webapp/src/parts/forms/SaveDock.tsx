/**
 * The save button in thumb's reach, and what became of the last press: a trouble with what to do, or nothing.
 *
 * "Saved" is never said here on a press; a screen says it when `save()` has resolved.
 */

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { showFirstTrouble } from "./firstTrouble";

type Props = {
  label: string;
  onSave: () => Promise<void>;
  /** Why saving makes no sense yet, in words; shown when pressed anyway. */
  missing?: string | null;
  children?: ComponentChildren;
};

export function SaveDock({ label, onSave, missing, children }: Props) {
  const saving = useSaving();
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
      <Button look="main" label={saving.busy ? "Saving…" : label} disabled={saving.busy} onClick={press} />
    </div>
  );
}
