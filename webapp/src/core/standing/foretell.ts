/**
 * What an official weigh-in should show, told by all that was known before it: the figure that "At the official scale"
 * gives, for the jobs, fuel, driver and ballast that this weigh-in names. It is kept with the weigh-in and never edited.
 *
 * Only the latest weigh-in is foretold: of one that is entered when a later one is known already, nothing can be said
 * that was not said too late.
 */

import type { Garage } from "../garage/records";
import type { Uncertain } from "../numbers/uncertain";
import type { Masses } from "../weighing/weighing";
import { type Condition, isWarned } from "../wholeCar/condition";
import { gainFor, modelFor, repeatability } from "../wholeCar/weighIn";
import { estimate } from "./estimate";
import { givenBy } from "./given";
import { expectedReading } from "./official";
import { riskOf } from "./standing";

/**
 * What the scales of an official weigh-in of the garage should show, kg, without that weigh-in.
 *
 * Null where no word is given: no weigh-in before it counts, a later one is there, it is not known what was on board or in
 * the car, or a part without a weight has moved since the last.
 */
export function foretell(garage: Garage, known: Masses, weighIn: string): Uncertain | null {
  const given = givenBy(garage, known);
  const coming = given.weighed.at(-1);
  if (coming?.record.id !== weighIn || !coming.record.official) return null;
  const { record, jobs } = coming;
  const { fuel, driver, ballast } = coming.aboard;
  if (!jobs || !fuel || !driver) return null;
  const condition: Condition = {
    ...given.condition,
    ...{ driver: "in", driver_mass: driver, fuel: "stated", fuel_mass: fuel, no_fuel: null },
  };
  const found = estimate(
    { ...given, condition, now: { jobs, ballast } },
    given.weighed.slice(0, -1),
    riskOf(given.sheet),
  );
  if (isWarned(found) || found.since.unweighed.length > 0) return null;
  const model = modelFor(record, known);
  const { gain } = found.learn(gainFor(garage, record, model, found.weight.value));
  return expectedReading(found.weight, { gain, repeatability: repeatability(garage, model) });
}
