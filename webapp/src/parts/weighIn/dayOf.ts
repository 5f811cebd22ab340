/** The day of a weigh-in, as it is said. */
import { stand } from "../../answers";
import { sayMoment } from "../words/moments";

export function dayOf(weighIn: string | undefined): string {
  const past = stand.value.history.find(({ weigh_in }) => weigh_in === weighIn);
  return sayMoment(past?.at) || "unknown date";
}
