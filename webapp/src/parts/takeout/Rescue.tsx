/** Everything on the phone as one file, even when nothing else works. */

import { useState } from "preact/hooks";
import { exportAll } from "../../store/takeout";
import { Button } from "../frame/Button";
import { Notice, TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { handOver } from "./handOver";

export function Rescue({ label = "Export everything on this phone" }: { label?: string }) {
  const saving = useSaving();
  const [done, setDone] = useState<string | null>(null);
  const run = () => saving.run(async () => setDone(await handOver(await exportAll())));
  return (
    <div class="stack">
      <Button look="wide" label={saving.busy ? "Putting it together…" : label} disabled={saving.busy} onClick={run} />
      <TroubleNotice trouble={saving.trouble} />
      {done && <Notice sort="saved">{done}</Notice>}
    </div>
  );
}
