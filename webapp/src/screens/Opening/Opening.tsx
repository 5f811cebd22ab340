/** Before the garage is open: opening, not paired yet, or kept from opening; each with what to do, and the way out. */
import "./Opening.css";
import type { ComponentChildren } from "preact";
import { waiting } from "../../store/joining";
import { session } from "../../store/session";
import { Notice, TroubleNotice } from "../../parts/Notice";
import { place } from "../../route";
import { joining } from "./join";
import { Joined } from "./Joined";
import { Pairing } from "./Pairing";
import { codeIn } from "./pairingCode";
import { Rescue } from "./Rescue";
import { WaitForYes } from "./WaitForYes";

/** True while there is something to do before any screen: also when a pairing link is followed in an open garage. */
export function isOpening(): boolean {
  return session.value.state !== "ready" || isInvited() || waiting.value !== null || joining.value.joined;
}

function isInvited(): boolean {
  return place.value.path[0]?.startsWith("pair=") === true && codeIn(location.hash) !== null;
}

export function Opening() {
  const { state } = session.value;
  if (waiting.value)
    return (
      <Frame>
        <WaitForYes {...waiting.value} />
      </Frame>
    );
  if (joining.value.joined)
    return (
      <Frame>
        <Joined />
      </Frame>
    );
  return (
    <Frame>
      {state === "opening" && <p role="status">Opening this phone's records…</p>}
      {state === "blocked" && <Blocked />}
      {(state === "unpaired" || state === "ready") && <Pairing />}
    </Frame>
  );
}

function Frame({ children }: { children: ComponentChildren }) {
  return (
    <main class="opening">
      <p class="opening-name">Tarebook</p>
      {children}
    </main>
  );
}

function Blocked() {
  const trouble = session.value.trouble ?? null;
  return (
    <div class="stack">
      <h1>The records are not open</h1>
      {trouble ? (
        <TroubleNotice trouble={trouble} />
      ) : (
        <Notice sort="caution">
          <p>
            <strong>Another tab holds the records open with an older version.</strong>
          </p>
          <p>Close the other Tarebook tabs, then go on here.</p>
        </Notice>
      )}
      <button type="button" class="button main" onClick={() => location.reload()}>
        Try again
      </button>
      <Rescue />
    </div>
  );
}
