/**
 * What the looks tell under each behaviour of the scales, and how well each behaviour explains them.
 *
 * A behaviour adds to the covariance of the looks (`behaviour`); how likely it is, with the weight and every part of
 * unknown mass unknown altogether, is its chance beforehand times the restricted likelihood of the looks under it
 *
 *     ln L = −½ (ln|S| + ln(1ᵀV1) + Σ ln(xᵀVx) + rᵀWr)
 *
 * [H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545]. One that explains them far worse than the best is dropped.
 */

import type { Behaviour } from "./behaviour";
import { Candidates, columnOf } from "./misfit";
import {
  at,
  type Column,
  cleared,
  dot,
  leastTelling,
  less,
  type Matrix,
  precision,
  row,
  square,
  swept,
  times,
  wholeOf,
} from "./precision";

/**
 * What the looks tell: the inverse of their covariance, parts of unknown mass swept out.
 *
 * `beside`: beside their mean. `freedom`: how many independent things that is. `nothing_new`: looks that tell nothing
 * the later ones do not. `doubts`: the standard uncertainty of each look alone, kg. `least`: what a column must tell.
 */
export type Told = {
  readonly matrix: Matrix;
  readonly beside: Matrix;
  readonly freedom: number;
  readonly nothing_new: readonly number[];
  readonly doubts: Column;
  readonly least: number;
};

/** The looks under one `behaviour`. `likely`: ln of its chance times the likelihood, up to a constant. */
export class View {
  readonly behaviour: Behaviour;
  readonly told: Told;
  readonly likely: number;
  readonly values: Column;
  #candidates: Candidates | undefined;

  constructor(behaviour: Behaviour, told: Told, likely: number, values: Column) {
    this.behaviour = behaviour;
    this.told = told;
    this.likely = likely;
    this.values = values;
  }

  /** The same when these changes may have any size. */
  without(names: readonly number[]): View {
    if (names.length === 0) return this;
    let { told, likely } = this;
    for (const name of names) {
      const shape = columnOf(this.values.length, name);
      const image = times(told.beside, shape);
      const size = dot(shape, image);
      if (size > told.least) likely += (0.5 * dot(image, this.values) ** 2) / size - 0.5 * Math.log(size);
      const matrix = swept(told.matrix, shape, told.least);
      told = { ...told, matrix, beside: besideMean(matrix), least: leastTelling(matrix) };
    }
    return new View(this.behaviour, told, likely, this.values);
  }

  get candidates(): Candidates {
    this.#candidates ??= new Candidates(this.told.beside, this.values, this.told.least);
    return this.#candidates;
  }

  /** χ² of what the looks say beside their mean. */
  get misfit(): number {
    return dot(this.values, times(this.told.beside, this.values));
  }
}

/**
 * The inverse of a covariance of the looks, `doubts` its diagonal's roots, and ln of its determinant.
 *
 * `kept`: the looks that tell something the later ones do not.
 */
export type Root = {
  readonly matrix: Matrix;
  readonly likely: number;
  readonly doubts: Column;
  readonly kept: readonly number[];
};

/** With an error more that moves the looks by this column [J. Sherman and W. J. Morrison, 1950]. */
export function also({ matrix, likely, doubts, kept }: Root, column: Column): Root {
  const image = times(matrix, column);
  const more = 1 + dot(column, image);
  const wider = doubts.map((each, look) => Math.sqrt(each * each + at(column, look) * at(column, look)));
  return { matrix: less(matrix, image, more), likely: likely + Math.log(more), doubts: wider, kept };
}

export function rootOf(covariance: Matrix, kept: readonly number[]): Root {
  const doubts = Float64Array.from(covariance, (each, look) => Math.sqrt(at(each, look)));
  if (kept.length > 0) {
    const [matrix, likely] = precision(covariance, kept);
    return { matrix, likely, doubts, kept };
  }
  // Nothing is in doubt at all: the last look is as good as any.
  const last = doubts.length - 1;
  const matrix = square(doubts.length);
  row(matrix, last)[last] = 1;
  return { matrix, likely: 0, doubts, kept: [last] };
}

/** `flat`: columns of unknown size. */
export function viewOf(behaviour: Behaviour, found: Root, flat: readonly Column[], values: Column): View {
  let { matrix, likely } = found;
  let freedom = found.kept.length - 1;
  const least = leastTelling(matrix);
  for (const part of flat) {
    const size = dot(part, times(matrix, part));
    if (size <= least) continue;
    matrix = swept(matrix, part, least);
    likely += Math.log(size);
    freedom -= 1;
  }
  matrix = cleared(matrix, least);
  const beside = besideMean(matrix);
  const nothing_new = [...values.keys()].filter((look) => !found.kept.includes(look));
  const told = { matrix, beside, freedom, nothing_new, doubts: found.doubts, least: leastTelling(matrix) };
  const misfit = dot(values, times(beside, values));
  const explained = behaviour.likely - 0.5 * (likely + Math.log(wholeOf(matrix)) + misfit);
  return new View(behaviour, told, explained, values);
}

function besideMean(matrix: Matrix): Matrix {
  return swept(matrix, new Float64Array(matrix.length).fill(1), 0);
}

/** ln Σ exp. */
export function logSum(likely: Column): number {
  const most = likely.reduce((a, b) => Math.max(a, b));
  return most + Math.log(likely.reduce((sum, each) => sum + Math.exp(each - most), 0));
}
