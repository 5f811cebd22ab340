/**
 * The mean over what may have gone on: behaviours of the scales, and none, one or two changes nobody wrote down.
 *
 * Naming the surest change and forgetting that it was guessed would make the interval too narrow; ignoring what is not
 * quite sure would do so too. So under every behaviour every set of none, one or two steps and looks that are off counts
 * with its probability: beforehand one gap between looks in eight hides a change (an assumption, no source), any place
 * as likely as another, and a change is as large as what is worth knowing (normal, with a standard deviation of five
 * times its own standard uncertainty, which takes √26 from its likelihood). The spread between these answers is doubt
 * beside that of the errors.
 *
 * A step next to the first look and an error of it are the same data and the same answer: it counts twice. A step before
 * the last look and an error of that are the same data with two answers, and both count, each with its odds.
 */

import { along } from "./misfit";
import { addTo, type Column, dot, row, sumOf, times } from "./precision";
import type { View } from "./views";

const A_GAP = 0.125;
const SIZE = 0.5 * Math.log(1 + 5 * 5);
const MANY = 40;
const FAR_LESS = 16; // a set this much less likely (in ln) than the best says nothing
const NONE = -1;

/**
 * Every set of changes under every view, an element each. `a`, `b`: its candidates, −1 for none; `sizes`: theirs.
 *
 * `off`: whether the last look is off, and no step before it. `chance`: of each; `share`: in the answer that counts.
 * `inverse`: of the normal equations (aa, ab, bb). `last`: the step before the last look.
 */
export type Sets = {
  readonly views: readonly View[];
  readonly view: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly off: Int32Array;
  readonly chance: Column;
  readonly share: Column;
  readonly inverse: readonly [Column, Column, Column];
  readonly sizes: readonly [Column, Column];
  readonly last: number;
};

/** A weighting of the looks, averaged: its `weights`, and by set the `values` and how far a and b `reach` it. */
export type Averaged = { readonly weights: Column; readonly values: Column; readonly reach: readonly [Column, Column] };

/**
 * The sets with their chances.
 *
 * `freedom`: how many independent things the looks tell beside their mean. Of one only, all candidates are the same
 * data: either the last look is off, or the one before it is or a step lies between them.
 */
export function setsOf(views: readonly View[], freedom: number): Sets {
  const last = (views[0] as View).values.length - 2;
  const found = new Found(last, freedom);
  for (const [m, view] of views.entries()) addView(found, view, m, freedom);
  const { likely, view, a, b, off, across, most } = found;
  const kept = Int32Array.from(likely.keys()).filter((n) => (likely[n] as number) > most - FAR_LESS);
  const taken = (of: readonly number[]) => kept.map((n) => of[n] as number);
  const chance = Float64Array.from(kept, (n) => Math.exp((likely[n] as number) - most));
  const whole = sumOf(chance);
  for (let n = 0; n < chance.length; n++) chance[n] = (chance[n] as number) / whole;
  const sets = { views, view: taken(view), a: taken(a), b: taken(b), off: taken(off), chance, share: chance, last };
  return {
    ...sets,
    ...solved(
      sets,
      Float64Array.from(kept, (n) => across[n] as number),
    ),
  };
}

/** Sets as they are found, but those far less likely than one found before. */
class Found {
  readonly likely: number[] = [];
  readonly view: number[] = [];
  readonly a: number[] = [];
  readonly b: number[] = [];
  readonly off: number[] = [];
  readonly across: number[] = [];
  most = -Infinity;
  readonly #last: number;
  readonly #freedom: number;

  constructor(last: number, freedom: number) {
    this.#last = last;
    this.#freedom = freedom;
  }

