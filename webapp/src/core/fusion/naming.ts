/**
 * Which steps and odd looks are named: those the looks explain so much better than chance that it is worth saying.
 *
 * Over all behaviours of the scales, each as likely as the looks make it, D is twice the ln of how much better the looks
 * are explained with a change than without: with one behaviour the Δχ² of `misfit`. A step that a wandering gain
 * explains as well is so not named, and one that stands out stays named though gains may wander.
 *
 * The first is named when D is beyond what chance does once in twenty among all candidates; two together likewise, which
 * finds two that hide each other. Once something is wrong, a second is named when it pays for the choice of its place,
 * 2 ln n for n candidates [Foster and George, Ann. Statist. 22 (1994) 1947]; a third must stand as the first. One degree
 * of freedom is always left over: what explains everything explains nothing.
 */

import { inverse } from "../numbers/normal";
import { at, type Column } from "./precision";
import { logSum, type View } from "./views";

export const BEYOND_CHANCE = 3.841458820694124; // χ² of one degree of freedom, 95 %
const BY_CHANCE = 0.05;
const ALIKE = 1e-8; // of a D: what differs by less are the same data, and rounding does not choose among them

/** The candidates to name, the surest first. */
export function named(views: readonly View[]): number[] {
  const [{ told, candidates }] = views as [View];
  const { usable } = candidates;
  if (told.freedom < 2 || usable.length === 0) return [];
  const first = firstOf(usable.length);
  let chosen = pairOrOne(views, usable, told.freedom, first);
  while (chosen.length > 0 && told.freedom - chosen.length >= 2) {
    const better = betterWith(views.map((view) => view.without(chosen)));
    const best = surest(better);
    if (at(better, best) <= first) break;
    chosen = [...chosen, best];
  }
  return chosen;
}

/** D of each candidate. */
export function betterWith(views: readonly View[]): Column {
  const likely = Float64Array.from(views, (view) => view.likely);
  const whole = logSum(likely);
  const found = views.map(({ candidates }) => candidates.better);
  return (found[0] as Column).map((_, n) => {
    return 2 * (logSum(likely.map((each, m) => each + 0.5 * at(found[m] as Column, n))) - whole);
  });
}

/** The Δχ² that chance reaches once in twenty, at the most, among so many candidates. */
function firstOf(count: number): number {
  const z = inverse(BY_CHANCE / (2 * count));
  return z * z;
}

/** The first that no other beats by more than rounding. */
function surest(better: Column): number {
  const most = better.reduce((a, b) => Math.max(a, b));
  return better.findIndex((each) => each >= most - ALIKE * Math.abs(most));
}

function pairOrOne(views: readonly View[], usable: readonly number[], freedom: number, first: number): number[] {
  const better = betterWith(views);
  const best = usable[surest(Float64Array.from(usable, (n) => at(better, n)))] as number;
  const alone = at(better, best);
  if (freedom > 2 && usable.length > 1) {
    const [pair, together] = bestPair(views, usable);
    const pairs = (usable.length * (usable.length - 1)) / 2;
    const isTold = alone > first || together > -2 * Math.log(BY_CHANCE / pairs);
    if (isTold && together - alone > Math.max(BEYOND_CHANCE, 2 * Math.log(usable.length))) {
      return surest(Float64Array.from(pair, (n) => at(better, n))) === 0 ? pair : pair.reverse();
    }
  }
  return alone > first ? [best] : [];
}

/** The two that explain the looks best together, and their D. */
function bestPair(views: readonly View[], usable: readonly number[]): [number[], number] {
  const pairs = (usable.length * (usable.length - 1)) / 2;
  // Twice over the pairs: their likeliest view first, then the sum over all of those that may be the best.
  const most = new Float64Array(pairs).fill(-Infinity);
  const sums = new Float64Array(pairs);
  let enough = -Infinity;
  for (const isSum of [false, true]) {
    for (const { candidates, likely } of views) {
      let pair = 0;
      let n = 0;
      candidates.rows((gram, a) => {
        if (a !== usable[n]) return;
        for (let m = ++n; m < usable.length; m++, pair++) {
          const high = most[pair] as number;
          if (isSum && high < enough) continue;
          const b = usable[m] as number;
          const found = likely + 0.5 * candidates.betterTogether(a, b, gram[b] as number);
          if (isSum) sums[pair] = (sums[pair] as number) + Math.exp(found - high);
          else if (found > high) most[pair] = found;
        }
      });
    }
    enough = most.reduce((a, b) => Math.max(a, b)) - Math.log(views.length);
  }
  const whole = logSum(Float64Array.from(views, ({ likely }) => likely));
  const together = most.map((high, pair) => 2 * (high + Math.log(sums[pair] as number) - whole));
  let best = surest(together);
  const found = at(together, best);
  let n = 0;
  for (let left = usable.length - 1; best >= left; left--, n++) best -= left;
  return [[at(usable, n), at(usable, n + 1 + best)], found];
}
