/**
 * Which of several records of one fact counts: the first one, its corrections, and their corrections in turn.
 *
 * Two phones that correct the same fact without having seen each other leave rivals, which are looks at one display and
 * no more than one of them: exactly one counts, the latest by id, and the rest are told.
 */

import { order } from "./order";

/**
 * A fact that was corrected. `all`: every record of it, withdrawn ones among them, each after what it replaces.
 * `rivals`: those that no standing correction replaces, the one that `counts` last.
 */
export type Corrected = { all: readonly string[]; rivals: readonly string[]; counts: string };

type Newer = ReadonlyMap<string, readonly string[]>;
type Ids = { has(id: string): boolean };

/**
 * The facts that have a correction and a record that stands.
 *
 * `older`: a correction, withdrawn or not → what it replaces. `standing`: the ids that are not withdrawn.
 */
export function corrected(older: ReadonlyMap<string, string>, standing: Ids): Corrected[] {
  const newer = new Map<string, string[]>();
  for (const [correction, of] of older) newer.set(of, [...(newer.get(of) ?? []), correction]);
  const firsts = [...newer.keys()].filter((of) => !older.has(of));
  const told = new Set<string>();
  const facts: Corrected[] = [];
  // The latter for those that replace each other in a circle, which have no first.
  for (const first of [...firsts, ...older.keys()]) {
    const all = from(first, newer, told);
    const rivals = rivalsIn(all, newer, standing).sort(order);
    if (rivals.length) facts.push({ all, rivals, counts: rivals.at(-1)! });
  }
  return facts;
}

function from(first: string, newer: Newer, told: Set<string>): string[] {
  const all: string[] = [];
  const ahead = [first];
  for (const each of ahead) {
    if (told.has(each)) continue;
    told.add(each);
    all.push(each);
    ahead.push(...(newer.get(each) ?? [])); // grows while it is walked
  }
  return all;
}

function rivalsIn(all: readonly string[], newer: Newer, standing: Ids): string[] {
  const hasNewer = new Set<string>(); // what it has stands in its place, itself or by a correction of it
  const rivals: string[] = [];
  for (const each of all.toReversed()) {
    const below = newer.get(each)?.some((correction) => hasNewer.has(correction)) ?? false;
    if (standing.has(each) && !below) rivals.push(each);
    if (standing.has(each) || below) hasNewer.add(each);
  }
  return rivals;
}
