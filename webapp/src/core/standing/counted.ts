/** The weigh-ins that the weight is made of, one by one, asked for by the few screens that show them. */

import type { Fusion } from "../fusion/fusion";
import { residualOf } from "../fusion/inquiry";
import { type Uncertain, uncertain } from "../numbers/uncertain";

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

/** In order of time. */
export function countedOf(fusion: Fusion): Counted[] {
  const { evidence, values, leading, mean } = fusion;
  return evidence.counted.map(({ record }, at) => ({
    weigh_in: record.id,
    alone: uncertain(values[at] as number, { looks: leading.told.doubts[at] as number }),
    share: mean.weights[at] as number,
    residual: residualOf(fusion, at),
  }));
}
