/**
 * Where what a car carries sits: the fuel at its tank, the driver at the seat, as far as their places are entered.
 *
 * Ballast of a weigh-in is a mass without a place. A place is an error source of its own for each axis (`place:tank:z`),
 * so that fuel that comes out and goes in again shares it. Half-widths are common practice, no source: fuel sinks as it is
 * used and runs to a side.
 */

import type { Car } from "../garage/records";
import { rectangular, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Load } from "./body";
import type { Axis } from "./place";

/** In m, along, across and up. */
const WITHIN = { tank: { x: 0.05, y: 0.05, z: 0.08 }, driver: { x: 0.05, y: 0.03, z: 0.08 } } as const;
export type Aboard = "tank" | "driver" | "ballast";

/** Nothing yet, at the place of the "tank", "driver" or "ballast"; an axis nobody entered is null. */
export function placeAboard(car: Car | null, what: Aboard): Load {
  const arm = (axis: Axis): Uncertain | null => {
    const typed = what === "ballast" ? null : car?.[`${what}_${axis}`];
    if (what === "ballast" || !typed) return null;
    const within = Math.max(WITHIN[what][axis], 0.5 * typed.last_digit);
    return uncertain(typed.value, { [`place:${what}:${axis}`]: rectangular(within) });
  };
  return { mass: uncertain(0), x: arm("x"), y: arm("y"), z: arm("z"), own: 0 };
}
