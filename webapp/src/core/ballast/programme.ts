/**
 * An exact integer programme of a few whole numbers: least cost under linear rows, by branch and bound.
 *
 * Counts n_i lie between bounds; a row holds Σ weight_i n_i between two bounds. Weights, bounds and costs are whole
 * numbers that a double holds exactly, so a row holds or does not. Costs are compared in whole steps: what differs by
 * less is alike.
 *
 * At every branch each row in its turn narrows the counts, and so does the cost that is still to be beaten; then a
 * linear programme is solved (`core/ballast/simplex`). A branch is left when its floor is above what is to be beaten,
 * or when the rows prove that nothing is in it. Else a count that is no whole number splits it in two, or better a sum
 * of counts that must be whole: where many places take the same block, how many there are in all says more than how
 * many at one place. The half nearer to the linear programme goes first. Both languages take the same steps in the same
 * doubles.
 */

import { dot } from "../numbers/plain";
import {
  type Bounds,
  copyOf,
  type Floor,
  floorOf,
  isBelow,
  newTable,
  type Row,
  type Solved,
  sizeOf,
  solve,
  type Table,
} from "./simplex";

export type { Bounds, Row } from "./simplex";

const MOST_BRANCHES = 10_000; // of one search
const FEWEST_BRANCHES = 200; // also when others have used up all there were
const NEAR = 1e-6; // as near to a whole number as this is one

/** How many branches a chain of searches may still look at, and whether each came to its end. */
export class Effort {
  isProven = true;

  constructor(private left = 30_000) {}

  /** How many this search may look at. */
  share(): number {
    return Math.max(FEWEST_BRANCHES, Math.min(MOST_BRANCHES, this.left));
  }

  spend(branches: number, isDone: boolean): void {
    this.left -= branches;
    this.isProven &&= isDone;
  }
}

/** `cost` = Σ costs_i counts_i. No other choice is a step cheaper, if the effort says that it is proven. */
export type Found = { readonly counts: readonly number[]; readonly cost: number };

/** The cheapest counts, or null when none satisfy the rows. Stops at the first whose cost is `enough` or less. */
export function least(
  costs: readonly number[],
  rows: readonly Row[],
  limits: Bounds,
  effort: Effort,
  step = 1,
  enough = -Infinity,
): Found | null {
  const search = new Search(costs, rows, step, enough);
  const most = effort.share();
  let branches = 0;
  search.open.push(search.root(limits));
  while (search.open.length > 0 && branches < most) {
    search.look(search.open.pop() as Branch);
    branches++;
  }
  effort.spend(branches, search.open.length === 0);
  return search.best;
}

type Branch = Bounds & { readonly table: Table };

/** `ceiling`: what a cost must not exceed to be a step better than the best. */
class Search {
  best: Found | null = null;
  open: Branch[] = [];
  private ceiling = Infinity;
  private readonly sizes: readonly number[];
  private readonly unit: number;
  private readonly common: number;
  private readonly places: readonly number[];
  private readonly sums: readonly number[];

  constructor(
    private readonly costs: readonly number[],
    private readonly rows: readonly Row[],
    private readonly step: number,
    private readonly enough: number,
  ) {
    this.sizes = rows.map(({ weights }) => sizeOf(weights));
    this.unit = sizeOf(costs);
    this.places = [...costs.keys()];
    this.sums = rows.flatMap(({ isWhole }, row) => (isWhole ? [costs.length + row] : []));
    // Every cost is a multiple of what the single ones have in common: without it, equal blocks would all be tried.
    this.common = costs.reduce((known, cost) => gcd(known, Math.abs(cost)), 0) || 1;
  }

  root({ low, high }: Bounds): Branch {
    return {
      table: newTable(this.costs, this.rows),
      low: [...low, ...this.rows.map((row) => row.low)],
      high: [...high, ...this.rows.map((row) => row.high)],
    };
  }

  look(branch: Branch): void {
    if (!this.narrow(branch)) return;
    const bounds = { low: this.inSizes(branch.low), high: this.inSizes(branch.high) };
    const solved = solve(branch.table, bounds);
    const isLeft =
      solved.stuck === null ? this.isBeaten(branch, solved) : this.isImpossible(branch, bounds, solved, solved.stuck);
    if (!isLeft) this.split(branch, solved);
  }

  /** Every row, and the cost to be beaten, narrow the counts; false when one cannot hold. */
  private narrow({ low, high }: Branch): boolean {
    const first = this.costs.length;
    const isWithin = this.rows.every(({ weights }, row) => {
      return (
        holdTo(weights, 1, num(high, first + row), low, high) && holdTo(weights, -1, -num(low, first + row), low, high)
      );
    });
    return isWithin && holdTo(this.costs, 1, this.ceiling, low, high);
  }

  private inSizes(bounds: readonly number[]): number[] {
    const first = this.costs.length;
    return bounds.map((bound, at) => (at < first ? bound : bound / num(this.sizes, at - first)));
  }

