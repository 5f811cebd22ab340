/** The pairing link or its code, and joining with it; a link that was followed here joins by itself. */
import { useEffect, useState } from "preact/hooks";
import { TextField } from "../../parts/Field";
import { TroubleNotice } from "../../parts/Notice";
import { useSaving } from "../../parts/SaveDock";
import { place, replace } from "../../route";
import { pair, session } from "../../store/session";
import { syncNow } from "../../sync/state";
import { bareCode, codeIn } from "./pairingCode";

export function JoinField() {
  const saving = useSaving();
  const [text, setText] = useState("");
  const code = codeIn(text) ?? bareCode(text);
  const join = (invitation: string) =>
    saving.run(async () => {
      await pair(invitation);
      syncNow();
      replace("#/");
    });
  // A link followed while the app is open changes only the address, which `place` tells of.
  const followed = place.value.path.length ? codeIn(location.hash) : null;
  useEffect(() => {
    if (followed) void join(followed);
  }, [followed]);
  return (
    <>
      <TextField
        label="Pairing link or code"
        value={text}
        onValue={setText}
        most={400}
        hint="A link works once, for ten minutes. Run tarebook pair for a fresh one."
      />
      <TroubleNotice trouble={saving.trouble ?? session.value.trouble ?? null} />
      <button type="button" class="button main" disabled={saving.busy || !code} onClick={() => code && join(code)}>
        {saving.busy ? "Joining…" : "Join"}
      </button>
    </>
  );
}
