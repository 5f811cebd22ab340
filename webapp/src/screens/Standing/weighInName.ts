/** How a weigh-in is called beside a weight. */
import { stand } from "../../answers";
import { sayMoment } from "../../parts/words/moments";

export const dayOf = (weighIn: string): string => sayMoment(past(weighIn)?.at) || "unknown date";
export const weighInName = (weighIn: string): string => `Weigh-in of ${dayOf(weighIn)}`;
export const isOfficial = (weighIn: string): boolean => past(weighIn)?.official === true;

function past(weighIn: string) {
  return stand.value.history.find((each) => each.weigh_in === weighIn);
}
