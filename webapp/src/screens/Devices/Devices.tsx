/** The app on this device, and the others of the garage: pairing, taking one off the list, installing, new versions. */
import { useState } from "preact/hooks";
import "./Devices.css";
import { Screen, Section } from "../../parts/frame/Screen";
import { InstallSteps } from "../../parts/install/InstallSteps";
import { installed } from "../../parts/install/install";
import { JoinField } from "../../parts/joining/JoinField";
import { Rescue } from "../../parts/takeout/Rescue";
import { to } from "../../route";
import { sync } from "../../sync/state";
import { updateReady } from "../../sync/update";
import { AddPhone } from "./AddPhone";
import { DeviceList } from "./DeviceList";
import { Joins } from "./Joins";
import { NewVersion } from "./NewVersion";
import { useDevices } from "./useDevices";

export function Devices() {
  const devices = useDevices();
  const [codesUsed, setCodesUsed] = useState(0);
  const isRefused = ["revoked", "unpaired"].includes(sync.value.refusal?.code ?? "");
  return (
    <Screen title="Devices" back={to("more")}>
      {devices.home && <Joins onDecided={() => setCodesUsed(codesUsed + 1)} />}
      <NewVersion />
      {isRefused && <JoinAgain />}
      <Section title="On this device">
        <Installing />
        {!updateReady.value && <p class="small quiet">This is the newest version this device has heard of.</p>}
      </Section>
      {!isRefused && (
        <>
          <Section title="Devices of the garage">
            <DeviceList {...devices} />
          </Section>
          <Section title="Add a device">{devices.home ? <AddPhone key={codesUsed} /> : <AddByHand />}</Section>
        </>
      )}
    </Screen>
  );
}

/** Taken off the list, or unknown to the home computer: nothing here is lost, and a fresh link joins again. */
function JoinAgain() {
  const { refusal } = sync.value;
  return (
    <Section title="Join again">
      <div class="stack">
        <p>
          <strong>{refusal?.sentence}</strong> {refusal?.do}
        </p>
        <Rescue />
        <JoinField />
      </div>
    </Section>
  );
}

function Installing() {
  if (installed.value) return <p>Installed: it opens without the home computer and without signal.</p>;
  return (
    <div class="stack">
      <p>Installed to the home screen, it opens without signal and the browser does not clear its records.</p>
      <InstallSteps />
    </div>
  );
}

/** Only a browser on the home computer itself can let others in. */
function AddByHand() {
  return (
    <ol class="by-hand">
      <li>
        On the home computer, open this page in its own browser and press “Add a phone”, or run{" "}
        <code>tarebook pair</code>.
      </li>
      <li>Scan or type on the new phone what the home computer shows, and say yes there.</li>
      <li>From then on it works without the home computer, and hands its records over whenever it is in reach.</li>
    </ol>
  );
}
