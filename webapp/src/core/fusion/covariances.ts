/**
 * The covariance of every pair of looks at the weight now, from what their terms share.
 *
 * What only one term knows of touches the looks in a plain way: an error of one weigh-in its own look, an error of what
 * was written down between two weigh-ins all looks before. Only the few errors that several terms name, gains and
 * densities and parts that moved twice, need to be followed by name.
 */

import { type Evidence, movedBy } from "./evidence";
import { type Uncertain, fsum } from "../numbers/uncertain";

/** The covariance matrix of the looks, kg². */
export function covariances(evidence: Evidence): number[][] {
  const own = evidence.own.map((terms) => terms.map(([item]) => item));
  const named = new Map<string, number>();
  for (const item of [...own.flat(), ...evidence.written, evidence.target]) {
    for (const name in item.sources) named.set(name, (named.get(name) ?? 0) + 1);
  }
  const shared = [...named].filter(([, times]) => times > 1).map(([name]) => movedBy(evidence, name));
  const alone = own.map((items) => fsum(items.map((item) => aloneIn(item, named))));
  const after = laterThan(evidence, named);
  return own.map((_, i) => own.map((__, j) => {
    const parts = shared.map((moves) => (moves[i] as number) * (moves[j] as number));
    return fsum([...parts, after[Math.max(i, j)] as number, i === j ? (alone[i] as number) : 0]);
  }));
}

/** The variance of every look by what was written down since, and by what the class weighs with. */
function laterThan({ written, target }: Evidence, named: ReadonlyMap<string, number>): number[] {
  let sum = aloneIn(target, named);
  return written.map((item) => aloneIn(item, named)).reverse().map((each) => (sum += each)).reverse();
}

/** The variance of an item by what no other term names. */
function aloneIn({ sources }: Uncertain, named: ReadonlyMap<string, number>): number {
  return fsum(Object.entries(sources).flatMap(([name, part]) => (named.get(name) === 1 ? [part * part] : [])));
}
