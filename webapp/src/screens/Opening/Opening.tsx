/** Before the garage is open: opening, not paired yet, or kept from opening; each with what to do, and the way out. */
import "./Opening.css";
import type { ComponentChildren } from "preact";
import { waiting } from "../../garage/joining";
import { session } from "../../garage/session";
import { Loaded } from "../../parts/frame/Loaded";
import { joining } from "../../parts/joining/join";
import { codeIn } from "../../parts/joining/pairingCode";
import { place } from "../../route";

/** True while there is something to do before any screen: also when a pairing link is followed in an open garage. */
export function isOpening(): boolean {
  return session.value.state !== "ready" || isInvited() || waiting.value !== null || joining.value.joined;
}

function isInvited(): boolean {
  return place.value.path[0]?.startsWith("pair=") === true && codeIn(location.hash) !== null;
}

export function Opening() {
  const { state } = session.value;
  if (waiting.value || joining.value.joined || state === "unpaired" || state === "ready")
    return (
      <Frame>
        <Joining />
      </Frame>
    );
  return (
    <Frame>
      {state === "opening" && <p role="status">Opening this phone's records…</p>}
      {state === "blocked" && <Loaded load={() => import("./Blocked")} draw={({ Blocked }) => <Blocked />} />}
    </Frame>
  );
}

/** Done once in a phone's life: a file of its own, that no other start waits for. */
function Joining() {
  return <Loaded load={() => import("./Joining")} draw={({ Joining }) => <Joining />} />;
}

function Frame({ children }: { children: ComponentChildren }) {
  return (
    <main class="opening">
      <p class="opening-name">Tarebook</p>
      {children}
    </main>
  );
}
