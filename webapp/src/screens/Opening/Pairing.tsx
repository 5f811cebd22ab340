/** Joins this browser to a garage by the one-time link the home computer prints: followed, pasted, or its code typed. */
import { useEffect, useState } from "preact/hooks";
import { replace } from "../../route";
import { pair, session } from "../../store/session";
import { TextField } from "../../parts/Field";
import { TroubleNotice } from "../../parts/Notice";
import { useSaving } from "../../parts/SaveDock";
import { Rescue } from "./Opening";

export function Pairing() {
  const saving = useSaving();
  const [text, setText] = useState("");
  const join = (code: string) => saving.run(async () => {
    await pair(code);
    replace("#/");
  });
  useEffect(() => {
    const code = codeIn(location.hash);
    if (code) void join(code);
  }, []);
  const code = codeIn(text) ?? bareCode(text);
  const trouble = saving.trouble ?? session.value.trouble ?? null;
  return (
    <div class="stack">
      <h1>Join your garage</h1>
      <p>What the car weighs now, how sure that is, and how far it stands from the minimum. Records live on this device and on your home computer.</p>
      <ol>
        <li>On the home computer, run <code>tarebook serve</code>. It prints a link.</li>
        <li>Open that link here, or paste it below.</li>
      </ol>
      <TextField label="Pairing link or code" value={text} onValue={setText} most={400} hint="A link works once, for ten minutes. Run tarebook pair for a fresh one." />
      <TroubleNotice trouble={trouble} />
      <button type="button" class="button main" disabled={saving.busy || !code} onClick={() => code && join(code)}>
        {saving.busy ? "Joining…" : "Join"}
      </button>
      {session.value.garage && <Rescue />}
    </div>
  );
}

/** The code in a pairing link or in an address hash; null when there is none. */
export function codeIn(text: string): string | null {
  const found = /#\/?pair=([^&\s]+)/.exec(text);
  return found ? decodeURIComponent(found[1]!) : null;
}

/** A code typed by hand: no spaces around it, none inside. */
function bareCode(text: string): string | null {
  const bare = text.replaceAll(/\s/g, "");
  return /^[\w-]{4,80}$/.test(bare) ? bare : null;
}
