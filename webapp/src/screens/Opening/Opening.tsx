/** Before the garage is open: opening, not paired yet, or kept from opening; each with what to do, and the way out. */
import { useState } from "preact/hooks";
import "./Opening.css";
import { session } from "../../store/session";
import { exportAll } from "../../store/takeout";
import { Notice, TroubleNotice } from "../../parts/Notice";
import { useSaving } from "../../parts/SaveDock";
import { handOver } from "../Records/handOver";
import { Pairing } from "./Pairing";

export function Opening() {
  return (
    <main class="opening">
      <p class="opening-name">Tarebook</p>
      {STATES[session.value.state as keyof typeof STATES]?.()}
    </main>
  );
}

const STATES = {
  opening: () => <p role="status">Opening this phone's records…</p>,
  unpaired: () => <Pairing />,
  blocked: () => <Blocked />,
};

function Blocked() {
  const trouble = session.value.trouble ?? null;
  return (
    <div class="stack">
      <h1>The records are not open</h1>
      {trouble ? <TroubleNotice trouble={trouble} /> : (
        <Notice sort="caution">
          <p><strong>Another tab holds the records open with an older version.</strong></p>
          <p>Close the other Tarebook tabs, then go on here.</p>
        </Notice>
      )}
      <button type="button" class="button main" onClick={() => location.reload()}>Try again</button>
      <Rescue />
    </div>
  );
}

/** Everything on the phone as one file, even when nothing else works. */
export function Rescue() {
  const saving = useSaving();
  const [done, setDone] = useState<string | null>(null);
  return (
    <div class="stack">
      <button type="button" class="button wide" disabled={saving.busy} onClick={() => saving.run(async () => setDone(await handOver(await exportAll())))}>
        Export everything on this phone
      </button>
      <TroubleNotice trouble={saving.trouble} />
      {done && <Notice sort="saved">{done}</Notice>}
    </div>
  );
}
