/** The end of a form: save in thumb's reach, what went wrong, that it was saved, and a guarded way to delete. */

import { useState } from "preact/hooks";
import type { NewPhoto } from "../../garage/write";
import { replace } from "../../route";
import { Button } from "../frame/Button";
import { Notice, TroubleNotice } from "../frame/Notice";
import type { Form } from "./form";

type Props = {
  form: Form;
  photos?: NewPhoto[];
  label?: string;
  /** Where to go once saved or deleted; without it the form stays open and says it was saved. */
  next?: (id: string) => string;
  remove?: { label: string; warning: string; next: string };
  /** Says what is still missing, or null when it can be saved. */
  missing?: string | null;
  /** Work that belongs to the same save, done once the record is in. */
  after?: (id: string) => Promise<void>;
};

export function FormDock({ form, photos = [], label = "Save", next, remove, missing, after }: Props) {
  const [busy, setBusy] = useState(false);
  const save = async () => {
    setBusy(true);
    const id = await form.save(photos);
    if (id && after) await after(id);
    setBusy(false);
    if (id && next) replace(next(id));
  };
  const wanting = missing ?? form.unreadable;
  const nothing = !form.changed && !photos.length && !form.isNew;
  const isQuiet = nothing && !form.saved && !form.trouble; // a screen that is only read needs no save button
  return (
    <>
      {remove && !form.isNew && <Remove form={form} {...remove} />}
      {!isQuiet && (
        <div class="dock">
          <TroubleNotice trouble={form.trouble} />
          {form.saved && nothing && <Notice sort="saved">Saved on this phone.</Notice>}
          {wanting && (
            <p class="small" role="status">
              <strong>{wanting}</strong>
            </p>
          )}
          {!nothing && <Button look="main" label={label} disabled={busy || !!wanting} onClick={() => void save()} />}
        </div>
      )}
    </>
  );
}

function Remove({ form, label, warning, next }: { form: Form; label: string; warning: string; next: string }) {
  const [asked, setAsked] = useState(false);
  if (!asked) return <Button look="plain" label={label} onClick={() => setAsked(true)} />;
  return (
    <Notice sort="caution">
      <p>{warning}</p>
      <div class="pair">
        <Button label="Keep it" onClick={() => setAsked(false)} />
        <Button label={label} onClick={() => void form.remove().then((done) => done && replace(next))} />
      </div>
    </Notice>
  );
}
