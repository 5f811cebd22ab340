/** One weigh-in worked out, also when a newer one took its place or it was withdrawn: then as it would have counted. */
import { bookWith, known } from "../../answers";
import { type WholeCar, weighIn } from "../../core/wholeCar/weighIn";
import type { Rec } from "../../journal/types";
import { laidRepeats } from "./laidRepeats";

export function wholeCarOf(rec: Rec<"weigh_in">): WholeCar | null {
  const alone = { ...rec.values, id: rec.id, replaces: null, car: null };
  const name = `${rec.id}~`;
  // Under a name of its own nothing can have replaced it; its error sources keep that name too.
  const laid = bookWith({ weigh_ins: [{ ...alone, id: name }], ...laidRepeats(rec.id, name) }, rec.values.trim);
  return weighIn(laid, name, known.value);
}
