/**
 * What was in the car at a weigh-in beside the car itself: fuel, a driver, ballast; each as well as it was noted.
 *
 * What was not said is a doubt and no nothing: a tank anywhere between empty and full, a seat with anyone known in it or
 * nobody. Each is evenly spread between its ends.
 */

import type { Garage, WeighIn } from "../garage/records";
import { rectangular, resolution, type Uncertain, uncertain, weightedSum } from "../numbers/uncertain";
import type { Masses } from "../weighing/weighing";
import { assumedWithin, fuelMass } from "./fuel";

/** What was on board at a weigh-in, kg; `fuel` and `driver` null where that is not known. */
export type Aboard = {
  readonly weigh_in: string;
  readonly fuel: Uncertain | null;
  readonly driver: Uncertain | null;
  readonly ballast: Uncertain;
};

export function aboard(garage: Garage, record: WeighIn, known: Masses): Aboard {
  const driver = driverIn(garage, record, known);
  return { weigh_in: record.id, fuel: fuelIn(garage, record), driver, ballast: ballastIn(record) };
}

/** The fuel in the tank at a weigh-in, kg; null when nobody noted it and the tank's size is not known either. */
export function fuelIn({ car }: Garage, { id, fuel, fuel_within }: WeighIn): Uncertain | null {
  const kind = car?.fuel_kind ?? null;
  if (fuel) return fuelMass(fuel.value, kind, fuel_within?.value ?? assumedWithin(fuel.value), `fuel:${id}`);
  const half = 0.5 * (car?.tank_size?.value ?? 0);
  return half ? fuelMass(half, kind, half, `fuel:${id}`) : null;
}

/** Whether somebody said who sat in the car, or that nobody did. */
export function isDriverSaid({ driver_in, driver }: WeighIn): boolean {
  return driver_in === false || driver !== null;
}

/** The driver on board at a weigh-in, kg: nothing for an empty seat, null when how heavy is not known at all. */
export function driverIn(garage: Garage, { id, driver_in, driver }: WeighIn, known: Masses): Uncertain | null {
  const massOf = (name: string) => known.of.get(name)?.mass ?? null;
  if (driver_in === false) return uncertain(0);
  if (driver !== null) return massOf(driver);
  const nobody = driver_in ? [] : [uncertain(0)];
  const masses = [...nobody, ...[...garage.drivers.keys()].map(massOf).filter((mass) => mass !== null)];
  return masses.length > 0 ? anyOf(masses, `driver:${id}`) : null;
}

function anyOf(masses: readonly Uncertain[], source: string): Uncertain {
  const least = masses.reduce((found, mass) => (mass.value < found.value ? mass : found));
  const most = masses.reduce((found, mass) => (mass.value > found.value ? mass : found));
  const width = most.value - least.value;
  const apart = uncertain(0, width > 0 ? { [source]: rectangular(0.5 * width) } : {});
  return weightedSum([least, most, apart], [0.5, 0.5, 1]);
}

/** The ballast on board at a weigh-in, kg, known to its last digit. */
export function ballastIn(record: WeighIn): Uncertain {
  if (record.ballast === null) return uncertain(0);
  return uncertain(record.ballast.value, { [`ballast:${record.id}`]: resolution(record.ballast.last_digit) });
}
