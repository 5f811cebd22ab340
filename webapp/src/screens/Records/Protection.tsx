/** Whether the browser may throw the phone's records away when it runs short, and what to do about that. */
import { useEffect, useState } from "preact/hooks";
import { installed } from "../../parts/install";
import { Notice } from "../../parts/Notice";
import { to } from "../../route";
import { askForProtection, lookAtProtection, protection, storageRoom } from "../../store/protection";

export function Protection() {
  const [used, setUsed] = useState<number | null>(null);
  useEffect(() => {
    void lookAtProtection();
    void storageRoom().then((room) => setUsed(room?.used ?? null));
  }, []);
  const isSafe = protection.value === true;
  return (
    <Notice sort={isSafe ? "plain" : "caution"}>
      <p>
        {isSafe
          ? "The browser has promised to keep this app's storage."
          : "The browser may clear this app's storage when the phone runs short."}
      </p>
      {used !== null && <p class="small quiet num">{Math.max(1, Math.round(used / 1e6))} MB used on this phone.</p>}
      {protection.value === false && <Asking />}
      {!isSafe && !installed.value && (
        <a class="button plain" href={to("devices")}>
          Install to the home screen
        </a>
      )}
      <p class="small">Deleting the app or its data destroys what is on this phone only.</p>
    </Notice>
  );
}

function Asking() {
  const [asked, setAsked] = useState(false);
  const ask = () => askForProtection().then(() => setAsked(true));
  if (!asked)
    return (
      <button type="button" class="button" onClick={() => void ask()}>
        Ask the browser to protect it
      </button>
    );
  const instead = installed.value
    ? "Open the app often, and export now and then."
    : "Installing to the home screen protects it.";
  return <p>The browser said no. {instead}</p>;
}
