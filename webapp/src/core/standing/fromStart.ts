/**
 * How the car came from its start to what it weighs now: one sum that adds up.
 *
 * The car of the first weigh-in, bare and before any job; what the jobs in it changed; what the weigh-ins say beside
 * that; and the fuel, the driver and the ballast that the weight counts. What the weigh-ins say beside the jobs is what
 * nobody wrote down, or an error: a line of its own, so that it is not hidden in another.
 */

import { countedOf } from "../fusion/evidence";
import type { Garage } from "../garage/records";
import { netBetween } from "../ledger/since";
import { factor, readNumber } from "../numbers/quantity";
import { add, multiply, negate, type Ratio, toNumber, ZERO } from "../numbers/ratio";
import { layOut } from "../numbers/shown";
import { expanded, type Uncertain, uncertain, weightedSum } from "../numbers/uncertain";
import type { Masses } from "../weighing/weighing";
import type { Aboard } from "../wholeCar/aboard";
import { type Condition, isWarned } from "../wholeCar/condition";
import { bare, type Now, type Terms } from "../wholeCar/weighed";
import { givenBy } from "./given";
import type { Standing } from "./standing";

/**
 * Masses in kg: `start` + `jobs` + `corrected` + `fuel` + `driver` + `ballast` are the weight now.
 *
 * `start`: without fuel, driver and ballast, by the `weigh_in`. `jobs`: the net of those in the car, below zero when it
 * got lighter. What the class does not count is nothing.
 */
export type FromStart = {
  readonly weigh_in: string;
  readonly start: Uncertain;
  readonly jobs: Uncertain;
  readonly corrected: Uncertain;
  readonly fuel: Uncertain;
  readonly driver: Uncertain;
  readonly ballast: Uncertain;
};

/** Null without a weight, or where what was aboard at the start or is in the weight now is not known. */
export function fromStart(garage: Garage, known: Masses, now: Standing): FromStart | null {
  const given = givenBy(garage, known, now.condition.class_sheet);
  const last = given.weighed.find(({ record }) => record.id === now.fused?.fusion.evidence.counted.at(-1)?.record.id);
  const aboard = last ? countedAboard(last.aboard, given.now, given.condition) : null;
  if (!now.weight || !aboard) return null;
  for (const each of given.weighed) {
    const alone = bare(each);
    if (isWarned(alone) || each.jobs === null) continue;
    const start = summed([...alone, [netBetween(each.jobs, [], given.nets), -1]]);
    const jobs = summed([[now.removed, -1]]);
    const { fuel, driver, ballast } = aboard;
    const rest = [start, jobs, fuel, driver, ballast].map((item) => [item, -1] as const);
    const corrected = summed([[now.weight, 1], ...rest]);
    return { weigh_in: each.record.id, start, jobs, corrected, fuel, driver, ballast };
  }
  return null;
}

/**
 * What the weigh-ins say beside the jobs, as it is shown: so that the rounded lines come to the rounded weight.
 *
 * What rounding leaves goes to this line, which is known the least; where that is more than its own doubt (a single
 * weigh-in has none beside itself), it stays as it is. `others`: the lines beside it; `unit`: all are shown in.
 */
export function addingUp(
  corrected: Uncertain,
  others: readonly Uncertain[],
  weight: Uncertain,
  unit: string,
): Uncertain {
  const beside = others.reduce((sum, each) => add(sum, asShown(each, unit)), ZERO);
  const rest = toNumber(add(asShown(weight, unit), negate(beside)));
  return Math.abs(rest - corrected.value) <= expanded(corrected) ? uncertain(rest, corrected.sources) : corrected;
}

/** The mass (kg) that is read off what is shown. */
function asShown(item: Uncertain, unit: string): Ratio {
  const { sign, parts } = layOut("mass", item.value, unit, expanded(item));
  const read = parts.reduce(
    (sum, [digits, named]) => add(sum, multiply(readNumber(digits), factor("mass", named))),
    ZERO,
  );
  return sign === "−" ? negate(read) : read;
}

function summed(terms: Terms): Uncertain {
  return weightedSum(
    terms.map(([item]) => item),
    terms.map(([, sign]) => sign),
  );
}

/** The fuel, driver and ballast in the weight now, kg; null while one of them is in it and is not known. */
function countedAboard(last: Aboard, now: Now, condition: Condition) {
  const { fuel, driver: inSeat, ballast } = countedOf(last, now, condition);
  const driver = condition.driver === "out" ? uncertain(0) : inSeat;
  return fuel && driver ? { fuel, driver, ballast } : null;
}
