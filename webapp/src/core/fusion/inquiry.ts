/** What may be asked of a fusion beside its weight: each look against the others, what is named, and one more look. */

import { type Uncertain, u, uncertain } from "../numbers/uncertain";
import { sharedWith } from "./evidence";
import type { Fusion } from "./fusion";
import { columnOf } from "./misfit";
import { at, type Column, dot, type Matrix, row, times } from "./precision";

/** The looks less the last of them, kg. */
export const apartOf = ({ leading }: Fusion): Column => leading.values;

/** Standard uncertainty of the weight if this look (kg, at the weight now) were there too. */
export function uWith({ evidence, leading, mean, weight }: Fusion, look: Uncertain): number {
  const shared = Float64Array.from(sharedWith(evidence, look));
  const now = u(weight) * u(weight);
  const fresh = u(look) * u(look) - dot(shared, times(leading.told.beside, shared));
  const across = dot(mean.weights, shared);
  const apart = now + fresh - 2 * across;
  return apart > 0 ? Math.sqrt(Math.max(0, now * fresh - across * across) / apart) : u(weight);
}

/** A look less what the others say; null when they say nothing of it. */
export function residualOf({ leading: { told, values } }: Fusion, look: number): Uncertain | null {
  const beside = row(told.beside, look);
  const own = at(beside, look);
  if (own <= told.least) return null;
  return uncertain(dot(beside, values) / own, { looks: Math.sqrt(1 / own) });
}

/** The size of a named change (kg, more in the car is positive), the others named taken out. */
export function sizeOf(fusion: Fusion, name: number): Uncertain {
  const { values } = fusion.leading;
  const shape = columnOf(values.length, name);
  const image = times(besideOthers(fusion, name), shape);
  const own = dot(image, shape);
  return uncertain(dot(image, values) / own, { looks: Math.sqrt(1 / own) });
}

/** What the looks tell beside their mean and all named changes but this one. */
export function besideOthers({ leading, names }: Fusion, name: number): Matrix {
  return leading.without(names.filter((other) => other !== name)).told.beside;
}
