/**
 * The mean over none, one and two changes that nobody wrote down, each as likely as the looks make it.
 *
 * Naming the surest change and forgetting that it was guessed would make the interval too narrow; ignoring what is not
 * quite sure would do so too. So every set of none, one or two steps and looks that are off counts with its
 * probability: beforehand one gap between looks in eight hides a change (an assumption, no source), any place as likely
 * as another, and a change is as large as what is worth knowing (normal, with a standard deviation of five times its own
 * standard uncertainty, which takes √26 from its likelihood). The spread between these answers is doubt beside that of
 * the errors.
 *
 * A step next to the first look and an error of it are the same data and the same answer: it counts twice. A step before
 * the last look and an error of that are the same data with two answers, and both count. When that is named, the value
 * is the lower of the two, for nobody may rely on weight that may not be there; the doubt holds both.
 */

import { dot } from "../numbers/plain";
import { fsum } from "../numbers/uncertain";
import { along, type Candidates } from "./misfit";
import { at, type Matrix, row, times, type Vector } from "./precision";

const A_GAP = 0.125;
const SIZE = 0.5 * Math.log(1 + 5 * 5);
const MANY = 40;
const FAR_LESS = 40; // a set this much less likely (in ln) than the best says nothing

/**
 * One set of changes: its `chance`, and its `share` in the value. `among`: the candidates, `sizes`: theirs.
 *
 * `inverse`: that of their normal equations, row by row. `off`: whether the last look is off, and no step before it.
 */
export type Guess = {
  readonly among: readonly number[];
  readonly chance: number;
  readonly share: number;
  readonly sizes: Vector;
  readonly inverse: Matrix;
  readonly off: boolean;
};

/**
 * A weighting of the looks after averaging: its `weights`, and by set of changes how far the value `shifts`.
 *
 * `effects`: how far each change of a set moves it; `taken`: how much of each candidate is taken out in the mean.
 */
export type Averaged = {
  readonly weights: Vector;
  readonly shifts: Vector;
  readonly effects: Matrix;
  readonly taken: Vector;
};

type Likely = { readonly likely: number; readonly among: readonly number[]; readonly off: boolean };

/**
 * The sets with their chances. `lower`: the last look may be off and that is named: the lower answer counts.
 *
 * `freedom`: how many independent things the looks tell beside their mean. Of one only, all candidates are the same
 * data: either the last look is off, or the one before it is or a step lies between them.
 */
export function guesses(found: Candidates, freedom: number, lower: boolean): Guess[] {
  const last = found.count - 2;
  const usable = freedom > 1 ? found.usable() : found.usable().filter((n) => n === last);
  // Of many weigh-ins only steps go in pairs: two next to each other are a look that is off.
  const paired = usable.length <= MANY ? usable : usable.filter((n) => n <= last);
  const pairs = paired.flatMap((a, n) => {
    return paired.slice(n + 1).flatMap((b) => (found.determinant(a, b) !== 0 ? [[a, b]] : []));
  });
  const hidden = A_GAP * (found.count - 1);
  const sets: Likely[] = [
    { likely: 0, among: [], off: false },
    ...likelyOf(
      found,
      usable.map((n) => [n]),
      hidden,
      freedom,
    ),
    ...likelyOf(found, pairs, 0.5 * hidden * hidden, freedom),
  ];
  const most = sets.reduce((best, { likely }) => Math.max(best, likely), -Infinity);
  const kept = sets.filter(({ likely }) => likely > most - FAR_LESS);
  const chances = kept.map(({ likely }) => Math.exp(likely - most));
  const whole = fsum(chances);
  return sharedOut(
    found,
    kept.map((each, n) => guessOf(found, each, at(chances, n) / whole)),
    lower,
  );
}

function likelyOf(found: Candidates, several: readonly number[][], beforehand: number, freedom: number): Likely[] {
  return several.flatMap((among) => {
    const better = 0.5 * betterBy(found, among) - among.length * SIZE + Math.log(beforehand / several.length);
    return waysOf(among, found.count - 2, freedom).map(([off, ways]) => {
      return { likely: better + Math.log(ways), among, off };
    });
  });
}

