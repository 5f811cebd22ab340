/**
 * Readings that scatter more than their scales' records say: by how much, and what would explain it.
 *
 * What is left over after naming, χ² of f freedoms, is more than the records allow when chance reaches it once in twenty
 * (by the cube root of E. B. Wilson and M. M. Hilferty, Proc. Natl. Acad. Sci. 17 (1931) 684). Then the part of the
 * doubt that no two looks share is multiplied by the Birge ratio √(χ²/f) [R. T. Birge, Phys. Rev. 40 (1932) 207]: no
 * spread can tell of an error all of them have.
 */

import type { Evidence } from "./evidence";
import { at, type Column, times } from "./precision";
import type { View } from "./views";

const Z = 1.6448536269514722; // of the standard normal distribution, 95 % below it

/**
 * `scale`: whose looks scatter the most. `repeats`: what it would have to repeat a car to, kg, to explain it.
 *
 * `wider`: what widens the independent part of the doubt, a factor of its variance less one.
 */
export type Scatter = { readonly scale: string | null; readonly repeats: number; readonly wider: number };

/**
 * `left`: the looks when what is named, `taken` in number, may have any size.
 *
 * `own`, `rounding`: the variance of each look by its display and repeating, and by its steps only, kg².
 */
export function scatterOf(
  { counted }: Evidence,
  left: View,
  taken: number,
  own: Column,
  rounding: Column,
): Scatter | null {
  const { scatter } = left.behaviour;
  const wider = birge(left, taken);
  const ratio = wider * scatter;
  if (ratio === 1) return null;
  const off = times(left.told.beside, left.values);
  const sums = new Map<string | null, number>();
  counted.forEach(({ record: { scale } }, look) => {
    sums.set(scale, (sums.get(scale) ?? 0) + at(off, look) * at(off, look) * at(own, look));
  });
  const [scale] = [...sums].reduce((worst, each) => (each[1] > worst[1] ? each : worst));
  const looks = [...counted.keys()].filter((look) => counted[look]?.record.scale === scale);
  const most = looks.reduce((a, b) => (at(own, b) > at(own, a) ? b : a));
  const repeats = Math.sqrt(Math.max(0, ratio * ratio * at(own, most) - at(rounding, most)));
  return { scale, repeats, wider: (wider * wider - 1) * scatter * scatter };
}

/** Birge's ratio, 1 where chance alone may do it. */
function birge({ told, misfit }: View, taken: number): number {
  const freedom = told.freedom - taken;
  return freedom > 0 && misfit > mostOf(freedom) ? Math.sqrt(misfit / freedom) : 1;
}

/** The χ² that chance exceeds once in twenty. */
function mostOf(freedom: number): number {
  const part = 2 / (9 * freedom);
  return freedom * (1 - part + Z * Math.sqrt(part)) ** 3;
}
