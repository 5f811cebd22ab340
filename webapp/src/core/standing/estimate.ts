/**
 * The door to the estimator: what the car weighs now, from all that was weighed and all that was done to it.
 *
 * `estimate` is asked by `core/standing` and by nobody else; it may be replaced by a better estimator without any other
 * room noticing. This one takes every weigh-in that can count as a look at the weight now (`core/fusion/evidence`) and
 * combines them (`core/fusion`).
 */

import { evidenceOf } from "../fusion/evidence";
import { type Fusion, fused, learned, residualOf } from "../fusion/fusion";
import { type Warned, warned } from "../garage/records";
import { type Since, sinceWeighIn } from "../ledger/since";
import { type Uncertain, uncertain } from "../numbers/uncertain";
import { isWarned } from "../wholeCar/condition";
import type { Weighed } from "../wholeCar/weighed";
import type { Given } from "./given";

/**
 * A weigh-in that counts: `alone`, the weight now (kg) by it and the jobs since; its `share` in the weight.
 *
 * `residual`: it less what the others say, null when they say nothing of it. Of both only the size of the doubt is
 * kept, not what it is made of. Shares add up to one; one that is below zero makes good an error another shares.
 */
export type Counted = {
  readonly weigh_in: string;
  readonly alone: Uncertain;
  readonly share: number;
  readonly residual: Uncertain | null;
};

/**
 * What the weight is made of. `counted` in order of time; `left_out`: weigh-ins that cannot count, and why.
 *
 * `lower`: the last weigh-in differs, and whether it is off or the car changed cannot be told: the lower weight counts.
 * `unweighed`: parts without a mass that moved between weigh-ins. `fusion`: for asking what does not fit
 * (`core/causes`) and what one more weigh-in would give (`core/fusion/weighNext`), which only few screens do.
 */
export type Fused = {
  readonly counted: readonly Counted[];
  readonly left_out: Readonly<Record<string, Warned>>;
  readonly lower: boolean;
  readonly unweighed: readonly string[];
  readonly fusion: Fusion;
  readonly warnings: readonly Warned[];
};

/**
 * `weight`: the car now at the condition, kg; `cautious`: the same, with the doubt that it may be less only.
 *
 * `rests_on`: the last weigh-in that counts, and `since` then. `learn`: a scale's gain with what all the weigh-ins tell of it.
 */
export type Estimate = {
  readonly weight: Uncertain;
  readonly cautious: Uncertain;
  readonly rests_on: Weighed;
  readonly since: Since;
  readonly fused: Fused;
  readonly learn: (gain: Uncertain) => Uncertain;
};

/** The weight now from all of these weigh-ins, or why there is none. */
export function estimate({ nets, condition, now }: Given, weighed: readonly Weighed[]): Estimate | Warned {
  const found = evidenceOf(weighed, now, nets, condition);
  if (isWarned(found)) return found;
  const fusion = fused(found);
  const last = found.counted.at(-1) as Weighed;
  const together: Fused = {
    counted: countedOf(fusion),
    left_out: found.left_out,
    lower: fusion.lower,
    unweighed: found.unweighed,
    fusion,
    warnings: warningsOf(fusion),
  };
  return {
    weight: fusion.weight,
    cautious: fusion.cautious,
    rests_on: last,
    since: sinceWeighIn(last.record.id, last.jobs ?? [], now.jobs, nets),
    fused: together,
    learn: (gain) => learned(fusion, gain),
  };
}

function countedOf(fusion: Fusion): Counted[] {
  return fusion.evidence.counted.map(({ record }, at) => ({
    weigh_in: record.id,
    alone: uncertain(fusion.values[at] as number, { looks: fusion.told.doubts[at] as number }),
    share: fusion.mean.weights[at] as number,
    residual: residualOf(fusion, at),
  }));
}

function warningsOf({ evidence, told, lower }: Fusion): Warned[] {
  const idOf = (at: number) => evidence.counted.at(at)?.record.id;
  const found = told.nothing_new.map((at) => warned("weigh_in_tells_nothing", { weigh_in: idOf(at) }));
  if (evidence.unweighed.length > 0) found.push(warned("unweighed_between", { parts: evidence.unweighed }));
  if (lower) found.push(warned(told.freedom === 1 ? "two_differ" : "last_differs", { weigh_in: idOf(-1) }));
  return found;
}
