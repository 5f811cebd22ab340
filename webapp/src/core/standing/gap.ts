/**
 * The gap between two weigh-ins: what the scales found beside the jobs between them.
 *
 * Both cars without fuel, driver and ballast, less the net of the jobs: what is left is what nobody wrote down, or an
 * error. On one scale its gain acts on the difference only, so a gap is known much better than a car.
 */

import { type Warned, warned } from "../garage/records";
import { type Nets, netBetween, piecesBetween } from "../ledger/since";
import { add, beyondDoubt, type Uncertain, weightedSum } from "../numbers/uncertain";
import { isWarned } from "../wholeCar/condition";
import { bare, type Weighed } from "../wholeCar/weighed";

/**
 * What two weigh-ins say beside the jobs between them: `difference` kg more in the car than written down.
 *
 * `unweighed`: parts without a mass of which the car has more or fewer at the second; they count zero.
 */
export type Gap = {
  readonly first: string;
  readonly second: string;
  readonly difference: Uncertain;
  readonly unweighed: readonly string[];
};

/** Whether a gap is beyond its own doubt. */
export function isSignificant(gap: Gap): boolean {
  return beyondDoubt(gap.difference);
}

/** What the scales say changed between the two, kg. `written`: the net of the jobs between. */
export function byScales({ difference }: Gap, written: Uncertain): Uncertain {
  return add(difference, written);
}

/** What the later of two weigh-ins found beside the jobs between them; more in the car is positive. */
export function gapBetween(first: Weighed, second: Weighed, nets: Nets): Gap | Warned {
  const before = bare(first);
  if (isWarned(before)) return before;
  const after = bare(second);
  if (isWarned(after)) return after;
  for (const { jobs, record } of [first, second]) {
    if (jobs === null) return warned("jobs_not_confirmed", { weigh_in: record.id });
  }
  const then = first.jobs ?? [];
  const now = second.jobs ?? [];
  const items = [...after.map(([item]) => item), ...before.map(([item]) => item), netBetween(now, then, nets)];
  const signs = [...after.map(([, sign]) => sign), ...before.map(([, sign]) => -sign), -1];
  const moved = [...piecesBetween(now, then, nets)].flatMap(([part, pieces]) => (pieces ? [part] : []));
  const difference = weightedSum(items, signs);
  return { first: first.record.id, second: second.record.id, difference, unweighed: moved };
}

/** The gaps between consecutive weigh-ins, as far as they can be told; one that tells nothing is passed over. */
export function gapsInOrder(weighed: readonly Weighed[], nets: Nets): Gap[] {
  const telling = weighed.filter((each) => each.jobs !== null && !isWarned(bare(each)));
  const found = telling.slice(1).map((each, at) => gapBetween(telling[at] as Weighed, each, nets));
  return found.filter((gap): gap is Gap => !isWarned(gap));
}
