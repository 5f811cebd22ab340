/**
 * Small systems of looks at one thing that share errors: the inverse of their covariance, and what is swept out of it.
 *
 * With S the covariance of the looks, V = S⁻¹ says how much each pair of them tells. Sweeping a column x out of V leaves
 * what they tell when an unknown amount of x may be in them, V − V x (V x)ᵀ / (xᵀ V x): generalised least squares with
 * one more unknown, without solving anew. The best mean of looks is V 1 / (1ᵀ V 1); W = V with 1 swept out is what they
 * say beside their mean.
 */

export type Column = Float64Array;
export type Matrix = readonly Column[];

const NOTHING_NEW = 1e-11; // of a look's own variance: what is left of it beside the others is rounding
const ABSORBED = 1e-12; // of the most a look tells: a column that tells less has been swept out already
const FAR_MORE = 1e6; // times the variance of any look

/** An element that is there. */
export const at = (vector: ArrayLike<number>, index: number): number => vector[index] as number;
export const row = (matrix: Matrix, index: number): Column => matrix[index] as Column;

/** A square of zeros. */
export function square(count: number): Matrix {
  return Array.from({ length: count }, () => new Float64Array(count));
}

export function dot(a: Column, b: Column): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

export function sumOf(column: Column): number {
  let sum = 0;
  for (let i = 0; i < column.length; i++) sum += column[i] as number;
  return sum;
}

export function times(matrix: Matrix, column: Column): Column {
  return Float64Array.from(matrix, (each) => dot(each, column));
}

/** Adds so much of one column to another, its first elements or all. */
export function addTo(sum: Column, column: Column, factor: number, count = column.length): void {
  for (let i = 0; i < count; i++) sum[i] = (sum[i] as number) + factor * (column[i] as number);
}

/**
 * The looks that tell something the later ones do not, the last first.
 *
 * They are taken from the last to the first, so that of two that tell the same the later one is kept.
 */
export function telling(covariance: Matrix): number[] {
  return factored(covariance, [...covariance.keys()].reverse(), NOTHING_NEW)[0];
}

/** The inverse of a covariance of the looks `kept`, the rows of others zero; and ln of its determinant. */
export function precision(covariance: Matrix, kept: readonly number[]): [Matrix, number] {
  const [, root] = factored(covariance, kept, -Infinity);
  const told = square(kept.length);
  const inverse: Column[] = [];
  for (const each of root) {
    const n = inverse.length;
    const own = at(each, n);
    const made = new Float64Array(n + 1);
    for (let k = 0; k < n; k++) addTo(made, row(inverse, k), -at(each, k) / own, k + 1);
    made[n] = 1 / own;
    inverse.push(made);
    for (let i = 0; i <= n; i++) addTo(row(told, i), made, at(made, i), i + 1);
  }
  const answer = square(covariance.length);
  for (let i = 0; i < kept.length; i++) {
    for (let j = 0; j <= i; j++) {
      const [a, b] = [at(kept, i), at(kept, j)];
      row(answer, a)[b] = row(answer, b)[a] = at(row(told, i), j);
    }
  }
  return [answer, logOf(root)];
}

/** ln of the determinant of a covariance of the looks `kept` when there may be far more of each of these columns in them. */
export function widthOf(covariance: Matrix, kept: readonly number[], columns: readonly Column[]): number {
  const wide = FAR_MORE * covariance.reduce((most, each, i) => Math.max(most, at(each, i)), 0);
  const found = covariance.map((each) => each.slice());
  for (const column of columns) {
    for (const [i, each] of found.entries()) addTo(each, column, wide * at(column, i));
  }
  return logOf(factored(found, kept, -Infinity)[1]);
}

/** ln of the determinant that belongs to a Cholesky factor. */
function logOf(root: Matrix): number {
  return root.reduce((sum, each, n) => sum + 2 * Math.log(at(each, n)), 0);
}

/** The looks among these that tell more than the `least` of their own beside those before, and the Cholesky factor. */
function factored(covariance: Matrix, among: readonly number[], least: number): [number[], Column[]] {
  const kept: number[] = [];
  const root: Column[] = [];
  for (const i of among) {
    const given = row(covariance, i);
    const made = new Float64Array(kept.length + 1);
    let pivot = at(given, i);
    for (let n = 0; n < kept.length; n++) {
      const above = row(root, n);
      let left = at(given, at(kept, n));
      for (let k = 0; k < n; k++) left -= (made[k] as number) * (above[k] as number);
      left /= at(above, n);
      made[n] = left;
      pivot -= left * left;
    }
    if (pivot <= least * at(given, i)) continue;
    made[kept.length] = Math.sqrt(pivot);
    kept.push(i);
    root.push(made);
  }
  return [kept, root];
}

/** What a column must tell, at the least, to be more than rounding in what these looks tell. */
export function leastTelling(told: Matrix): number {
  return ABSORBED * told.reduce((most, each, i) => Math.max(most, at(each, i)), 0);
}

/** What is told when an unknown amount of `column` may be in the looks; the same when it tells `least` or less. */
export function swept(told: Matrix, column: Column, least: number): Matrix {
  const image = times(told, column);
  const size = dot(column, image);
  return size > least ? less(told, image, size) : told;
}

/** A matrix less a column times itself, over so much. */
export function less(matrix: Matrix, column: Column, size: number): Matrix {
  return matrix.map((each, i) => {
    const left = each.slice();
    addTo(left, column, -at(column, i) / size);
    return left;
  });
}

/** The same without the looks that tell `least` or less: what is left of them is rounding. */
export function cleared(told: Matrix, least: number): Matrix {
  const gone = [...told.keys()].filter((i) => !(at(row(told, i), i) > least));
  if (gone.length === 0) return told;
  const found = told.map((each) => each.slice());
  for (const i of gone) {
    row(found, i).fill(0);
    for (const each of found) each[i] = 0;
  }
  return found;
}

export function wholeOf(matrix: Matrix): number {
  return sumOf(Float64Array.from(matrix, sumOf));
}

/** The weights of the surest mean, which add up to one. */
export function bestWeights(told: Matrix): Column {
  const sums = Float64Array.from(told, sumOf);
  const whole = sumOf(sums);
  return sums.map((each) => each / whole);
}
