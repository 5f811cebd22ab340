/**
 * The odd one of several readings, named by a published test, and never left out by itself.
 *
 * Grubbs' test (Technometrics 11, 1969; ISO 5725-2, 7.3.4): the reading farthest from the rest, against what its
 * distance would be by chance, at 5 % for all readings together. In its form for several looks of one set, each wheel
 * with a mean of its own, the distance of a reading from the mean of the others of its look is held against the scatter
 * of all readings but itself; for one look that is Grubbs' own test to the digit. A display shows steps: no scatter
 * counts as less than the rounding alone (d/√12), and nothing within a division of the others is odd.
 *
 * Two readings cannot say which of them is off. Where they are farther apart than 2.8 standard deviations of a reading
 * (the repeatability limit, ISO 5725-6, 4.1.4 and 5.2.2), a third is asked for.
 */

import { plainSum } from "../numbers/plain";
import { studentBeyond } from "../numbers/student";
import { APART } from "./repeats";

const CHANCE = 0.05;
const LIMIT = 2.8;
type Looks = readonly (readonly number[])[];

/** `look` and `at`: which reading of which look. `off`: from the mean of the others, kg. `chance`: of one so far. */
export type Odd = { readonly look: number; readonly at: number; readonly off: number; readonly chance: number };

/** The odd one among the readings (kg) of the looks of one set; null where all may belong together. */
export function oddOne(looks: Looks, division: number): Odd | null {
  const tried = looks.reduce((sum, { length }) => sum + (length > 2 ? length : 0), 0);
  const found = looks.flatMap((of, look) => of.flatMap((_, at) => tested(looks, look, at, division, tried) ?? []));
  const odd = found.filter(({ chance, off }) => chance < CHANCE && Math.abs(off) > APART * division);
  return odd.reduce<Odd | null>((least, each) => (least && least.chance <= each.chance ? least : each), null);
}

function tested(looks: Looks, look: number, at: number, division: number, tried: number): Odd | null {
  const of = looks[look] as readonly number[];
  if (of.length < 3) return null;
  const others = of.filter((_, k) => k !== at);
  const rest = looks.map((each, k) => (k === look ? others : each)).filter(({ length }) => length > 0);
  const freedom = rest.reduce((sum, { length }) => sum + length - 1, 0);
  const variance = Math.max(plainSum(rest.map(squares)) / freedom, (division * division) / 12);
  const off = (of[at] as number) - mean(others);
  const t = off / Math.sqrt(variance * (1 + 1 / others.length));
  return { look, at, off, chance: Math.min(1, tried * studentBeyond(t, freedom)) };
}

const mean = (values: readonly number[]) => plainSum(values) / values.length;

function squares(values: readonly number[]): number {
  const middle = mean(values);
  return plainSum(values.map((value) => (value - middle) * (value - middle)));
}

/** Whether two readings are too far apart to be left so. `repeats`: standard deviation of one by the record, kg. */
export function needsThird(readings: readonly number[], division: number, repeats: number): boolean {
  const [first, second] = readings;
  if (readings.length !== 2 || first === undefined || second === undefined) return false;
  const one = Math.sqrt(repeats * repeats + (division * division) / 12);
  return Math.abs(first - second) > Math.max(APART * division, LIMIT * one);
}
