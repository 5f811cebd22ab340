/**
 * An exact integer programme of a few whole numbers: least cost under linear rows, by branch and bound.
 *
 * Counts n_i lie between 0 and a limit; a row says Σ weight_i n_i ≤ most. Weights and costs are whole numbers that a
 * double holds exactly, so a row holds or does not. Costs are compared in whole steps: what differs by less is alike.
 *
 * At every branch a linear programme is solved, by the simplex method on its dual, which needs no first feasible point.
 * Its multipliers λ ≥ 0 make one more row: for every choice the rows allow, cost ≥ Σ (cost_i + Σ λ_r weight_ri) n_i −
 * Σ λ_r most_r. That holds for any λ ≥ 0, however roughly the simplex stopped, so its rounding costs time and never the
 * answer. The search goes depth first, nearest to the linear programme's count first, and leaves a branch when a row, or
 * that one for a better cost, can no longer hold. Both languages take the same steps in the same doubles.
 */

/** Then the best so far is given as not proven. */
const MOST_NODES = 20_000;
const TINY = 1e-9;
const SLACK = 0.5; // of a unit that costs are counted in: what rounding in the multipliers' row may come to
const SLIM = 1e-6; // the same, for a proof without costs, where weights are about one
const PIVOTS = 200;

/** Σ weights_i n_i ≤ most. */
export type Row = { readonly weights: readonly number[]; readonly most: number };

/** `cost` = Σ costs_i counts_i. `proven`: no other choice is a step cheaper. `row`: holds for all that are as good. */
export type Found = {
  readonly counts: readonly number[];
  readonly cost: number;
  readonly proven: boolean;
  readonly row: Row;
};

/** The cheapest counts, or null when no counts satisfy the rows. Stops at the first whose cost is `enough` or less. */
export function least(
  costs: readonly number[],
  rows: readonly Row[],
  limits: readonly number[],
  step = 1,
  enough = -Infinity,
): Found | null {
  const root = relax(costs, rows, limits);
  const search = new Search(costs, rows, limits, step, enough);
  search.goOn(0, rows.map(() => 0), 0);
  if (search.best === null) return null;
  const most = Math.ceil(search.cost / step) * step + root.held + SLACK;
  const proven = search.nodes <= MOST_NODES;
  return { counts: search.best, cost: search.cost, proven, row: { weights: root.weights, most } };
}

/** Depth first. `ceiling`: what a cost must not exceed to be a step better than the best. */
class Search {
  best: readonly number[] | null = null;
  cost = Infinity;
  nodes = 0;
  private ceiling = Infinity;
  private done = false;
  private readonly common: number;
  private readonly rest: readonly (readonly number[])[];
  private readonly counts: number[];

  constructor(
    private readonly costs: readonly number[],
    private readonly rows: readonly Row[],
    private readonly limits: readonly number[],
    private readonly step: number,
    private readonly enough: number,
  ) {
    this.counts = limits.map(() => 0);
    // Every cost is a multiple of what the single ones have in common: without it, equal blocks would all be tried.
    this.common = costs.reduce((known, cost) => gcd(known, Math.abs(cost)), 0) || 1;
    this.rest = [...rows.map(({ weights }) => weights), costs].map((weights) => leastAfter(weights, limits));
  }

  /** Choose the count at place `at` and all after it; `used`: what each row has taken up before. */
  goOn(at: number, used: readonly number[], cost: number): void {
    this.nodes++;
    if (this.nodes > MOST_NODES) this.done = true;
    else if (at === this.limits.length) this.end(used, cost);
    else this.branch(at, used, cost);
  }

  private branch(at: number, used: readonly number[], cost: number): void {
    const [low, high] = this.range(at, used, cost);
    if (low > high) return;
    for (const count of this.order(at, used, cost, low, high)) {
      if (this.done) return;
      this.counts[at] = count;
      const now = this.rows.map(({ weights }, row) => num(used, row) + num(weights, at) * count);
      this.goOn(at + 1, now, cost + num(this.costs, at) * count);
    }
  }

