/**
 * A linear programme in a few bounded counts, kept as a table that goes on when a bound has moved.
 *
 * Minimise Σ cost_i n_i, every count n_i and every row Σ weight_ri n_i between bounds of its own. A row is one more
 * variable. Some variables stand at a bound, the others are told by them; a step of the dual simplex method lets one that
 * is beyond a bound change places with one that stands at a bound. Moving a bound leaves the table right, so each branch
 * of a search goes on from the table of the branch before it.
 *
 * Trusted are only the multipliers it ends with, one a row: `floorOf` is below every choice's cost whatever they are, so
 * rounding in the table costs time and never an answer.
 */

/** low ≤ Σ weights_i n_i ≤ high, in whole numbers. `isWhole`: a search may branch on the sum. */
export type Row = {
  readonly weights: readonly number[];
  readonly low: number;
  readonly high: number;
  readonly isWhole?: boolean;
};

/** Of the counts, then of the rows. */
export type Bounds = { readonly low: number[]; readonly high: number[] };

/** `lines[k][j]`: what the variable `told[k]` grows by when `standing[j]` grows by one; `costs[j]`: the cost so. */
export type Table = {
  readonly lines: number[][];
  readonly costs: number[];
  readonly told: number[];
  readonly standing: number[];
  readonly isHigh: boolean[];
};

/** `values` of all variables. `stuck`: the line that cannot be brought within its bounds. */
export type Solved = { readonly values: number[]; readonly stuck: number | null };

/** cost ≥ Σ weights_i n_i + held for all that the bounds allow; `least` of that, and the `error` of its rounding. */
export type Floor = {
  readonly weights: number[];
  readonly held: number;
  readonly least: number;
  readonly error: number;
};

const TINY = 1e-10; // beyond a bound, in sizes of a row
const LEVER = 1e-7; // less is rounding, and dividing by it would be wrong
const PIVOTS = 200;
const ROUNDING = 1e-14; // of all that is added up: dozens of terms, each right to 1e-16

export function newTable(costs: readonly number[], rows: readonly Row[]): Table {
  return {
    lines: rows.map(({ weights }) => weights.map((weight) => weight / sizeOf(weights))),
    costs: costs.map((cost) => cost / sizeOf(costs)),
    told: rows.map((_, row) => costs.length + row),
    standing: costs.map((_, at) => at),
    isHigh: costs.map((cost) => cost < 0),
  };
}

export function copyOf({ lines, costs, told, standing, isHigh }: Table): Table {
  return {
    lines: lines.map((line) => line.slice()),
    costs: costs.slice(),
    told: told.slice(),
    standing: standing.slice(),
    isHigh: isHigh.slice(),
  };
}

/** The largest weight, by which a row is divided in the table. */
export function sizeOf(weights: readonly number[]): number {
  return weights.reduce((most, weight) => Math.max(most, Math.abs(weight)), 0) || 1;
}

/** Steps until every variable is within its bounds, or one cannot be. Bounds of rows in their sizes. */
export function solve(table: Table, bounds: Bounds): Solved {
  const values: number[] = bounds.low.map(() => 0);
  for (let step = 0; ; step++) {
    lay(table, bounds, values);
    const line = worst(table, bounds, values);
    if (line === null || step === PIVOTS) return { values, stuck: null };
    const isUnder = isBelow(table, bounds, values, line);
    const column = entering(table, bounds, line, isUnder);
    if (column === null) return { values, stuck: line };
    swap(table, line, column, !isUnder);
  }
}

export function isBelow({ told }: Table, { low }: Bounds, values: readonly number[], line: number): boolean {
  return num(values, num(told, line)) < num(low, num(told, line));
}

function lay({ lines, told, standing, isHigh }: Table, { low, high }: Bounds, values: number[]): void {
  for (let j = 0; j < standing.length; j++) {
    const variable = num(standing, j);
    values[variable] = num(isHigh[j] ? high : low, variable);
  }
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as number[];
    let sum = 0;
    for (let j = 0; j < line.length; j++) sum += num(line, j) * num(values, num(standing, j));
    values[num(told, k)] = sum;
  }
}

/** The line whose variable is furthest beyond its bounds. */
function worst({ told }: Table, { low, high }: Bounds, values: readonly number[]): number | null {
  let [line, most]: [number | null, number] = [null, TINY];
  for (let k = 0; k < told.length; k++) {
    const variable = num(told, k);
    const value = num(values, variable);
    const beyond = Math.max(num(low, variable) - value, value - num(high, variable));
    if (beyond > most) [line, most] = [k, beyond];
  }
  return line;
}

/** The column that brings the line back for the least cost a unit; of two the one with the longer lever. */
function entering(
  { lines, costs, standing, isHigh }: Table,
  { low, high }: Bounds,
  at: number,
  isUnder: boolean,
): number | null {
  const line = lines[at] as number[];
  let [column, least, longest]: [number | null, number, number] = [null, Infinity, 0];
  for (let j = 0; j < line.length; j++) {
    const variable = num(standing, j);
    const lever = isUnder === Boolean(isHigh[j]) ? -num(line, j) : num(line, j);
    if (!(lever > LEVER) || num(low, variable) === num(high, variable)) continue;
    const ratio = Math.abs(num(costs, j)) / lever;
    if (ratio < least || (ratio === least && lever > longest)) [column, least, longest] = [j, ratio, lever];
  }
  return column;
}

function swap({ lines, costs, told, standing, isHigh }: Table, at: number, column: number, toHigh: boolean): void {
  const own = lines[at] as number[];
  const by = num(own, column);
  for (let j = 0; j < own.length; j++) own[j] = j === column ? 1 / by : -num(own, j) / by;
  for (const line of [...lines, costs]) if (line !== own) replace(line, own, column);
  const leaving = num(told, at);
  told[at] = num(standing, column);
  standing[column] = leaving;
  isHigh[column] = toHigh;
}

function replace(line: number[], own: readonly number[], column: number): void {
  const factor = num(line, column);
  if (factor === 0) return;
  line[column] = 0;
  for (let j = 0; j < own.length; j++) line[j] = num(line, j) + factor * num(own, j);
}

/** `multipliers`: what each row counts for a unit; of one without a bound on that side, nothing. */
export function floorOf(
  costs: readonly number[],
  rows: readonly Row[],
  multipliers: readonly number[],
  { low, high }: Bounds,
): Floor {
  const weights = costs.slice();
  let [held, all] = [0, 0];
  for (let k = 0; k < rows.length; k++) {
    const by = num(multipliers, k);
    const end = num(by > 0 ? low : high, costs.length + k);
    if (by === 0 || !Number.isFinite(end)) continue;
    held += by * end;
    all += Math.abs(by * end);
    all += take(weights, by, (rows[k] as Row).weights, high);
  }
  let least = held;
  for (let i = 0; i < weights.length; i++) {
    least += num(weights, i) * num(num(weights, i) > 0 ? low : high, i);
    all += Math.abs(num(costs, i)) * num(high, i);
  }
  return { weights, held, least, error: all * ROUNDING };
}

/** Takes `by` times a row away; gives how large what was taken can be. */
function take(weights: number[], by: number, row: readonly number[], high: readonly number[]): number {
  let all = 0;
  for (let i = 0; i < weights.length; i++) {
    weights[i] = num(weights, i) - by * num(row, i);
    all += Math.abs(by * num(row, i)) * num(high, i);
  }
  return all;
}

function num(values: readonly number[], at: number): number {
  return values[at] as number;
}
