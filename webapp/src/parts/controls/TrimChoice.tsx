/** For the event or for the road: which jobs count as being in the car. */
import { type Trim, trim } from "../../answers";
import { Choice } from "./Choice";

const TRIMS: { value: Trim; label: string }[] = [
  { value: "event", label: "At the event" },
  { value: "road", label: "On the road" },
];

export function TrimChoice() {
  return <Choice label="Trim" hideLabel value={trim.value} options={TRIMS} onValue={(value) => (trim.value = value)} />;
}
