/** Weigh-ins that a slip would explain: each is held against the others, and against what the class asks. */

import type { Garage } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { UNKNOWN } from "../weighing/display";
import { type Known, knownOfWeighIns } from "../weighing/known";
import { type Slip, slipInLoads } from "../weighing/slips";
import { LOOKS, type Reading } from "./weighIn";

/** `before` and `after`: the looks that change, as read and without the slip. */
export type SlippedWeighIn = {
  readonly slip: Slip;
  readonly weighIn: string;
  readonly before: readonly Quantity[];
  readonly after: Readonly<Partial<Record<Reading, Quantity>>>;
  readonly against: Known;
};

/** The likeliest slip among the weigh-ins that count, but for those found right as they are. `minimum`: the class's, kg. */
export function slippedWeighIn(
  garage: Garage,
  minimum: number | null,
  isRight: (weighIn: string) => boolean,
): SlippedWeighIn | null {
  const all = [...garage.weigh_ins.values()].map((record) => {
    const names = LOOKS[record.layout].filter((name) => record[name] !== null);
    const looks = names.map((name) => record[name] as Quantity);
    return { record, names, looks, total: looks.reduce((sum, { value }) => sum + value, 0) };
  });
  const whole = all.filter(({ record, names }) => names.length === LOOKS[record.layout].length);
  const found = whole.flatMap((each) => {
    if (isRight(each.record.id)) return [];
    const others = whole.filter((other) => other !== each).map(({ total }) => total);
    const display = garage.scales.get(each.record.scale ?? "") ?? UNKNOWN;
    const slipped = slipInLoads(each.looks, display, knownOfWeighIns(others, minimum));
    return slipped ? [{ ...each, slipped }] : [];
  });
  const [best] = found.sort((a, b) => b.slipped.odds - a.slipped.odds);
  if (!best) return null;
  const { names, looks, slipped, record } = best;
  const changed = names.flatMap((name, at) => {
    const after = slipped.looks[at] as Quantity;
    return looks[at]?.reads === after.reads ? [] : [{ name, before: looks[at] as Quantity, after }];
  });
  return {
    slip: slipped.slip,
    weighIn: record.id,
    before: changed.map(({ before }) => before),
    after: Object.fromEntries(changed.map(({ name, after }) => [name, after])),
    against: slipped.against,
  };
}