  /** The counts to try in turn: at the last place the cheapest alone, none where the linear programme finds nothing. */
  private order(at: number, used: readonly number[], cost: number, low: number, high: number): number[] {
    if (at === this.limits.length - 1) return [num(this.costs, at) >= 0 ? low : high];
    const left = this.rows.map(({ weights, most }, row) => ({ weights: weights.slice(at), most: most - num(used, row) }));
    const limits = this.limits.slice(at);
    const relaxed = relax(this.costs.slice(at), left, limits);
    return isBeyond(relaxed, limits, this.ceiling - cost) ? [] : outwards(relaxed.guide, low, high);
  }

  /** The counts with which every row, and a better cost, can still hold. */
  private range(at: number, used: readonly number[], cost: number): [number, number] {
    let [low, high] = [0, num(this.limits, at)];
    for (const [row, rest] of this.rest.entries()) {
      const own = this.rows[row];
      const weight = num(own ? own.weights : this.costs, at);
      const room = (own ? own.most - num(used, row) : this.ceiling - cost) - num(rest, at + 1);
      if (weight > 0 && room < Infinity) high = Math.min(high, Math.floor(room / weight));
      else if (weight < 0 && room < Infinity) low = Math.max(low, Math.ceil(room / weight));
      else if (room < 0) return [1, 0];
    }
    return [low, high];
  }

  private end(used: readonly number[], cost: number): void {
    // Where there is no place at all, no range was looked at before.
    if (this.rows.every(({ most }, row) => num(used, row) <= most)) this.take(cost);
  }

  private take(cost: number): void {
    [this.best, this.cost] = [[...this.counts], cost];
    this.ceiling = Math.floor(((Math.ceil(cost / this.step) - 1) * this.step) / this.common) * this.common;
    this.done = cost <= this.enough;
  }
}

/** The multipliers' row: cost ≥ Σ weights_i n_i − held for all the rows allow. `guide`: a count to begin near. */
type Relaxed = {
  readonly weights: readonly number[];
  readonly held: number;
  readonly guide: number;
  readonly impossible: boolean;
};

/** True when no counts can satisfy the rows at a cost of the ceiling or less. */
function isBeyond({ weights, held, impossible }: Relaxed, limits: readonly number[], ceiling: number): boolean {
  const lowest = sum(weights, (weight, at) => Math.min(0, weight * num(limits, at))) - held;
  return lowest > (impossible ? SLIM : ceiling + SLACK);
}

/** For each place the least that it and all after it can add to a row; 0 after the last. */
function leastAfter(weights: readonly number[], limits: readonly number[]): number[] {
  const rest = [0];
  for (let at = weights.length - 1; at >= 0; at--) {
    rest.push((rest.at(-1) as number) + Math.min(0, num(weights, at) * num(limits, at)));
  }
  return rest.reverse();
}

/** The counts from low to high, nearest to the middle first, the larger of two first. */
function outwards(middle: number, low: number, high: number): number[] {
  const start = Math.min(Math.max(middle, low), high);
  const order = [start];
  for (let away = 1; away <= high - low; away++) {
    if (start + away <= high) order.push(start + away);
    if (start - away >= low) order.push(start - away);
  }
  return order;
}

/**
 * The linear programme of the same costs and rows.
 *
 * A place with a negative cost is counted from its limit down, so that all costs are positive and the dual, max −Σ most
 * λ − Σ limit μ with −Σ weight λ − μ ≤ cost, starts feasible at nothing. Where it grows without end, no counts satisfy
 * the rows, and the multipliers of that growth prove it without the costs.
 */
