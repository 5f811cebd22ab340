/** How a weigh-in is called beside a weight. */
import { stand } from "../../answers";
import { dayOf } from "../../parts/weighIn/dayOf";

export { dayOf };
export const weighInName = (weighIn: string): string => `Weigh-in of ${dayOf(weighIn)}`;
export const isOfficial = (weighIn: string): boolean =>
  stand.value.history.find((each) => each.weigh_in === weighIn)?.official === true;
