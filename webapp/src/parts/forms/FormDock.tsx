/**
 * The end of a form: what is still missing, what went wrong, a way to delete; and Save where the form is of a fact.
 *
 * Any other form keeps its fields by itself: of a new record the dock has the button that leads on.
 */

import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { garage } from "../../garage/garage";
import { bringBack } from "../../garage/undo";
import { rename, replace } from "../../route";
import { Button } from "../frame/Button";
import { Notice, TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { History } from "../history/History";
import type { Form } from "./form";

type Props = {
  form: Form;
  /** On the button of a new record, or of a fact. */
  label?: string;
  /** A new record's own address, once it is there. */
  next?: (id: string) => string;
  remove?: { label: string; next: string };
  /** Says what is still missing, or null. */
  missing?: string | null;
  /** Closes a form that is open in a list. */
  onDone?: () => void;
  /** In place of keeping a fact at once. */
  onSave?: () => Promise<void>;
};

export function FormDock(props: Props) {
  return props.form.isFact ? <FactDock {...props} /> : <KeptDock {...props} />;
}

function KeptDock({ form, label = "Done", next, remove, missing, onDone }: Props) {
  const [asked, setAsked] = useState(false);
  const wasNew = useRef(form.isNew);
  const opened = useRef(location.hash); // who has gone on meanwhile is not called back
  // At once, before anybody can go on from what is drawn.
  useLayoutEffect(() => {
    if (wasNew.current && !form.isNew && next && location.hash === opened.current) rename(next(form.id));
    wasNew.current = form.isNew;
  }, [form.isNew]);
  const removed = async () => {
    const at = location.hash;
    if (!(await form.remove())) return;
    if (onDone) onDone();
    else if (remove && location.hash === at) replace(remove.next);
  };
  const press = async () => {
    setAsked(true);
    if ((await form.save()) && onDone) onDone();
  };
  const isGone = garage.value.byId.get(form.id)?.deleted ?? false;
  const hasButton = form.isNew || onDone;
  const wanting = missing && (asked || !form.isNew) ? missing : null;
  return (
    <>
      {!form.isNew && <History of={form.id} />}
      {isGone && <Gone record={form.id} />}
      {remove && !form.isNew && !isGone && <Button look="plain" label={remove.label} onClick={() => void removed()} />}
      {(hasButton || form.trouble || wanting) && (
        <div class="dock">
          <TroubleNotice trouble={form.trouble} />
          {wanting && (
            <p class="small" role="status">
              <strong>{wanting}</strong>
            </p>
          )}
          {hasButton && <Button look="main" label={label} onClick={() => void press()} />}
        </div>
      )}
    </>
  );
}

function Gone({ record }: { record: string }) {
  const saving = useSaving();
  return (
    <Notice sort="caution">
      <p>
        <strong>Deleted: it does not count.</strong>
      </p>
      <Button label="Bring it back" onClick={() => void saving.run(() => bringBack(record))} />
      <TroubleNotice trouble={saving.trouble} />
    </Notice>
  );
}

function FactDock({ form, label = "Save", missing, onSave }: Props) {
  const [busy, setBusy] = useState(false);
  const save = async () => {
    setBusy(true);
    await (onSave ? onSave() : form.save());
    setBusy(false);
  };
  const wanting = missing ?? form.unreadable;
  return (
    <div class="dock">
      <TroubleNotice trouble={form.trouble} />
      {form.saved && !form.changed && <Notice sort="saved">Saved on this phone.</Notice>}
      {wanting && (
        <p class="small" role="status">
          <strong>{wanting}</strong>
        </p>
      )}
      <Button look="main" label={label} disabled={busy || !!wanting} onClick={() => void save()} />
    </div>
  );
}