function relax(costs: readonly number[], rows: readonly Row[], limits: readonly number[]): Relaxed {
  const sizes = rows.map(({ weights }) => largest(weights));
  const unit = largest(costs);
  const turned = (at: number): boolean => num(costs, at) < 0;
  const room = rows.map(({ weights, most }, row) => {
    return (most - sum(weights, (weight, at) => (turned(at) ? weight * num(limits, at) : 0))) / num(sizes, row);
  });
  const goal = [...room, ...limits, ...costs.map(() => 0), 0];
  const table = costs.map((_, at) => lineOf(at, costs, rows, sizes, unit));
  const { basis, endless } = maximise(table, goal, rows.length + costs.length);
  const values = multipliers(table, basis, endless, rows.length);
  const by = values.map((value, row) => (value * (endless === null ? unit : 1)) / num(sizes, row));
  const weights = costs.map((cost, at) => {
    return (endless === null ? cost : 0) + sum(by, (one, row) => one * num((rows[row] as Row).weights, at));
  });
  const held = sum(by, (one, row) => one * (rows[row] as Row).most);
  const price = num(goal, rows.length + costs.length);
  const guide = costs.length ? Math.floor((turned(0) ? num(limits, 0) - price : price) + 0.5) : 0;
  return { weights, held, guide, impossible: endless !== null };
}

/** The dual's line of one place: rows' multipliers, limits' multipliers, slacks, and the cost. */
function lineOf(
  at: number, costs: readonly number[], rows: readonly Row[], sizes: readonly number[], unit: number,
): number[] {
  const own = costs.map((_, other) => (other === at ? 1 : 0));
  const flip = num(costs, at) < 0 ? -1 : 1;
  const weights = rows.map(({ weights }, row) => (-flip * num(weights, at)) / num(sizes, row));
  return [...weights, ...own.map((one) => -one), ...own, Math.abs(num(costs, at)) / unit];
}

/** Of the rows: where the simplex stopped, or along the way that never ends. */
function multipliers(table: readonly number[][], basis: readonly number[], endless: number | null, count: number): number[] {
  const values: number[] = Array.from({ length: count }, (_, row) => (row === endless ? 1 : 0));
  for (const [at, line] of table.entries()) {
    const variable = num(basis, at);
    const value = endless === null ? (line.at(-1) as number) : -num(line, endless);
    if (variable < count) values[variable] = Math.max(0, value);
  }
  return values;
}

/** The simplex method in place; gives the variable of each line, and the one that can grow without end, if any. */
function maximise(table: number[][], goal: number[], firstSlack: number): { basis: number[]; endless: number | null } {
  const basis = table.map((_, at) => firstSlack + at);
  for (let pivots = 0; pivots < PIVOTS; pivots++) {
    let entering = 0;
    for (let column = 1; column < goal.length - 1; column++) if (num(goal, column) < num(goal, entering)) entering = column;
    if (num(goal, entering) >= -TINY) break;
    const leaving = leavingLine(table, basis, entering);
    if (leaving === null) return { basis, endless: entering };
    pivot(table, goal, leaving, entering);
    basis[leaving] = entering;
  }
  return { basis, endless: null };
}

/** The line that stops the entering variable first; of two, that of the lower variable. */
function leavingLine(table: readonly number[][], basis: readonly number[], entering: number): number | null {
  let [leaving, least]: [number | null, number] = [null, Infinity];
  for (const [at, line] of table.entries()) {
    if (!(num(line, entering) > TINY)) continue;
    const ratio = (line.at(-1) as number) / num(line, entering);
    const isLess = ratio < least || (ratio === least && num(basis, at) < num(basis, leaving as number));
    if (leaving === null || isLess) [leaving, least] = [at, ratio];
  }
  return leaving;
}

function pivot(table: number[][], goal: number[], leaving: number, entering: number): void {
  const own = table[leaving] as number[];
  const by = num(own, entering);
  for (let column = 0; column < own.length; column++) own[column] = num(own, column) / by;
  for (const line of [...table, goal]) {
    const factor = num(line, entering);
    if (line === own || factor === 0) continue;
    for (let column = 0; column < line.length; column++) line[column] = num(line, column) - factor * num(own, column);
  }
}

function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0) || 1;
}

function sum(values: readonly number[], term: (value: number, at: number) => number): number {
  let whole = 0;
  for (const [at, value] of values.entries()) whole += term(value, at);
  return whole;
}

function gcd(a: number, b: number): number {
  let [large, small] = [a, b];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}

function num(values: readonly number[], at: number): number {
  return values[at] as number;
}
