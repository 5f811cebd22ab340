/** The line that says what was just done and takes it back at one tap; a later way back is each record's history. */
import { useEffect, useState } from "preact/hooks";
import { lastDone } from "../../garage/acts";
import { actNamed, takeBack } from "../../garage/undo";
import { actWords } from "../words/acts";
import { Icon } from "./Icon";
import { TroubleNotice } from "./Notice";
import { useSaving } from "./saving";

const STAYS = 30_000; // ms; what was done stays in the record's history

export function UndoLine() {
  const saving = useSaving();
  const done = lastDone.value;
  const [isHeld, hold] = useState(false);
  useEffect(() => {
    if (!done.length || isHeld) return;
    const hide = setTimeout(() => (lastDone.value = []), STAYS);
    return () => clearTimeout(hide);
  }, [done, isHeld]);
  const acts = done.map((name) => actNamed(name)).filter((act) => act !== null);
  if (!acts.length) return null;
  const [first] = acts;
  const more = acts.filter(({ entry }) => entry.record !== first!.entry.record).length;
  return (
    <div class="undo-line" onFocusIn={() => hold(true)} onFocusOut={() => hold(false)}>
      <span class="said" role="status">
        {actWords(first!.entry, first!.begins)}
        {more > 0 && `, with ${more} more`}
      </span>
      <button
        type="button"
        class="button plain"
        disabled={saving.busy}
        onClick={() => void saving.run(() => takeBack(done))}
      >
        Undo
      </button>
      <button type="button" class="button plain icon-only" aria-label="Close" onClick={() => (lastDone.value = [])}>
        <Icon name="close" />
      </button>
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}
