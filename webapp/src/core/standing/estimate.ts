/**
 * The door to the estimator: what the car weighs now, from all that was weighed and all that was done to it.
 *
 * `estimate` is asked by `core/standing` and by nobody else; it may be replaced by a better estimator without any other
 * room noticing. This one takes every weigh-in that can count as a look at the weight now (`core/fusion/evidence`) and
 * combines them (`core/fusion`).
 */

import { groups } from "../fusion/behaviour";
import { evidenceOf } from "../fusion/evidence";
import { type Fusion, fused, type Learned, learned, type Possible } from "../fusion/fusion";
import type { Scatter } from "../fusion/scatter";
import { type Warned, warned } from "../garage/records";
import { type Since, sinceWeighIn } from "../ledger/since";
import type { Uncertain } from "../numbers/uncertain";
import { isWarned } from "../wholeCar/condition";
import type { Weighed } from "../wholeCar/weighed";
import type { Given } from "./given";

/**
 * What the weight is made of. `left_out`: weigh-ins that cannot count, and why.
 *
 * `lower`: the last weigh-in differs, and whether it is off or the car changed cannot be told: of the `answers` the
 * first counts. `scatter`: what the readings scatter beyond their scales' records. `unweighed`: parts without a mass
 * that moved between weigh-ins. `fusion`: for asking for each weigh-in (`standing/counted`), what does not fit
 * (`core/causes`) and what one more weigh-in would give (`core/fusion/weighNext`), which only few screens do.
 */
export type Fused = {
  readonly left_out: Readonly<Record<string, Warned>>;
  readonly lower: boolean;
  readonly answers: readonly Possible[];
  readonly scatter: Scatter | null;
  readonly unweighed: readonly string[];
  readonly fusion: Fusion;
  readonly warnings: readonly Warned[];
};

/**
 * `weight`: the car now at the condition, kg. `last`: the last weigh-in that counts; `rests_on`: the last that is taken
 * to be right, and `since` then.
 *
 * `learn`: a scale's gain with what all the weigh-ins tell of it.
 */
export type Estimate = {
  readonly weight: Uncertain;
  readonly last: Weighed;
  readonly rests_on: Weighed;
  readonly since: Since;
  readonly fused: Fused;
  readonly learn: (gain: Uncertain) => Learned;
};

/** The weight now from all of these weigh-ins, or why there is none. `risk`: of two answers, what decides. */
export function estimate(given: Given, weighed: readonly Weighed[], risk: number): Estimate | Warned {
  const { garage, known, nets, condition, now } = given;
  const found = evidenceOf(weighed, now, nets, condition);
  if (isWarned(found)) return found;
  const fusion = fused(found, groups(garage, known.scales, found.counted), risk);
  const { weight, lower, answers, scatter } = fusion;
  const { left_out, unweighed } = found;
  const { counted } = found;
  const last = counted.at(-1) as Weighed;
  // Where the answer that counts says that the last is off, it rests on the one before.
  const rests_on = (answers[0]?.off && counted.at(-2)) || last;
  return {
    weight,
    last,
    rests_on,
    since: sinceWeighIn(rests_on.record.id, rests_on.jobs ?? [], now.jobs, nets),
    fused: { left_out, lower, answers, scatter, unweighed, fusion, warnings: warningsOf(fusion) },
    learn: (gain) => learned(fusion, gain),
  };
}

function warningsOf({ evidence, leading: { told }, lower }: Fusion): Warned[] {
  const idOf = (at: number) => evidence.counted.at(at)?.record.id;
  const found = told.nothing_new.map((at) => warned("weigh_in_tells_nothing", { weigh_in: idOf(at) }));
  if (evidence.unweighed.length > 0) found.push(warned("unweighed_between", { parts: evidence.unweighed }));
  if (lower) found.push(warned(told.freedom === 1 ? "two_differ" : "last_differs", { weigh_in: idOf(-1) }));
  return found;
}
