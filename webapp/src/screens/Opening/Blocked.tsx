/** The records cannot be opened: why, and the way out. */

import { describe } from "../../errors";
import { session } from "../../garage/session";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Rescue } from "../../parts/takeout/Rescue";

export function Blocked() {
  return (
    <div class="stack">
      <h1>The records are not open</h1>
      <TroubleNotice trouble={session.value.trouble ?? describe("storage_blocked")} />
      <Button look="main" label="Try again" onClick={() => location.reload()} />
      <Rescue />
    </div>
  );
}
