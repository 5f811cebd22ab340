/**
 * What does not fit among looks at one thing, in order of time: steps and single looks that are off.
 *
 * A step between two looks says that something went in or came out there and nobody wrote it down: all looks before it
 * lack it. A single look may be off by itself. Next to the first or the last look the two are the same data. For any of
 * these, a column h, with W what the looks tell beside their mean: δ = hᵀWt / hᵀWh is its size, (hᵀWh)^−½ the standard
 * uncertainty of that, and Δχ² = (hᵀWt)² / hᵀWh what the looks fit better with it.
 *
 * The first is named when Δχ² is beyond what chance does once in twenty among all candidates; two together likewise,
 * which finds two that hide each other. Once something is wrong, a second is named when it pays for the choice of its
 * place, 2 ln n for n candidates [Foster and George, Ann. Statist. 22 (1994) 1947]; a third must stand as the first. One
 * degree of freedom is always left over: what explains everything explains nothing.
 */

import { inverse } from "../numbers/normal";
import { at, leastTelling, type Matrix, row, swept, times, type Vector } from "./precision";

export const BEYOND_CHANCE = 3.841458820694124; // χ² of one degree of freedom, 95 %
const BY_CHANCE = 0.05;
const COLLINEAR = 1e-9;

/**
 * Every step and every look that may be off: `count` − 1 steps, then the looks between the first and the last.
 *
 * A step n lies between the looks n and n + 1. `images`: W h of each; `gram`: hᵀWh'; `told`: hᵀWt.
 */
export class Candidates {
  readonly count: number;
  readonly images: Matrix;
  readonly gram: Matrix;
  readonly told: Vector;
  readonly #least: number;

  /** `told`: what the looks tell beside their mean; `values` of the looks. */
  constructor(told: Matrix, values: Vector, least: number) {
    this.count = values.length;
    let image: Vector = values.map(() => 0);
    const steps = told.slice(0, -1).map((each) => (image = image.map((x, i) => x - at(each, i))));
    this.images = [...steps, ...told.slice(1, -1)];
    this.gram = this.images.map(along);
    this.told = along(times(told, values));
    this.#least = least;
  }

  /** hᵀWh of one candidate. */
  own(n: number): number {
    return at(row(this.gram, n), n);
  }

  /** Those the looks can tell anything of. */
  usable(): number[] {
    return this.told.flatMap((_, n) => (this.own(n) > this.#least ? [n] : []));
  }

  /** Δχ² of one candidate. */
  better(n: number): number {
    return this.own(n) > this.#least ? (at(this.told, n) * at(this.told, n)) / this.own(n) : 0;
  }

  /** That of a pair's normal equations; zero when the looks cannot tell the two apart. */
  determinant(a: number, b: number): number {
    const both = this.own(a) * this.own(b);
    const across = at(row(this.gram, a), b);
    const found = both - across * across;
    return found > COLLINEAR * both ? found : 0;
  }

  /** Δχ² of a pair that can be told apart, times its determinant. */
  betterTimes(a: number, b: number): number {
    const [x, y] = [at(this.told, a), at(this.told, b)];
    return x * x * this.own(b) - 2 * x * y * at(row(this.gram, a), b) + y * y * this.own(a);
  }
}

/** hᵀv for the column h of every candidate: −1 for the looks before a step, 1 for a single look. */
export function along(vector: Vector): number[] {
  let before = 0;
  const sums = vector.slice(0, -1).map((each) => {
    before += each;
    return -before;
  });
  return [...sums, ...vector.slice(1, -1)];
}

/** The column of a candidate. */
export function columnOf(count: number, candidate: number): number[] {
  const looks = Array.from({ length: count }, (_, look) => look);
  if (candidate < count - 1) return looks.map((look) => (look <= candidate ? -1 : 0));
  return looks.map((look) => (look === lookOf(count, candidate) ? 1 : 0));
}

/** The look a candidate that is no step says is off. */
export function lookOf(count: number, candidate: number): number {
  return candidate - (count - 1) + 1;
}

/**
 * The candidates to name, the surest first.
 *
 * `told`: what the looks tell beside their mean; `freedom`: how many independent things that are.
 */
export function named(told: Matrix, values: Vector, freedom: number): number[] {
  const least = leastTelling(told);
  const found = new Candidates(told, values, least);
  const usable = found.usable();
  if (freedom < 2 || usable.length === 0) return [];
  const first = firstOf(usable.length);
  let chosen = pairOrOne(found, usable, freedom, first);
  let rest = told;
  while (chosen.length > 0 && freedom - chosen.length >= 2) {
    for (const one of chosen) rest = swept(rest, columnOf(found.count, one), least);
    const left = new Candidates(rest, values, least);
    const best = surest(
      left,
      left.told.map((_, n) => n),
    );
    if (left.better(best) <= first) break;
    chosen = [...chosen, best];
  }
  return chosen;
}

/** The Δχ² that chance reaches once in twenty, at the most, among so many candidates. */
function firstOf(count: number): number {
  const z = inverse(BY_CHANCE / (2 * count));
  return z * z;
}

function surest(found: Candidates, among: readonly number[]): number {
  return among.reduce((best, n) => (found.better(n) > found.better(best) ? n : best));
}

function pairOrOne(found: Candidates, usable: readonly number[], freedom: number, first: number): number[] {
  const best = surest(found, usable);
  const alone = found.better(best);
  const [pair, together] = freedom > 2 ? bestPair(found, usable) : [[], 0];
  const pairs = (usable.length * (usable.length - 1)) / 2;
  const isTold = alone > first || (pairs > 0 && together > -2 * Math.log(BY_CHANCE / pairs));
  if (isTold && together - alone > Math.max(BEYOND_CHANCE, 2 * Math.log(usable.length))) {
    return pair.sort((a, b) => found.better(b) - found.better(a));
  }
  return alone > first ? [best] : [];
}

/** The two that fit best together, and their Δχ². */
function bestPair(found: Candidates, usable: readonly number[]): [number[], number] {
  let best: number[] = [];
  let most = 0;
  usable.forEach((a, n) => {
    for (const b of usable.slice(n + 1)) {
      const determinant = found.determinant(a, b);
      if (determinant === 0) continue;
      const times = found.betterTimes(a, b);
      if (times > most * determinant) [best, most] = [[a, b], times / determinant];
    }
  });
  return [best, most];
}
