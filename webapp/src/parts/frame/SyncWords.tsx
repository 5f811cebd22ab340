/** Where the records are, in words, on every screen; tapping it opens the whole account. */

import { to } from "../../route";
import { sync } from "../../sync/state";

export function SyncWords() {
  return (
    <a class="sync-words" href={to("records")}>
      <span role="status" aria-live="polite">
        {sync.value.words[0] ?? ""}
      </span>
    </a>
  );
}
