/** Joins this browser to a garage: on the home computer by the link it prints, on a phone by the code it shows. */

import { session } from "../../garage/session";
import { Disclosure } from "../../parts/controls/Disclosure";
import { ButtonLink } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { InstallSteps } from "../../parts/install/InstallSteps";
import { installed } from "../../parts/install/install";
import { JoinField } from "../../parts/joining/JoinField";
import { Rescue } from "../../parts/takeout/Rescue";
import { isHomeComputer, keepsAppsApart } from "../../parts/words/whereabouts";

export function Pairing() {
  const installFirst = keepsAppsApart() && !installed.value;
  return (
    <div class="stack">
      <h1>Join your garage</h1>
      <p>
        What the car weighs now, how sure that is, and how far it stands from the minimum. Records live on this device
        and on your home computer.
      </p>
      {installFirst ? <InstallFirst /> : <JoinHere />}
      {session.value.state === "ready" && (
        <ButtonLink look="wide" label="Go on with the garage that is open here" href="#/car" />
      )}
      {session.value.garage && <Rescue />}
    </div>
  );
}

function JoinHere() {
  return (
    <>
      {isHomeComputer() ? <AtHome /> : <OnAPhone />}
      <JoinField follow />
    </>
  );
}

function AtHome() {
  return (
    <ol>
      <li>
        Where <code>tarebook serve</code> was started, it printed a link. Open that link here, or paste it below.
      </li>
      <li>
        It works once, for five minutes. For a fresh one run <code>tarebook pair --here</code>, with the same{" "}
        <code>--data</code> and <code>--port</code> if <code>serve</code> was given any.
      </li>
    </ol>
  );
}

function OnAPhone() {
  return (
    <ol>
      <li>
        On the home computer, open Tarebook: More, then Devices, then “Add a phone”. Or run <code>tarebook pair</code>.
      </li>
      <li>Scan the square code it shows, or type the short code beside it.</li>
      <li>Say yes on the home computer.</li>
    </ol>
  );
}

/** An iPhone keeps the app and its browser apart: whoever joins in the browser has joined nothing for the app. */
function InstallFirst() {
  return (
    <>
      <Notice sort="caution">
        <p>
          <strong>Install first, then join inside the app.</strong> An iPhone or iPad keeps an installed app's records
          apart from the browser's, and clears the browser's after a week without a visit.
        </p>
      </Notice>
      <InstallSteps />
      <Disclosure title="Join in this browser all the same">
        <OnAPhone />
        <JoinField />
      </Disclosure>
    </>
  );
}
