/**
 * The surest weight from all looks at it, what does not fit among them, and what one more look would tell.
 *
 * The looks of `core/fusion/evidence` are combined by generalised least squares: the weights are V 1 / (1ᵀ V 1) with V
 * the inverse of their covariance, parts of unknown mass swept out, averaged over how the scales may behave
 * (`behaviour`) and what may have changed unnoted (`average`). Because each look is kept as the sum of its sources, the
 * weight is one too, and what it shares with anything else, such as the error of the official scale, is exact.
 *
 * A scale's gain acts on the car, not on the reading: the errors of gains are taken at the loads the fit says, three
 * times over. At the readings, a low reading would look the surer for being low.
 */

import { fsum, type Uncertain, u, uncertain, weightedSum } from "../numbers/uncertain";
import { type Averaged, averaged, counting, covarianceBySet, lowerOf, mixed, type Sets, setsOf } from "./average";
import { type Behaviour, behaviours, type Group, moved, puts, scattered } from "./behaviour";
import { covariances, ownLooks, steady } from "./covariances";
import { about, type Evidence, expandedBy, sharedWith, valuesOf, weightedBy } from "./evidence";
import { type Spread, spreadOf } from "./mixture";
import { BEYOND_CHANCE, betterWith, named } from "./naming";
import {
  addTo,
  at,
  bestWeights,
  type Column,
  dot,
  type Matrix,
  row,
  telling,
  times,
  wholeOf,
  widthOf,
} from "./precision";
import { type Scatter, scatterOf } from "./scatter";
import { also, type Root, rootOf, type View, viewOf } from "./views";

const PASSES = 3;
const FAR_LESS = 12; // a behaviour this much less likely (in ln) than the best says nothing
const LAST_BITS = 1e-12; // of a doubt: a source that cancels
const NOTHING = 1e-6; // of a variance: a thousandth of the doubt, and what is less is rounding
/** The sources that hold the doubt about changes nobody wrote down, and of readings that scatter, beside the others. */
const [UNLOGGED, SCATTER] = ["unlogged", "scatter"];

/** One of the weights the looks allow, kg, with its own doubt, and its `odds`. `off`: the last look is off then. */
export type Possible = { readonly weight: Uncertain; readonly odds: number; readonly off: boolean | null };

/**
 * All looks together. `weight` in kg: the first of the `answers`, which counts.
 *
 * `values`: the weight now by each look. `leading`: the likeliest view when nothing changed; `views`: under each
 * behaviour, when changes beyond the surest two may have any size. `names`: what is named as not fitting, the surest
 * first. `lower`: the last look is named or, where there are only two to tell, differs by more than chance lets it: of
 * two answers the lower counts while its odds exceed the risk. `scatter`: beyond what the records say.
 */
export type Fusion = {
  readonly evidence: Evidence;
  readonly values: readonly number[];
  readonly leading: View;
  readonly names: readonly number[];
  readonly lower: boolean;
  readonly sets: Sets;
  readonly mean: Averaged;
  readonly weight: Uncertain;
  readonly answers: readonly Possible[];
  readonly scatter: Scatter | null;
};

/**
 * A scale's `gain` g with what the looks tell of it; and how its reading m(1 + g) spreads about that of the weight.
 *
 * `repeats`: how the scale repeats, kg; `about`: the variance that the reading of the weight has, kg².
 */
export type Learned = { readonly gain: Uncertain; readonly spread: (repeats: number, about: number) => Spread };

/** The surest weight from the evidence. `among`: the looks that may be off together; `risk`: see `Fusion`. */
export function fused(evidence: Evidence, among: readonly Group[], risk: number): Fusion {
  const looks = lookedAt(evidence, among);
  const names = named(looks.views);
  const [leading, left] = leadingOf(looks.views, names);
  const last = leading.values.length - 2;
  const { freedom } = leading.told;
  const lower = names.includes(last) || (freedom === 1 && at(betterWith(looks.views), last) > BEYOND_CHANCE);
  const every = setsOf(
    looks.views.map((view) => view.without(names.slice(2))),
    freedom,
  );
  const scatter = scatterOf(looks.evidence, left, names.length, looks.own, looks.rounding);
  const found = eitherOr(every, lower, risk).map(([sets, odds, off]) => {
    return { sets, off, odds, ...possible(looks, sets, among, scatter) };
  });
  const [{ sets, mean, weight }] = found as [(typeof found)[0]];
  const answers = found.map(({ weight, odds, off }) => ({ weight, odds, off }));
  const values = valuesOf(looks.evidence);
  return { evidence: looks.evidence, values, leading, names, lower, sets, mean, weight, answers, scatter };
}

/** `own`: the variance of each look by its display alone, kg²; `rounding`: of that, by its steps. */
type Looks = {
  readonly evidence: Evidence;
  readonly views: readonly View[];
  readonly loads: Column;
  readonly own: Column;
  readonly rounding: Column;
};

