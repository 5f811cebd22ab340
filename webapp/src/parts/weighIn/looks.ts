/** What each look at a whole car is called: one corner, one axle, or all of it. */
import type { Reading } from "../../core/wholeCar/weighIn";

export const LOOK_WORDS: Readonly<Record<Reading, string>> = {
  lf: "Left front",
  rf: "Right front",
  lr: "Left rear",
  rr: "Right rear",
  front: "Front axle",
  rear: "Rear axle",
  total: "Whole car",
};
