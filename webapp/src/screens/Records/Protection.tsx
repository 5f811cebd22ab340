/** Whether the browser may throw the phone's records away when it runs short, and what to do about that. */

import { useEffect, useState } from "preact/hooks";
import { Button, ButtonLink } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { installed } from "../../parts/install/install";
import { to } from "../../route";
import { askForProtection, lookAtProtection, protection, storageRoom } from "../../store/protection";

export function Protection() {
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    void lookAtProtection();
    void storageRoom().then(setRoom);
  }, []);
  const isSafe = protection.value === true;
  return (
    <Notice sort={isSafe ? "plain" : "caution"}>
      <p>
        {isSafe
          ? "The browser has promised to keep this app's storage."
          : "The browser may clear this app's storage when the phone runs short."}
      </p>
      <p class="small quiet">{room ? fullness(room) : "This browser does not say how full its storage is."}</p>
      {protection.value === false && <Asking />}
      {!isSafe && !installed.value && (
        <ButtonLink look="plain" label="Install to the home screen" href={to("devices")} />
      )}
      <p class="small">Deleting the app or its data destroys what is on this phone only.</p>
    </Notice>
  );
}

type Room = { used: number; room: number };

/** How full the storage is, in the megabytes and gigabytes that phones themselves count in. */
function fullness({ used, room }: Room): string {
  const share = Math.round((100 * used) / Math.max(1, room));
  const part = share < 1 ? "less than 1 %" : `${share} %`;
  return `${sayBytes(used)} used on this phone, ${part} of the ${sayBytes(room)} the browser allows.`;
}

function sayBytes(bytes: number): string {
  return bytes >= 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : `${Math.max(1, Math.round(bytes / 1e6))} MB`;
}

function Asking() {
  const [asked, setAsked] = useState(false);
  const ask = () => askForProtection().then(() => setAsked(true));
  if (!asked) return <Button label="Ask the browser to protect it" onClick={() => void ask()} />;
  const instead = installed.value
    ? "Open the app often, and export now and then."
    : "Installing to the home screen protects it.";
  return <p>The browser said no. {instead}</p>;
}
