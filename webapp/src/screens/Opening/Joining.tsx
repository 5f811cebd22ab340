/** Joining a garage, from the first word to the last: the code, the wait for a yes at home, and what to do then. */

import { joining } from "../../parts/joining/join";
import "./Joining.css";
import { waiting } from "../../garage/joining";
import { Joined } from "./Joined";
import { Pairing } from "./Pairing";
import { WaitForYes } from "./WaitForYes";

export function Joining() {
  if (waiting.value) return <WaitForYes {...waiting.value} />;
  return joining.value.joined ? <Joined /> : <Pairing />;
}
