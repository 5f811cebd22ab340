/**
 * The weigh-ins of a car in order, each with its loads, the jobs then in the car, and what else was on board.
 *
 * A weigh-in weighs the car with fuel, driver and ballast as they were that day. What two of them can be compared by is
 * the car without these; what was on board is known as well as it was noted.
 */

import { order } from "../garage/order";
import { type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import { jobsInCar } from "../ledger/net";
import { fsum, resolution, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Aboard } from "./aboard";
import type { Loads } from "./weighIn";

/** Items and what each counts: a sum that is taken once, at the end. */
export type Terms = readonly (readonly [Uncertain, number])[];

/** One weigh-in with its loads. `jobs`: those then in the car; null when nobody confirmed any list. */
export type Weighed = {
  readonly record: WeighIn;
  readonly loads: Loads;
  readonly jobs: readonly string[] | null;
  readonly aboard: Aboard;
};

/** The car now: the `jobs` in it, and the `ballast` at its places, kg; null while nobody notes it. */
export type Now = { readonly jobs: readonly string[]; readonly ballast: Uncertain | null };

/** Weigh-ins as they were made: by their stated time (those without one last), then by id. */
export function inOrder(garage: Garage): WeighIn[] {
  return [...garage.weigh_ins.values()].sort((a, b) => {
    const undated = Number(a.at === null) - Number(b.at === null);
    return undated || order(String(a.at), String(b.at)) || order(a.id, b.id);
  });
}

/** The car of a weigh-in without fuel, driver or ballast, kg, or why that cannot be told. */
export function bare({ loads, aboard }: Weighed): Terms | Warned {
  const whole = loads.loads.total;
  const { weigh_in, fuel, driver, ballast } = aboard;
  if (!whole) return warned("reading_missing", { weigh_in });
  if (!fuel) return warned("fuel_unknown", { weigh_in });
  if (!driver) return warned("driver_unknown", { weigh_in });
  return [
    [whole, 1],
    [fuel, -1],
    [driver, -1],
    [ballast, -1],
  ];
}

export function nowOf(garage: Garage): Now {
  return { jobs: jobsInCar(garage).map((job) => job.id), ballast: ballastNow(garage) };
}

/** The blocks fitted at the ballast places, kg, each known to its last digit; null while nobody notes them. */
export function ballastNow(garage: Garage): Uncertain | null {
  const noted = [...garage.ballast_places.values()].filter(({ fitted }) => fitted !== null);
  if (noted.length === 0) return null;
  let value = 0;
  const sources: Record<string, number> = {};
  for (const { id, fitted, block } of noted) {
    if (!fitted || !block) continue;
    value += fitted * block.value;
    sources[`ballast:${id}`] = fitted * resolution(block.last_digit);
  }
  return uncertain(value, sources);
}

/** From the readings to the weight, kg: what they come to together, and what the scale's checks put in (or take out). */
export function trailOf(shown: readonly number[], whole: Uncertain): { together: number; taken: number } {
  const together = fsum(shown);
  return { together, taken: whole.value - together };
}
