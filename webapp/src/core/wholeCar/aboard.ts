/** What was in the car at a weigh-in beside the car itself: fuel, a driver, ballast; each as well as it was noted. */

import type { Garage, WeighIn } from "../garage/records";
import { resolution, type Uncertain, uncertain } from "../numbers/uncertain";
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
  const driver = driverIn(record, known);
  return { weigh_in: record.id, fuel: fuelIn(garage, record), driver, ballast: ballastIn(record) };
}

/** The fuel in the tank at a weigh-in, kg; null when nobody noted it. */
export function fuelIn(garage: Garage, record: WeighIn): Uncertain | null {
  if (record.fuel === null) return null;
  const volume = record.fuel.value;
  const within = record.fuel_within?.value ?? assumedWithin(volume);
  return fuelMass(volume, garage.car?.fuel_kind ?? null, within, `fuel:${record.id}`);
}

/** The driver on board at a weigh-in, kg: nothing for an empty seat, null when who or how heavy is not known. */
export function driverIn(record: WeighIn, known: Masses): Uncertain | null {
  if (!record.driver_in) return uncertain(0);
  return record.driver === null ? null : (known.of.get(record.driver)?.mass ?? null);
}

/** The ballast on board at a weigh-in, kg, known to its last digit. */
export function ballastIn(record: WeighIn): Uncertain {
  if (record.ballast === null) return uncertain(0);
  return uncertain(record.ballast.value, { [`ballast:${record.id}`]: resolution(record.ballast.last_digit) });
}
