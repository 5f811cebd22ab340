/**
 * The covariance of every pair of looks at the weight now, from what their terms share.
 *
 * What only one term knows of touches the looks in a plain way: an error of one weigh-in its own look, an error of what
 * was written down between two weigh-ins all looks before. Only the few errors that several terms name, gains and
 * densities and parts that moved twice, need to be followed by name.
 */

import { fsum, type Uncertain } from "../numbers/uncertain";
import type { Terms } from "../wholeCar/weighed";
import type { Evidence } from "./evidence";
import { addTo, at, type Column, type Matrix, row, square } from "./precision";

/**
 * What is the same whatever load the gains are taken to act on.
 *
 * `named`: how many terms name an error. `gains`: those of several terms that a load names. `shared`: the covariance of
 * each look with those up to itself by all else, kg², but by what it alone names.
 */
export type Steady = {
  readonly named: ReadonlyMap<string, number>;
  readonly gains: readonly string[];
  readonly shared: Matrix;
};

/** Taken once, for it is most of the work. */
export function steady(evidence: Evidence): Steady {
  const { own, written, target } = evidence;
  const named = new Map<string, number>();
  for (const item of [...own.flat().map(([each]) => each), ...written, target]) {
    for (const name in item.sources) named.set(name, (named.get(name) ?? 0) + 1);
  }
  const loads = new Set(own.flatMap(([load]) => Object.keys(load?.[0].sources ?? {})));
  const several = [...named].flatMap(([name, times]) => (times > 1 ? [name] : []));
  const rest = several.filter((name) => !loads.has(name));
  const shared = together(evidence, rest, square(own.length));
  let later = aloneIn(target, named);
  for (let look = own.length - 1; look >= 0; look--) {
    later += aloneIn(written[look] as Uncertain, named);
    const each = row(shared, look);
    for (let other = 0; other <= look; other++) each[other] = at(each, other) + later;
  }
  return { named, gains: several.filter((name) => loads.has(name)), shared };
}

/** The covariance matrix of the looks, kg². `same`: of this evidence, about whatever loads. */
export function covariances(evidence: Evidence, { named, gains, shared }: Steady): Matrix {
  const found = together(evidence, gains, shared);
  found.forEach((each, look) => {
    for (const [item] of evidence.own[look] as Terms) each[look] = at(each, look) + aloneIn(item, named);
    for (let other = 0; other < look; other++) row(found, other)[look] = at(each, other);
  });
  return found;
}

/** The variance of each look by its display and by how the scale repeats alone, kg²; or by only one of them. */
export function ownLooks({ own }: Evidence, { named }: Steady, of = /^(round|rep):/): Column {
  return Float64Array.from(own, ([load]) => aloneIn(load?.[0] as Uncertain, named, of));
}

/** What these errors add to a lower triangle. */
function together(evidence: Evidence, names: readonly string[], triangle: Matrix): Matrix {
  const found = triangle.map((each) => each.slice());
  for (const moves of movesOf(evidence, names)) {
    found.forEach((each, look) => {
      const move = moves[look] as number;
      if (move) addTo(each, moves, move, look + 1);
    });
  }
  return found;
}

/** How far one standard deviation of each of these sources moves each look, kg. */
function movesOf({ own, written, target }: Evidence, names: readonly string[]): Column[] {
  const moves = new Map(names.map((name) => [name, new Float64Array(own.length)]));
  const add = ({ sources }: Uncertain, look: number, sign: number) => {
    for (const name in sources) {
      const column = moves.get(name);
      if (column) column[look] = (column[look] as number) + sign * (sources[name] as number);
    }
  };
  // What was written down later moves all looks before it.
  add(target, own.length - 1, 1);
  for (const [look, item] of written.entries()) add(item, look, 1);
  for (const column of moves.values()) {
    for (let look = own.length - 1; look > 0; look--) {
      column[look - 1] = (column[look - 1] as number) + (column[look] as number);
    }
  }
  for (const [look, terms] of own.entries()) {
    for (const [item, sign] of terms) add(item, look, sign);
  }
  return [...moves.values()];
}

/** The variance of an item by what no other term names. */
function aloneIn({ sources }: Uncertain, named: ReadonlyMap<string, number>, of = /^/): number {
  const parts = Object.entries(sources).filter(([name]) => named.get(name) === 1 && of.test(name));
  return fsum(parts.map(([, part]) => part * part));
}
