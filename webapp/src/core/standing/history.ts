/** What was weighed before: every weigh-in at the class's condition, and the car before any job was done to it. */

import { type Warned, type WeighIn, warned } from "../garage/records";
import { netBetween } from "../ledger/since";
import { subtract, type Uncertain, uncertain } from "../numbers/uncertain";
import { atCondition, type Condition, isWarned } from "../wholeCar/condition";
import type { Weighed } from "../wholeCar/weighed";
import { type Foretold, foretoldOf } from "./foretold";
import type { Given } from "./given";

/**
 * A weigh-in: `total` as it was weighed, `weight` at the class's condition, kg, or the `reason` there is none.
 *
 * `foretold`: what became of the word given before an official one.
 */
export type Past = {
  readonly weigh_in: string;
  readonly at: string | null;
  readonly trim: WeighIn["trim"];
  readonly official: boolean;
  readonly total: Uncertain | null;
  readonly weight: Uncertain | null;
  readonly reason: Warned | null;
  readonly foretold: Foretold | null;
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

export function pastOf({ record, loads, aboard }: Weighed, condition: Condition): Past {
  const answer = atCondition(loads.loads.total, aboard, condition);
  return {
    weigh_in: record.id,
    at: record.at,
    trim: record.trim,
    official: record.official === true,
    total: loads.loads.total ?? null,
    weight: isWarned(answer) ? null : answer,
    reason: isWarned(answer) ? answer : null,
    foretold: foretoldOf(record, loads),
  };
}

/** From the first weigh-in that tells it, else from the book as quoted, without a claim to accuracy. */
export function startOf({ garage, nets, weighed, condition }: Given): Start | Warned {
  for (const { record, loads, jobs, aboard } of weighed) {
    const weight = atCondition(loads.loads.total, aboard, condition);
    if (isWarned(weight) || jobs === null) continue;
    return { weight: subtract(weight, netBetween(jobs, [], nets)), basis: "weighed", weigh_in: record.id };
  }
  const book = garage.car?.book_weight;
  return book ? { weight: uncertain(book.value), basis: "quoted", weigh_in: null } : warned("no_start");
}
