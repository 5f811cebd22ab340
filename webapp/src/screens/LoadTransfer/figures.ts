/** The figures of one state of the car at the accelerations asked about, and how they differ from another state's. */
import { type CarState, trackOf } from "../../core/balance/balance";
import { POWER_UNITS, powerOf, transfer } from "../../core/balance/loadTransfer";
import type { Garage } from "../../core/garage/records";
import { scale, type Uncertain } from "../../core/numbers/uncertain";
import { lengthOf } from "../../core/wholeCar/weighIn";

/** Accelerations in tenths of g, whole steps; `along` forward is positive. */
export type Asked = { turn: number; along: number };

/** Masses in kg, `height` in m, `perPower` in kg per `unit` of power; null where it cannot be known. */
export type Told = {
  mass: Uncertain;
  height: Uncertain | null;
  lateral: Uncertain | null;
  longitudinal: Uncertain | null;
  stability: Uncertain | null;
  perPower: Uncertain | null;
  unit: string | null;
  wheels_lift: readonly ("lateral" | "longitudinal")[];
};

export function figuresOf(garage: Garage, { body }: CarState, { turn, along }: Asked): Told {
  const power = powerOf(garage.car);
  const watts = power && power[0] * POWER_UNITS[power[1]];
  const moved = transfer(body, trackOf(garage.car), lengthOf(garage.car, "wheelbase"), turn / 10, along / 10, watts);
  const perPower = power && moved.per_power && scale(moved.per_power, POWER_UNITS[power[1]]);
  const { lateral, longitudinal, stability, wheels_lift } = moved;
  return {
    mass: body.mass,
    height: body.z,
    lateral,
    longitudinal,
    stability,
    perPower,
    unit: power?.[1] ?? null,
    wheels_lift,
  };
}
