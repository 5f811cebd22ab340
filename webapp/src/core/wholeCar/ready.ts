/**
 * What was not seen to before a whole car was weighed, as doubts of its own.
 *
 * A weigh-in that says nothing of it counts as it is: nobody was asked then.
 */

import type { WeighIn } from "../garage/records";

type Point = NonNullable<WeighIn["ready"]>[number];

// Standard deviations, kg: of the whole car, and of a corner in the pattern + − − +. Common practice, no source.
const UNREADY: Readonly<Record<Point, readonly [whole: number, corner: number]>> = {
  zeroed: [1, 0],
  level: [0.5, 2],
  rolled: [0.5, 2],
  pressures: [0, 2],
  clear: [1, 1],
};
export const DIAGONAL: Readonly<Record<string, number>> = { lf: 1, rf: -1, lr: -1, rr: 1 };
export const POINTS = Object.keys(UNREADY) as Point[];

/** Source → kg that what was not done puts into one of so many looks at the car. */
export function unready({ id, ready }: WeighIn, reading: string, looks: number): Record<string, number> {
  const points = POINTS.filter((point) => ready && !ready.includes(point));
  const doubts = points.map((point) => {
    const [whole, corner] = UNREADY[point];
    return [`unready:${point}:${id}`, whole / looks + (DIAGONAL[reading] ?? 0) * corner];
  });
  return Object.fromEntries(doubts);
}
