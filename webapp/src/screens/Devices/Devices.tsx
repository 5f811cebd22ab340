/** The app on this device, and the others of the garage: pairing, taking one off the list, installing, new versions. */
import "./Devices.css";
import { canInstall, install, installed } from "../../parts/install";
import { Notice } from "../../parts/Notice";
import { Screen, Section } from "../../parts/Screen";
import { to } from "../../route";
import { sync } from "../../sync/state";
import { takeUpdate, updateReady } from "../../sync/update";
import { JoinField } from "../Opening/JoinField";
import { DeviceList } from "./DeviceList";

export function Devices() {
  return (
    <Screen title="Devices" back={to("more")}>
      <NewVersion />
      <JoinAgain />
      <Section title="On this device">
        <Installing />
      </Section>
      <Section title="Devices of the garage">
        <DeviceList />
      </Section>
      <Section title="Add a device">
        <AddDevice />
      </Section>
    </Screen>
  );
}

function NewVersion() {
  if (!updateReady.value) return <p class="small quiet">This is the newest version this device has heard of.</p>;
  return (
    <Notice>
      <p>
        <strong>A new version is ready.</strong> Records and half-typed forms stay as they are.
      </p>
      <button type="button" class="button" onClick={takeUpdate}>
        Use it now
      </button>
    </Notice>
  );
}

/** Taken off the list, or unknown to the home computer: nothing here is lost, and a fresh link joins again. */
function JoinAgain() {
  const { refusal } = sync.value;
  if (refusal?.code !== "revoked" && refusal?.code !== "unpaired") return null;
  return (
    <Section title="Join again">
      <div class="stack">
        <p>
          <strong>{refusal.sentence}</strong> {refusal.do}
        </p>
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
      {canInstall.value ? (
        <button type="button" class="button wide" onClick={() => void install()}>
          Install to the home screen
        </button>
      ) : (
        <ByHand />
      )}
    </div>
  );
}

/** Browsers that make no offer have the same thing in a menu. */
function ByHand() {
  return (
    <ul class="by-hand small">
      <li>
        <strong>iPhone, iPad:</strong> Share, then “Add to Home Screen”. The installed app keeps its own records: pair
        inside it.
      </li>
      <li>
        <strong>Android:</strong> the browser's menu, then “Add to home screen” or “Install app”.
      </li>
      <li>
        <strong>Computer:</strong> the small install sign in the address bar, where the browser has one.
      </li>
    </ul>
  );
}

function AddDevice() {
  return (
    <ol class="by-hand">
      <li>
        On the home computer, run <code>tarebook pair</code>. It prints a link that works once, for ten minutes.
      </li>
      <li>Open the link in the browser that is to join.</li>
      <li>From then on it works without the home computer, and hands its records over whenever it is in reach.</li>
    </ol>
  );
}