/** The looks under every behaviour worth following, gains acting on the loads of the fit. */
function lookedAt(given: Evidence, among: readonly Group[]): Looks {
  const same = steady(given);
  const values = Float64Array.from(valuesOf(given));
  const last = at(values, values.length - 1);
  const apart = values.map((each) => each - last);
  const flat = given.flat.map((part) => Float64Array.from(part));
  const thoughtOf = behaviours(among);
  const steadily = thoughtOf[0] as Behaviour;
  let evidence = given;
  let bare = covariances(evidence, same);
  let loads = apart;
  const kept = telling(bare);
  for (let pass = 0; pass < PASSES; pass++) {
    const { told } = viewOf(steadily, rootOf(bare, kept), flat, apart);
    const mean = last + dot(bestWeights(told.matrix), apart);
    loads = values.map((each, look) => (evidence.counted[look]?.loads.loads.total?.value ?? mean) - (each - mean));
    evidence = about(evidence, [...loads]);
    bare = covariances(evidence, same);
  }
  const own = ownLooks(evidence, same);
  const rounding = ownLooks(evidence, same, /^round:/);
  return { evidence, views: viewsOf({ thoughtOf, among, loads, own, bare, kept, flat, apart }), loads, own, rounding };
}

type ToView = {
  readonly thoughtOf: readonly Behaviour[];
  readonly among: readonly Group[];
  readonly loads: Column;
  readonly own: Column;
  readonly bare: Matrix;
  readonly kept: readonly number[];
  readonly flat: readonly Column[];
  readonly apart: Column;
};

/**
 * The looks under the behaviours worth following, with a change or without; the steady one comes first and stays.
 *
 * However well the looks fit, or a change makes them fit, they are no likelier than a covariance so wide lets them be: a
 * wandering or a scatter that cannot come near the best is not looked at, nor is a greater one.
 */
function viewsOf({ thoughtOf, among, loads, own, bare, kept, flat, apart }: ToView): View[] {
  const unknown = [apart.map(() => 1), ...flat];
  const roots = new Map<string, Root>();
  const gone: Behaviour[] = [];
  const found: [View, number][] = [];
  let most = -Infinity;
  let narrow = 0;
  for (const each of thoughtOf) {
    const { walk, scatter } = each;
    if (gone.some((other) => other.walk <= walk && other.scatter <= scatter)) continue;
    let root = roots.get(`${walk} ${scatter}`);
    if (!root) {
      const wide = scattered(bare, each, among, loads, own);
      const width = widthOf(wide, kept, unknown);
      if (each.likely - 0.5 * (width - narrow) < most - FAR_LESS - 1) {
        gone.push(each);
        continue;
      }
      root = rootOf(wide, kept);
      roots.set(`${walk} ${scatter}`, root);
      narrow ||= width;
    }
    const view = viewOf(each, moved(each, among, loads).reduce(also, root), flat, apart);
    const best = view.likely + 0.5 * Math.max(0, ...view.candidates.better);
    if (found.length === 0) narrow -= 2 * (each.likely - view.likely) - view.misfit;
    most = Math.max(most, best);
    found.push([view, best]);
  }
  return found.flatMap(([view, best], n) => (n === 0 || best > most - FAR_LESS ? [view] : []));
}

/** The likeliest view when what is named may have any size, as it is and so. */
function leadingOf(views: readonly View[], names: readonly number[]): [View, View] {
  const found = views.map((view): [View, View] => [view, view.without(names)]);
  return found.reduce((best, each) => (each[1].likely > best[1].likely ? each : best));
}

/**
 * The answers: which sets count in each, its odds, and whether the last look is off in it; what counts first.
 *
 * That is the lower one when its odds exceed the risk accepted: nobody may rely on weight that may not be there.
 */
function eitherOr(sets: Sets, isLower: boolean, risk: number): [Sets, number, boolean | null][] {
  const lower = lowerOf(sets);
  const chanceOf = (of: (n: number) => boolean) => sets.chance.reduce((sum, each, n) => (of(n) ? sum + each : sum), 0);
  const alike = chanceOf((n) => at(lower, n) !== 0);
  if (!isLower || alike <= 0) return [[sets, 1, null]];
  const low = chanceOf((n) => at(lower, n) > 0);
  const isOff = 2 * chanceOf((n) => at(lower, n) > 0 && at(sets.off, n) > 0) > low;
  const odds = low / alike;
  const answers: [Sets, number, boolean][] = [
    [counting(sets, (n) => at(lower, n) >= 0), odds, isOff],
    [counting(sets, (n) => at(lower, n) <= 0), 1 - odds, !isOff],
  ];
  return odds > risk ? answers : answers.reverse();
}

