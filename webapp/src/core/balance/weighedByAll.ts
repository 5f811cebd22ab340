/**
 * The car of a weigh-in, as heavy as all the weigh-ins say it was that day.
 *
 * A single weigh-in has its own error, so a car drawn from it alone would weigh other than the standing says. Where the
 * weight stands is told by that weigh-in, how much it is by the standing: the weight now, led back over the jobs since
 * and over what was on board. Every load is scaled by the same factor: shares, and the centre with them, keep their
 * doubt.
 */

import { countedOf } from "../fusion/evidence";
import type { Garage, WeighIn } from "../garage/records";
import { netBetween } from "../ledger/since";
import { divide, multiply, type Uncertain, weightedSum } from "../numbers/uncertain";
import { givenBy } from "../standing/given";
import { type Standing, standing } from "../standing/standing";
import type { Masses } from "../weighing/weighing";
import { isWarned } from "../wholeCar/condition";
import { bare, type Terms } from "../wholeCar/weighed";
import type { Loads } from "../wholeCar/weighIn";

/**
 * The loads of a weigh-in, brought to what all of them say. `now`: the standing, when it is at hand already.
 *
 * They stay as they are where the weigh-in does not count, or what was on board is not known.
 */
export function byAll(garage: Garage, record: WeighIn, loads: Loads, known: Masses, now: Standing | null): Loads {
  const mass = thenOf(garage, record, known, now ?? standing(garage, known));
  const { total } = loads.loads;
  if (!mass || !total || mass.value <= 0 || total.value <= 0) return loads;
  const factor = divide(mass, total);
  const scaled = Object.entries(loads.loads).map(([name, each]) => [name, multiply(each, factor)]);
  return { ...loads, loads: { ...Object.fromEntries(scaled), total: mass } };
}

/** What the car of a weigh-in weighed as it stood there, by the weight now. */
function thenOf(garage: Garage, record: WeighIn, known: Masses, now: Standing): Uncertain | null {
  const counted = now.fused?.fusion.evidence.counted ?? [];
  const then = counted.find((each) => each.record.id === record.id);
  const last = counted.at(-1);
  const terms = then && bare(then);
  if (!now.weight || !last || !then || !terms || isWarned(terms)) return null;
  const given = givenBy(garage, known, now.condition.class_sheet);
  const { fuel, driver, ballast } = countedOf(last.aboard, given.now, now.condition);
  const aboard = [fuel, driver, ballast].flatMap((each) => (each ? [[each, -1] as const] : []));
  const since = netBetween(given.now.jobs, then.jobs ?? [], given.nets);
  const own = terms.slice(1).map(([item, sign]) => [item, -sign] as const);
  const all: Terms = [[now.weight, 1], [since, -1], ...aboard, ...own];
  return weightedSum(
    all.map(([item]) => item),
    all.map(([, sign]) => sign),
  );
}
