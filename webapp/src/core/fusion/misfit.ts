/**
 * What does not fit among looks at one thing, in order of time: steps and single looks that are off.
 *
 * A step between two looks says that something went in or came out there and nobody wrote it down: all looks before it
 * lack it. A single look may be off by itself. Next to the first or the last look the two are the same data. For any of
 * these, a column h, with W what the looks tell beside their mean: δ = hᵀWt / hᵀWh is its size, (hᵀWh)^−½ the standard
 * uncertainty of that, and Δχ² = (hᵀWt)² / hᵀWh what the looks fit better with it.
 */

import { addTo, type Column, type Matrix, row, times } from "./precision";

const COLLINEAR = 1e-9;

/**
 * Every step and every look that may be off: `count` − 1 steps, then the looks between the first and the last.
 *
 * A step n lies between the looks n and n + 1. `own`: hᵀWh of each; `told`: hᵀWt; `better`: Δχ². `usable`: those the
 * looks can tell anything of.
 */
export class Candidates {
  readonly count: number;
  readonly own: Column;
  readonly told: Column;
  readonly better: Column;
  readonly usable: readonly number[];
  readonly #beside: Matrix;

  /** `beside`: what the looks tell beside their mean; `values` of the looks. */
  constructor(beside: Matrix, values: Column, least: number) {
    this.count = values.length;
    this.#beside = beside;
    this.told = along(times(beside, values));
    this.own = new Float64Array(this.told.length);
    this.rows((gram, n) => (this.own[n] = gram[n] as number));
    this.better = this.told.map((each, n) =>
      (this.own[n] as number) > least ? (each * each) / (this.own[n] as number) : 0,
    );
    this.usable = [...this.own.keys()].filter((n) => (this.own[n] as number) > least);
  }

  /** hᵀWh' of one candidate after another, in order, with all. */
  rows(visit: (gram: Column, n: number) => void): void {
    const image = new Float64Array(this.count);
    for (let n = 0; n < this.count - 1; n++) {
      addTo(image, row(this.#beside, n), -1);
      visit(along(image), n);
    }
    for (let look = 1; look < this.count - 1; look++) {
      visit(along(row(this.#beside, look)), this.count - 2 + look);
    }
  }

  /** That of a pair's normal equations, `across` their hᵀWh'; zero where the looks cannot tell the two apart. */
  determinant(a: number, b: number, across: number): number {
    const both = (this.own[a] as number) * (this.own[b] as number);
    const found = both - across * across;
    return found > COLLINEAR * both ? found : 0;
  }

  /** Δχ² of a pair; zero where the looks cannot tell the two apart. */
  betterTogether(a: number, b: number, across: number): number {
    const determinant = this.determinant(a, b, across);
    const [one, two] = [this.told[a] as number, this.told[b] as number];
    const found = one * one * (this.own[b] as number) - 2 * one * two * across + two * two * (this.own[a] as number);
    return determinant > 0 ? found / determinant : 0;
  }
}

/** hᵀv for the column h of every candidate: −1 for the looks before a step, 1 for a look. */
export function along(vector: Column): Column {
  const steps = vector.length - 1;
  const found = new Float64Array(Math.max(0, 2 * steps - 1));
  let before = 0;
  for (let n = 0; n < steps; n++) {
    const here = vector[n] as number;
    before -= here;
    found[n] = before;
    if (n > 0) found[steps - 1 + n] = here;
  }
  return found;
}

/** The column of a candidate. */
export function columnOf(count: number, candidate: number): Column {
  const column = new Float64Array(count);
  if (candidate < count - 1) column.fill(-1, 0, candidate + 1);
  else column[lookOf(count, candidate)] = 1;
  return column;
}

/** The look a candidate that is no step says is off. */
export function lookOf(count: number, candidate: number): number {
  return candidate - (count - 1) + 1;
}
