/**
 * How much load moves between the sides in a turn and between the axles under power or brakes.
 *
 *     lateral        m a h / t     kilograms from the inner to the outer wheels of both axles; a in g, t the mean track
 *     longitudinal   m a h / L     kilograms from one axle to the other
 *     stability      t / (2 h)     the lateral a, in g, at which the inner wheels of a rigid car carry nothing
 *
 * How the lateral total is shared between the axles is a matter of roll stiffness and is not told here. Only what the
 * centre's height, the mass and the car's own lengths set is: that is what taking weight out changes.
 * [NHTSA static stability factor; R. N. Jazar, Vehicle Dynamics, eq. 2.87 and 2.88]
 */

import type { Car } from "../garage/records";
import { toNumber } from "../numbers/ratio";
import { divide, multiply, scale, type Uncertain } from "../numbers/uncertain";
import type { Body } from "./body";

/** Watts in one. hp: 550 foot-pounds force a second; PS: 75 metre-kilograms force a second; both exact. */
export const POWER_UNITS = { kW: 1000, hp: 745.6998715822702, PS: 735.49875 } as const;

/**
 * `lateral`, `longitudinal` in kg; `stability`: static stability factor; `per_power` in kg/W. Null: not known.
 *
 * `wheels_lift`: of "lateral" and "longitudinal", those at which a whole side or axle would carry nothing.
 */
export type Transfer = {
  readonly lateral: Uncertain | null;
  readonly longitudinal: Uncertain | null;
  readonly stability: Uncertain | null;
  readonly per_power: Uncertain | null;
  readonly wheels_lift: readonly ("lateral" | "longitudinal")[];
};

export type PowerUnit = keyof typeof POWER_UNITS;

/** The car's own power and its unit; null unless both are known and it is not nothing. */
export function powerOf(car: Car | null): readonly [power: number, unit: PowerUnit] | null {
  if (!car?.power || car.power_unit === null) return null;
  const power = toNumber(car.power);
  return power > 0 ? [power, car.power_unit] : null;
}

/** Of a body whose `z` is its height above the ground. Lengths in m, accelerations in g, forward positive; W. */
export function transfer(
  body: Body,
  track: Uncertain | null,
  wheelbase: Uncertain | null,
  lateralG: number,
  longitudinalG: number,
  power: number | null = null,
): Transfer {
  const across = moved(body, track, Math.abs(lateralG));
  const along = moved(body, wheelbase, Math.abs(longitudinalG));
  const lifted: ("lateral" | "longitudinal")[] = [];
  if (across && across.value > 0.5 * body.mass.value) lifted.push("lateral");
  if (along && unloads(body, wheelbase, along, longitudinalG)) lifted.push("longitudinal");
  return {
    lateral: across,
    longitudinal: along,
    stability: track && body.z && body.z.value > 0 ? divide(track, scale(body.z, 2)) : null,
    per_power: power ? scale(body.mass, 1 / power) : null,
    wheels_lift: lifted,
  };
}

/** m a h / length. */
function moved(body: Body, length: Uncertain | null, g: number): Uncertain | null {
  return body.z && length && divide(scale(multiply(body.mass, body.z), g), length);
}

/** Whether more would leave an axle than stands on it: the front under power, the rear under brakes. */
function unloads(body: Body, wheelbase: Uncertain | null, along: Uncertain, g: number): boolean {
  if (!body.x || !wheelbase) return false;
  const rear = body.x.value / wheelbase.value;
  return along.value > (g > 0 ? 1 - rear : rear) * body.mass.value;
}
