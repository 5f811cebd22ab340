/** The records cannot be opened: why, and the way out. */
import { describe } from "../../errors";
import { session } from "../../garage/session";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Rescue } from "../../parts/takeout/Rescue";

export function Blocked() {
  return (
    <div class="stack">
      <h1>The records are not open</h1>
      <TroubleNotice trouble={session.value.trouble ?? describe("storage_blocked")} />
      <button type="button" class="button main" onClick={() => location.reload()}>
        Try again
      </button>
      <Rescue />
    </div>
  );
}