function possible(
  looks: Looks,
  sets: Sets,
  among: readonly Group[],
  scatter: Scatter | null,
): { mean: Averaged; weight: Uncertain } {
  const { values } = sets.views[0] as View;
  const mean = averaged(sets, weightsOf(sets), values);
  const bare = weightedBy(looks.evidence, [...mean.weights]);
  const whole = mixed(sets, mean, mean, covarianceBySet(sets, mean, mean, varianceOf(sets)));
  const extra = whole - u(bare) * u(bare);
  const doubts = doubtsOf(looks, sets, mean, among, extra > NOTHING * whole ? extra : 0);
  if (scatter?.wider) {
    doubts[SCATTER] = Math.sqrt(
      scatter.wider *
        dot(
          mean.weights.map((each) => each * each),
          looks.own,
        ),
    );
  }
  return { mean, weight: uncertain(bare.value, { ...bare.sources, ...doubts }) };
}

/** What averaging adds to the doubt of the errors: wandering gains, zeros, and else what nobody wrote down. */
function doubtsOf(
  { loads }: Looks,
  { views, view, share }: Sets,
  { weights }: Averaged,
  among: readonly Group[],
  extra: number,
): Record<string, number> {
  const found: Record<string, number> = {};
  let rest = extra;
  // The mean squares of the rates of walking and sloping, and of the zeros.
  const squares = new Float64Array(3);
  const rates = views.map(({ behaviour: { walk, slope, zero } }) => Float64Array.of(walk ** 2, slope ** 2, zero ** 2));
  for (const [n, m] of view.entries()) addTo(squares, row(rates, m), at(share, n));
  for (const group of among) {
    const [walk, slope, zero] = puts(group, loads, weights).map((each, k) => each * at(squares, k));
    const parts = { wander: (walk as number) + (slope as number), zero: zero as number };
    for (const [name, part] of Object.entries(parts)) {
      const taken = Math.min(part, rest);
      if (taken <= NOTHING * extra) continue;
      found[`${name}:${group.scale}`] = Math.sqrt(taken);
      rest -= taken;
    }
  }
  if (rest > NOTHING * extra) found[UNLOGGED] = Math.sqrt(rest);
  return found;
}

const weightsOf = ({ views }: Sets): Column[] => views.map(({ told }) => bestWeights(told.matrix));
const varianceOf = ({ views }: Sets): Column => Float64Array.from(views, ({ told }) => 1 / wholeOf(told.matrix));

/** An item (a scale's gain) with what the looks tell of it, for use beside the weight. */
export function learned({ evidence, values, sets, mean, weight }: Fusion, item: Uncertain): Learned {
  const shared = Float64Array.from(sharedWith(evidence, item));
  const byView = sets.views.map(({ told }) => times(told.beside, shared).map((each) => -each));
  const byLooks = averaged(sets, byView, (sets.views[0] as View).values);
  const withWeight = Float64Array.from(weightsOf(sets), (each) => dot(each, shared));
  const ofItem = Float64Array.from(byView, (each) => u(item) ** 2 + dot(each, shared));
  const weights = covarianceBySet(sets, mean, mean, varianceOf(sets));
  const across = covarianceBySet(sets, mean, byLooks, withWeight);
  const items = covarianceBySet(sets, byLooks, byLooks, ofItem);

  const terms = expandedBy(evidence, [...byLooks.weights]);
  const known = weightedSum([item, ...terms.map(([each]) => each)], [1, ...terms.map(([, share]) => share)]);
  const { [UNLOGGED]: common, [SCATTER]: more = 0 } = weight.sources;
  const alike = common ? (mixed(sets, mean, byLooks, across) - covariance(weight, known)) / common : 0;
  const own = mixed(sets, byLooks, byLooks, items) - u(known) ** 2 - alike * alike;
  const told = Object.entries(known.sources).filter(([, part]) => Math.abs(part) > LAST_BITS * u(known));
  const sources: Record<string, number> = Object.fromEntries(told);
  const least = NOTHING * u(known) ** 2;
  if (alike * alike > least) sources[UNLOGGED] = alike;
  if (own > least) sources[`${UNLOGGED}:gain`] = Math.sqrt(own);
  return {
    gain: uncertain(known.value, sources),
    spread: (repeats, about) => {
      const [m, through] = [weight.value, 1 + known.value];
      const middle = m - at(values, values.length - 1);
      const variance = weights.map((each, n) => {
        const shown = through * through * (each + more * more) + m * m * at(items, n);
        return shown + 2 * m * through * at(across, n) + repeats * repeats;
      });
      const off = mean.values.map((each, n) => {
        return (each - middle) * through + m * (at(byLooks.values, n) + item.value - known.value);
      });
      return spreadOf(sets.chance, off, variance, about);
    },
  };
}

/** What the two share. */
function covariance({ sources }: Uncertain, other: Uncertain): number {
  return fsum(Object.entries(sources).map(([name, part]) => part * (other.sources[name] ?? 0)));
}