/** In how many ways a set may have come about: with the last look right; if the last step is in it, with it off. */
function waysOf(among: readonly number[], last: number, freedom: number): [boolean, number][] {
  const steps = among.includes(0) || (freedom === 1 && among.length > 0) ? 2 : 1;
  if (!among.includes(last)) return [[false, steps]];
  return [
    [false, steps],
    [true, among.includes(0) && last > 0 ? 2 : 1],
  ];
}

function betterBy(found: Candidates, [a, b]: readonly number[]): number {
  if (a === undefined || b === undefined) return found.better(a ?? 0);
  return found.betterTimes(a, b) / found.determinant(a, b);
}

function guessOf(found: Candidates, { among, off }: Likely, chance: number): Guess {
  const inverse = inverseOf(found, among);
  const sizes = inverse.map((each) =>
    dot(
      each,
      among.map((n) => at(found.told, n)),
    ),
  );
  return { among, chance, share: chance, sizes, inverse, off };
}

/** With `lower`, the lower of two answers that are the same data has the share of both. */
function sharedOut(found: Candidates, sets: readonly Guess[], lower: boolean): Guess[] {
  if (!lower) return [...sets];
  const both = new Map<string, number>();
  for (const { among, chance } of sets) both.set(among.join(), (both.get(among.join()) ?? 0) + chance);
  return sets.map((each) => {
    const last = each.among.indexOf(found.count - 2);
    if (last < 0) return each;
    // More in the car by the last look: less when that look is off.
    const counts = each.off === at(each.sizes, last) > 0;
    return { ...each, share: counts ? (both.get(each.among.join()) as number) : 0 };
  });
}

function inverseOf(found: Candidates, [a, b]: readonly number[]): Matrix {
  if (a === undefined) return [];
  if (b === undefined) return [[1 / found.own(a)]];
  const determinant = found.determinant(a, b);
  const across = -at(row(found.gram, a), b) / determinant;
  return [
    [found.own(b) / determinant, across],
    [across, found.own(a) / determinant],
  ];
}

/** A weighting that is best when nothing changed (its sum one, or zero), averaged over the sets of changes. */
export function averaged(found: Candidates, sets: readonly Guess[], weights: Vector): Averaged {
  const along_ = along(weights);
  const whole = fsum(weights);
  const last = found.count - 2;
  const taken = along_.map(() => 0);
  const effects = sets.map((each) => {
    const reach = each.among.map((n) => at(along_, n) + (each.off && n === last ? whole : 0));
    each.among.forEach((n, m) => {
      taken[n] = at(taken, n) + each.share * dot(row(each.inverse, m), reach);
    });
    return reach;
  });
  const images = weights.map((_, look) =>
    dot(
      taken,
      found.images.map((image) => at(image, look)),
    ),
  );
  return {
    weights: weights.map((x, look) => x - at(images, look)),
    shifts: sets.map(({ sizes }, n) => -dot(row(effects, n), sizes)),
    effects,
    taken,
  };
}

/**
 * What averaging adds to the covariance of two weightings beyond the errors of the looks.
 *
 * `cautious`: of the answers that count only, for asking how low the value may be.
 */
export function spreadOf(
  found: Candidates,
  sets: readonly Guess[],
  a: Averaged,
  b: Averaged,
  cautious = false,
): number {
  const meanA = fsum(sets.map(({ share }, n) => share * at(a.shifts, n)));
  const meanB = fsum(sets.map(({ share }, n) => share * at(b.shifts, n)));
  const between = fsum(
    sets.map((each, n) => {
      const reached = dot(row(a.effects, n), times(each.inverse, row(b.effects, n)));
      const apart = (at(a.shifts, n) - meanA) * (at(b.shifts, n) - meanB);
      return (cautious ? each.share : each.chance) * (reached + apart);
    }),
  );
  return between - dot(a.taken, times(found.gram, b.taken));
}
