/** The total of a weigh-in in a few words, for lists. */
import { say, stand } from "../../answers";
import type { Rec } from "../../journal/types";
import { wholeCarOf } from "./wholeCar";

/** As the car stood on the scales; a dash when a reading is missing. */
export function totalWords(rec: Rec<"weigh_in">): string {
  const counted = stand.value.history.find((past) => past.weigh_in === rec.id);
  const total = counted ? counted.total : wholeCarOf(rec)?.loads.loads.total;
  return total ? say(total) : "—";
}