  /** Whether no counts of this branch are better than the best, once its own counts are looked at. */
  private isBeaten(branch: Branch, { values }: Solved): boolean {
    const { table } = branch;
    const floor = floorOf(this.costs, this.rows, this.multipliers(table, table.costs, this.unit), branch);
    if (this.isAbove(floor)) return true;
    this.consider(
      this.costs.map((_, at) => Math.floor(num(values, at) + 0.5)),
      branch,
    );
    if (this.isAbove(floor)) return true;
    holdTo(floor.weights, 1, this.ceiling + 2 * floor.error - floor.held, branch.low, branch.high);
    return false;
  }

  private isAbove({ least, error }: Floor): boolean {
    return least - error > this.ceiling;
  }

  /** Whether the line that is stuck proves that the rows allow nothing here. */
  private isImpossible(branch: Branch, bounds: Bounds, { values }: Solved, line: number): boolean {
    const { table, low, high } = branch;
    const stuck = num(table.told, line);
    const own = this.rows[stuck - this.costs.length];
    const sign = isBelow(table, bounds, values, line) ? -1 : 1;
    const weights = own ? own.weights : this.costs.map((_, at) => (at === stuck ? 1 : 0));
    const by = this.multipliers(table, table.lines[line] as number[], sign * (own ? sizeOf(weights) : 1));
    const floor = floorOf(
      weights.map((weight) => sign * weight),
      this.rows,
      by,
      branch,
    );
    return floor.least - floor.error > (sign > 0 ? num(high, stuck) : -num(low, stuck));
  }

  /** Of the rows that stand at a bound, in whole numbers again. */
  private multipliers({ standing }: Table, line: readonly number[], size: number): number[] {
    const by = this.rows.map(() => 0);
    for (const [column, variable] of standing.entries()) {
      const row = variable - this.costs.length;
      if (row >= 0) by[row] = (num(line, column) * size) / num(this.sizes, row);
    }
    return by;
  }

  private consider(counts: readonly number[], { low, high }: Branch): void {
    const isWithin = counts.every((count, at) => num(low, at) <= count && count <= num(high, at));
    if (
      !isWithin ||
      !this.rows.every((row) => row.low <= dot(row.weights, counts) && dot(row.weights, counts) <= row.high)
    )
      return;
    const cost = dot(this.costs, counts);
    if (cost > this.ceiling) return;
    this.best = { counts, cost };
    const better = Math.floor(((Math.ceil(cost / this.step) - 1) * this.step) / this.common) * this.common;
    this.ceiling = cost <= this.enough ? -Infinity : better;
  }

  private split({ table, low, high }: Branch, { values }: Solved): void {
    const at = this.splitAt(values, low, high);
    if (at === null) return;
    const value = num(values, at);
    const cut = Math.min(Math.max(num(low, at), Math.floor(value + NEAR)), num(high, at) - 1);
    const under = { table: copyOf(table), low: low.slice(), high: high.map((bound, of) => (of === at ? cut : bound)) };
    const over = { table, low: low.map((bound, of) => (of === at ? cut + 1 : bound)), high };
    this.open.push(...(value - cut < 0.5 ? [over, under] : [under, over]));
  }

  /** A sum that must be whole and is not, else a count that is not, the nearest to being known; else any that is open. */
  private splitAt(values: readonly number[], low: readonly number[], high: readonly number[]): number | null {
    return (
      mostUndecided(this.sums, values, low, high) ??
      mostUndecided(this.places, values, low, high) ??
      this.places.find((at) => num(low, at) < num(high, at)) ??
      null
    );
  }
}

function mostUndecided(
  of: readonly number[],
  values: readonly number[],
  low: readonly number[],
  high: readonly number[],
): number | null {
  let [chosen, most]: [number | null, number] = [null, 0];
  for (const at of of) {
    const above = num(values, at) - Math.floor(num(values, at));
    const away = Math.min(above, 1 - above);
    const share = away / (num(high, at) - num(low, at));
    if (away > NEAR && num(low, at) < num(high, at) && share > most) [chosen, most] = [at, share];
  }
  return chosen;
}

/** Narrows the counts to those with which Σ sign · weights_i n_i ≤ most can still hold; false when none can. */
function holdTo(weights: readonly number[], sign: 1 | -1, most: number, low: number[], high: number[]): boolean {
  if (most === Infinity) return true;
  let room = most;
  for (let at = 0; at < weights.length; at++) {
    const weight = sign * num(weights, at);
    room -= weight * num(weight > 0 ? low : high, at);
  }
  if (room < 0) return false;
  for (let at = 0; at < weights.length; at++) {
    const weight = sign * num(weights, at);
    if (weight > 0) high[at] = Math.min(num(high, at), num(low, at) + Math.floor(room / weight));
    else if (weight < 0) low[at] = Math.max(num(low, at), num(high, at) - Math.floor(room / -weight));
  }
  return true;
}

function gcd(a: number, b: number): number {
  let [large, small] = [a, b];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}

function num(values: readonly number[], at: number): number {
  return values[at] as number;
}
