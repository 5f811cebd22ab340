/**
 * The covariance of every pair of looks at the weight now, from what their terms share.
 *
 * What only one term knows of touches the looks in a plain way: an error of one weigh-in its own look, an error of what
 * was written down between two weigh-ins all looks before. Only the few errors that several terms name, gains and
 * densities and parts that moved twice, need to be followed by name.
 */

import { fsum, type Uncertain } from "../numbers/uncertain";
import { type Evidence, movedBy } from "./evidence";

/**
 * What is the same whatever load the gains are taken to act on.
 *
 * `named`: how many terms name an error. `gains`: those of several terms that a load names. `below`: for every look its
 * covariance with each look up to itself, kg², by all else that several terms share.
 */
export type Steady = {
  readonly named: ReadonlyMap<string, number>;
  readonly gains: readonly string[];
  readonly below: readonly (readonly number[])[];
};

/** Taken once, for it is most of the work. */
export function steady(evidence: Evidence): Steady {
  const named = new Map<string, number>();
  for (const item of [...evidence.own.flat().map(([each]) => each), ...evidence.written, evidence.target]) {
    for (const name in item.sources) named.set(name, (named.get(name) ?? 0) + 1);
  }
  const loads = new Set(evidence.own.flatMap(([load]) => Object.keys(load?.[0].sources ?? {})));
  const shared = [...named].filter(([, times]) => times > 1).map(([name]) => name);
  const moves = shared.filter((name) => !loads.has(name)).map((name) => movedBy(evidence, name));
  const after = laterThan(evidence, named);
  const below = pairs(evidence.own.length, (i, j) => fsum([...together(moves, i, j), after[i] as number]));
  return { named, gains: shared.filter((name) => loads.has(name)), below };
}

/** The covariance matrix of the looks, kg². `same`: of this evidence, about whatever loads. */
export function covariances(evidence: Evidence, same: Steady): number[][] {
  const alone = evidence.own.map((terms) => fsum(terms.map(([item]) => aloneIn(item, same.named))));
  const moves = same.gains.map((name) => movedBy(evidence, name));
  const below = pairs(alone.length, (i, j) =>
    fsum([...together(moves, i, j), same.below[i]?.[j] as number, i === j ? (alone[i] as number) : 0]),
  );
  return alone.map((_, i) => alone.map((__, j) => below[Math.max(i, j)]?.[Math.min(i, j)] as number));
}

/** Something of every look with each look up to itself. */
function pairs(count: number, of: (i: number, j: number) => number): number[][] {
  return Array.from({ length: count }, (_, i) => Array.from({ length: i + 1 }, (__, j) => of(i, j)));
}

function together(moves: readonly (readonly number[])[], i: number, j: number): number[] {
  return moves.map((each) => (each[i] as number) * (each[j] as number));
}

/** The variance of every look by what was written down since, and by what the class weighs with. */
function laterThan({ written, target }: Evidence, named: ReadonlyMap<string, number>): number[] {
  let sum = aloneIn(target, named);
  return written
    .map((item) => aloneIn(item, named))
    .reverse()
    .map((each) => (sum += each))
    .reverse();
}

/** The variance of an item by what no other term names. */
function aloneIn({ sources }: Uncertain, named: ReadonlyMap<string, number>): number {
  return fsum(Object.entries(sources).flatMap(([name, part]) => (named.get(name) === 1 ? [part * part] : [])));
}
