/** What was weighed before: every weigh-in at the class's condition, and the car before any job was done to it. */

import { type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import { type Nets, netBetween } from "../ledger/since";
import { subtract, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Masses } from "../weighing/weighing";
import { atCondition, type Condition, isWarned } from "../wholeCar/condition";
import type { Weighed } from "../wholeCar/weighed";

/** A weigh-in: `total` as it was weighed, `weight` at the class's condition, kg, or the `reason` there is none. */
export type Past = {
  readonly weigh_in: string;
  readonly at: string | null;
  readonly trim: WeighIn["trim"];
  readonly official: boolean;
  readonly total: Uncertain | null;
  readonly weight: Uncertain | null;
  readonly reason: Warned | null;
};

/**
 * The car before any job, kg, by its `basis`.
 *
 * "weighed": the first weigh-in less its jobs, at the class's condition. "quoted": the book weight, its u unknown.
 */
export type Start = {
  readonly weight: Uncertain;
  readonly basis: "weighed" | "quoted";
  readonly weigh_in: string | null;
};

export function pastOf(garage: Garage, known: Masses, weighed: Weighed, condition: Condition): Past {
  const { record } = weighed;
  const answer = weightOf(garage, known, weighed, condition);
  return {
    weigh_in: record.id,
    at: record.at,
    trim: record.trim,
    official: record.official === true,
    total: weighed.loads.loads.total ?? null,
    weight: isWarned(answer) ? null : answer,
    reason: isWarned(answer) ? answer : null,
  };
}

/** From the first weigh-in that tells it, else from the book as quoted, without a claim to accuracy. */
export function startOf(
  garage: Garage,
  known: Masses,
  nets: Nets,
  weighed: readonly Weighed[],
  condition: Condition,
): Start | Warned {
  for (const each of weighed) {
    const weight = weightOf(garage, known, each, condition);
    if (isWarned(weight) || each.jobs === null) continue;
    const before = subtract(weight, netBetween(each.jobs, [], nets));
    return { weight: before, basis: "weighed", weigh_in: each.record.id };
  }
  const book = garage.car?.book_weight;
  return book ? { weight: uncertain(book.value), basis: "quoted", weigh_in: null } : warned("no_start");
}

function weightOf(garage: Garage, known: Masses, weighed: Weighed, condition: Condition): Uncertain | Warned {
  const whole = weighed.loads.loads.total;
  if (!whole) return warned("reading_missing", { weigh_in: weighed.record.id });
  return atCondition(garage, weighed.record, whole, condition, known);
}
