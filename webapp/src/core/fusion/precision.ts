/**
 * Small systems of looks at one thing that share errors: the inverse of their covariance, and what is swept out of it.
 *
 * With S the covariance of the looks, V = S⁻¹ says how much each pair of them tells. Sweeping a column x out of V leaves
 * what they tell when an unknown amount of x may be in them, V − V x (V x)ᵀ / (xᵀ V x): generalised least squares with
 * one more unknown, without solving anew. The best mean of looks is V 1 / (1ᵀ V 1); W = V with 1 swept out is what they
 * say beside their mean. Plain sums in order, so that both languages have the same digits.
 */

import { dot } from "../numbers/plain";

export type Vector = readonly number[];
export type Matrix = readonly Vector[];

const NOTHING_NEW = 1e-11; // of a look's own variance: what is left of it beside the others is rounding
const ABSORBED = 1e-12; // of the most a look tells: a column that tells less has been swept out already

/** An element that is there. */
export const at = (vector: Vector, index: number): number => vector[index] as number;
export const row = (matrix: Matrix, index: number): Vector => matrix[index] as Vector;

export function times(matrix: Matrix, column: Vector): number[] {
  return matrix.map((each) => dot(each, column));
}

/**
 * The inverse of a covariance, and the looks that tell nothing the later ones do not: their rows are zero.
 *
 * Looks are taken from the last to the first, so that of two that tell the same the later one is kept.
 */
export function precision(covariance: Matrix): [number[][], number[]] {
  const [kept, root] = factored(covariance);
  const inverse = inverted(root);
  const answer = covariance.map((each) => each.map(() => 0));
  kept.forEach((i, a) => {
    for (let b = 0; b <= a; b++) {
      let told = 0;
      for (let k = a; k < inverse.length; k++) told += at(row(inverse, k), a) * at(row(inverse, k), b);
      const j = kept[b] as number;
      (answer[i] as number[])[j] = (answer[j] as number[])[i] = told;
    }
  });
  return [answer, covariance.flatMap((_, i) => (kept.includes(i) ? [] : [i]))];
}

/** The looks kept, last first, and the Cholesky factor of their covariance. */
function factored(covariance: Matrix): [number[], number[][]] {
  const kept: number[] = [];
  const root: number[][] = [];
  for (let i = covariance.length - 1; i >= 0; i--) {
    const made: number[] = [];
    kept.forEach((j, n) => {
      const above = row(root, n);
      made.push((at(row(covariance, i), j) - dot(made, above)) / at(above, n));
    });
    const own = at(row(covariance, i), i);
    const pivot = own - dot(made, made);
    if (pivot <= NOTHING_NEW * own) continue;
    kept.push(i);
    root.push([...made, Math.sqrt(pivot)]);
  }
  return [kept, root];
}

/** The inverse of a lower triangle, as rows. */
function inverted(root: Matrix): number[][] {
  const inverse: number[][] = [];
  root.forEach((each, i) => {
    const made: number[] = [];
    for (let j = 0; j < i; j++) {
      let total = 0;
      for (let k = j; k < i; k++) total += at(each, k) * at(row(inverse, k), j);
      made.push(-total / at(each, i));
    }
    inverse.push([...made, 1 / at(each, i)]);
  });
  return inverse;
}

/** What a column must tell, at the least, to be more than rounding in what these looks tell. */
export function leastTelling(told: Matrix): number {
  return ABSORBED * told.reduce((most, each, i) => Math.max(most, at(each, i)), 0);
}

/** What is told when an unknown amount of `column` may be in the looks; the same when it tells `least` or less. */
export function swept(told: Matrix, column: Vector, least: number): Matrix {
  const image = times(told, column);
  const size = dot(column, image);
  if (size <= least) return told;
  return told.map((each, i) => each.map((x, j) => x - (at(image, i) * at(image, j)) / size));
}

/** The same without the looks that tell `least` or less: what is left of them is rounding. */
export function cleared(told: Matrix, least: number): Matrix {
  const kept = told.map((each, i) => at(each, i) > least);
  return told.map((each, i) => each.map((x, j) => (kept[i] && kept[j] ? x : 0)));
}

/** The weights of the surest mean, which add up to one. */
export function bestWeights(told: Matrix): number[] {
  const ones = told.map(() => 1);
  const sums = times(told, ones);
  const whole = dot(sums, ones);
  return sums.map((each) => each / whole);
}
