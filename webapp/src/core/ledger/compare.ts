/**
 * A part against the one it would replace: at the yard, before anything is bought.
 *
 * "Yours 23 lb, this 15 lb 6 oz, saves 7 lb 10 oz." Both may have been hung on one scale; its error then acts on the
 * difference only, so the saving is known better than either part.
 */

import { type Garage, type Part, type Warned, warned } from "../garage/records";
import { scale, subtract, type Uncertain } from "../numbers/uncertain";
import { type Mass, type Masses, masses } from "../weighing/weighing";

/**
 * `difference` = this − that, kg, of one piece (negative: this one is lighter); `whole` = × `count`.
 *
 * `count`: the pieces of the part to be replaced. Null where a part is missing or has no mass, with a warning.
 */
export type Comparison = {
  readonly part: string;
  readonly instead_of: string | null;
  readonly count: number;
  readonly this: Mass | null;
  readonly that: Mass | null;
  readonly difference: Uncertain | null;
  readonly whole: Uncertain | null;
  readonly warnings: readonly Warned[];
};

/** Compares two parts by id; `insteadOf` is the part's own, unless another is given. */
export function compare(
  garage: Garage,
  part: string,
  insteadOf: string | null = null,
  known: Masses = masses(garage),
): Comparison {
  const mine = garage.parts.get(part) ?? null;
  const old = garage.parts.get(insteadOf ?? mine?.instead_of ?? "") ?? null;
  const [this_, that] = [mine, old].map((each) => known.of.get(each?.id ?? "") ?? null) as [Mass | null, Mass | null];
  const count = old?.count ?? 1;
  const difference = this_?.mass && that?.mass ? subtract(this_.mass, that.mass) : null;
  return {
    part,
    instead_of: old?.id ?? insteadOf,
    count,
    this: this_,
    that,
    difference,
    whole: difference && scale(difference, count),
    warnings: warningsOf(mine, old, this_, that),
  };
}

function warningsOf(mine: Part | null, old: Part | null, this_: Mass | null, that: Mass | null): Warned[] {
  if (!this_ || !that) return [warned("nothing_to_compare")];
  const found = [...this_.warnings, ...that.warnings];
  const parts = [this_, that].filter((mass) => mass.mass === null).map((mass) => mass.of);
  if (parts.length > 0) found.push(warned("unweighed", { parts }));
  // Whoever has a mass is there.
  if (withBolts(mine as Part, this_) !== withBolts(old as Part, that)) {
    found.push(warned("bolts_differ", { of: this_.of }));
  }
  return found;
}

/** Whether the mass counts the bolts: as weighed, else as the part says. */
function withBolts(part: Part, mass: Mass): boolean {
  if (mass.readings.length > 0) return mass.readings.some((reading) => reading.with_bolts === true);
  return part.with_bolts === true;
}