  /** A set in all ways it may have come about: with the last look right; if the last step is in it, with it off. */
  add(likely: number, view: number, a: number, b: number, across: number): void {
    const isFirst = a === 0 || b === 0;
    this.push(likely + (isFirst || this.#freedom === 1 ? Math.LN2 : 0), view, a, b, 0, across);
    if (a !== this.#last && b !== this.#last) return;
    this.push(likely + (isFirst && this.#last > 0 ? Math.LN2 : 0), view, a, b, 1, across);
  }

  push(likely: number, view: number, a: number, b: number, off: number, across: number): void {
    if (likely <= this.most - FAR_LESS) return;
    if (likely > this.most) this.most = likely;
    this.likely.push(likely);
    this.view.push(view);
    this.a.push(a);
    this.b.push(b);
    this.off.push(off);
    this.across.push(across);
  }
}

function addView(found: Found, { candidates, likely }: View, view: number, freedom: number): void {
  const last = candidates.count - 2;
  const hidden = A_GAP * (candidates.count - 1);
  const usable = freedom > 1 ? candidates.usable : candidates.usable.filter((n) => n === last);
  found.push(likely, view, NONE, NONE, 0, 0);
  const single = likely - SIZE + Math.log(hidden / usable.length);
  for (const a of usable) found.add(single + 0.5 * (candidates.better[a] as number), view, a, NONE, 0);
  // Of many weigh-ins only steps go in pairs: two next to each other are a look that is off.
  const paired = usable.length <= MANY ? usable : usable.filter((n) => n <= last);
  const grams: Column[] = [];
  candidates.rows((gram) => grams.push(gram));
  let apart = 0;
  for (let n = 0; n < paired.length; n++) {
    const a = paired[n] as number;
    for (let m = n + 1; m < paired.length; m++) {
      const b = paired[m] as number;
      if (candidates.determinant(a, b, row(grams, a)[b] as number) > 0) apart++;
    }
  }
  const double = likely - 2 * SIZE + Math.log((0.5 * hidden * hidden) / apart);
  for (let n = 0; n < paired.length; n++) {
    const a = paired[n] as number;
    for (let m = n + 1; m < paired.length; m++) {
      const b = paired[m] as number;
      const across = row(grams, a)[b] as number;
      const better = candidates.betterTogether(a, b, across);
      if (candidates.determinant(a, b, across) > 0) found.add(double + 0.5 * better, view, a, b, across);
    }
  }
}

type Unsolved = Pick<Sets, "views" | "view" | "a" | "b">;

/** The inverses of the normal equations, and the sizes of the changes. */
function solved({ views, view, a, b }: Unsolved, across: Column): Pick<Sets, "inverse" | "sizes"> {
  const [aa, ab, bb, one, two] = Array.from({ length: 5 }, () => new Float64Array(view.length)) as [
    Column,
    Column,
    Column,
    Column,
    Column,
  ];
  for (let n = 0; n < view.length; n++) {
    const [i, j] = [a[n] as number, b[n] as number];
    if (i === NONE) continue;
    const { own, told } = (views[view[n] as number] as View).candidates;
    const [first, second] = [own[i] as number, j === NONE ? 1 : (own[j] as number)];
    const [x, y] = [told[i] as number, j === NONE ? 0 : (told[j] as number)];
    const determinant = first * second - (across[n] as number) * (across[n] as number);
    aa[n] = second / determinant;
    ab[n] = -(across[n] as number) / determinant;
    bb[n] = j === NONE ? 0 : first / determinant;
    one[n] = (aa[n] as number) * x + (ab[n] as number) * y;
    two[n] = (ab[n] as number) * x + (bb[n] as number) * y;
  }
  return { inverse: [aa, ab, bb], sizes: [one, two] };
}

/** Whether a set has the last step in it, and so another answer: the lower of the two (1), the other (−1), or not (0). */
export function lowerOf({ a, b, off, sizes, last }: Sets): Int32Array {
  // With more in the car by the last look the lower answer is that the look is off.
  return off.map((isOff, n) => {
    if ((a[n] as number) !== last && (b[n] as number) !== last) return 0;
    const size = sizes[(a[n] as number) === last ? 0 : 1][n] as number;
    return Boolean(isOff) === size > 0 ? 1 : -1;
  });
}

/** The same with only some of them in the answer. */
export function counting(sets: Sets, counts: (set: number) => boolean): Sets {
  const share = sets.chance.map((chance, n) => (counts(n) ? chance : 0));
  const whole = sumOf(share);
  return { ...sets, share: share.map((each) => each / whole) };
}

/** A weighting by view that is best when nothing changed (its sum one, or zero), averaged over the sets. */
export function averaged(sets: Sets, byView: readonly Column[], values: Column): Averaged {
  const { views, view, a, b, off, share, inverse, sizes, last } = sets;
  const [aa, ab, bb] = inverse;
  const effects = byView.map(along);
  const wholes = byView.map(sumOf);
  const plain = byView.map((weights) => dot(weights, values));
  const taken = effects.map(({ length }) => new Float64Array(length));
  const shares = new Float64Array(views.length);
  const [first, second, found] = [a, a, a].map(({ length }) => new Float64Array(length)) as [Column, Column, Column];
  for (let n = 0; n < a.length; n++) {
    const [m, i, j, counts] = [view[n] as number, a[n] as number, b[n] as number, share[n] as number];
    const [effect, sum, whole] = [row(effects, m), row(taken, m), (off[n] as number) ? (wholes[m] as number) : 0];
    shares[m] = (shares[m] as number) + counts;
    found[n] = plain[m] as number;
    if (i === NONE) continue;
    const one = (effect[i] as number) + (i === last ? whole : 0);
    const two = j === NONE ? 0 : (effect[j] as number) + (j === last ? whole : 0);
    first[n] = one;
    second[n] = two;
    found[n] = (plain[m] as number) - one * (sizes[0][n] as number) - two * (sizes[1][n] as number);
    sum[i] = (sum[i] as number) + counts * ((aa[n] as number) * one + (ab[n] as number) * two);
    if (j !== NONE) sum[j] = (sum[j] as number) + counts * ((ab[n] as number) * one + (bb[n] as number) * two);
  }
  const weights = new Float64Array(values.length);
  views.forEach(({ told }, m) => {
    addTo(weights, row(byView, m), shares[m] as number);
    addTo(weights, times(told.beside, together(row(taken, m), values.length)), -1);
  });
  return { weights, values: found, reach: [first, second] };
}

/** So much of every candidate's column, in one. */
function together(amounts: Column, count: number): Column {
  const column = new Float64Array(count);
  let before = 0;
  for (let n = count - 2; n >= 0; n--) {
    before -= amounts[n] as number;
    column[n] = before + (n > 0 ? (amounts[count - 2 + n] as number) : 0);
  }
  return column;
}

/** Of two weightings under each set; `byView`: theirs when nothing changed. */
export function covarianceBySet(
  { view, inverse: [aa, ab, bb] }: Sets,
  a: Averaged,
  b: Averaged,
  byView: Column,
): Column {
  return a.values.map((_, n) => {
    const [one, two, first, second] = [
      a.reach[0][n] as number,
      a.reach[1][n] as number,
      b.reach[0][n] as number,
      b.reach[1][n] as number,
    ];
    const left = one * ((aa[n] as number) * first + (ab[n] as number) * second);
    return (
      (byView[view[n] as number] as number) + left + two * ((ab[n] as number) * first + (bb[n] as number) * second)
    );
  });
}

/** The covariance of two weightings over all sets that count: within each, and between their values. */
export function mixed({ share }: Sets, a: Averaged, b: Averaged, bySet: Column): number {
  const [meanA, meanB] = [dot(share, a.values), dot(share, b.values)];
  return share.reduce((sum, each, n) => {
    return sum + each * ((bySet[n] as number) + ((a.values[n] as number) - meanA) * ((b.values[n] as number) - meanB));
  }, 0);
}
