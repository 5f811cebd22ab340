/**
 * What was not seen to before a whole car was weighed, as doubts of its own.
 *
 * A weigh-in that says nothing of it counts as it is: nobody was asked then. A zero that was not set stays as it was
 * since somebody set it last: each pad has its own, and every weigh-in on that scale until then shares them.
 */

import { order } from "../garage/order";
import type { Garage, WeighIn } from "../garage/records";

type Point = NonNullable<WeighIn["ready"]>[number];

// Standard deviations, kg: of the whole car, and of a corner in the pattern + − − +. Common practice, no source.
const UNREADY: Readonly<Record<Exclude<Point, "zeroed">, readonly [whole: number, corner: number]>> = {
  level: [0.5, 2],
  rolled: [0.5, 2],
  pressures: [0, 2],
  clear: [1, 1],
};
const ZERO = 2; // kg of the whole car, standard deviation, of a zero not set: common practice, no source
export const DIAGONAL: Readonly<Record<string, number>> = { lf: 1, rf: -1, lr: -1, rr: 1 };
export const POINTS = ["zeroed", ...Object.keys(UNREADY)] as Point[];

/** Source → kg that what was not done puts into one of so many looks at the car. */
export function unready(garage: Garage, record: WeighIn, reading: string, looks: number): Record<string, number> {
  const { id, ready, scale } = record;
  const doubts = POINTS.filter((point) => ready && !ready.includes(point)).map((point) => {
    if (point === "zeroed")
      return [`zero:${scale ?? id}:${reading}:${lastSet(garage, record)}`, ZERO / Math.sqrt(looks)];
    const [whole, corner] = UNREADY[point];
    return [`unready:${point}:${id}`, whole / looks + (DIAGONAL[reading] ?? 0) * corner];
  });
  return Object.fromEntries(doubts);
}

/** The last weigh-in before this on the same scale for which its zero was set. */
function lastSet(garage: Garage, { id, at, scale }: WeighIn): string {
  if (!at) return "";
  let [last, found] = ["", ""];
  for (const each of garage.weigh_ins.values()) {
    if (each.scale !== scale || !each.at || !each.ready?.includes("zeroed")) continue;
    const isBefore = (order(each.at, at) || order(each.id, id)) < 0;
    if (isBefore && (order(each.at, last) || order(each.id, found)) > 0) [last, found] = [each.at, each.id];
  }
  return found;
}
