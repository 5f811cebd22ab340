/** Joins this browser to a garage by the one-time link the home computer prints: followed, pasted, or typed. */
import { session } from "../../store/session";
import { JoinField } from "./JoinField";
import { Rescue } from "./Rescue";

export function Pairing() {
  return (
    <div class="stack">
      <h1>Join your garage</h1>
      <p>
        What the car weighs now, how sure that is, and how far it stands from the minimum. Records live on this device
        and on your home computer.
      </p>
      <ol>
        <li>
          On the home computer, run <code>tarebook serve</code>. It prints a link.
        </li>
        <li>Open that link here, or paste it below.</li>
      </ol>
      <JoinField />
      {session.value.state === "ready" && (
        <a class="button wide" href="#/car">
          Go on with the garage that is open here
        </a>
      )}
      {session.value.garage && <Rescue />}
    </div>
  );
}
