/**
 * The surest weight from all looks at it, what does not fit among them, and what one more look would tell.
 *
 * The looks of `core/fusion/evidence` are combined by generalised least squares: the weights are V 1 / (1ᵀ V 1) with V
 * the inverse of their covariance, parts of unknown mass swept out. Because each look is kept as the sum of its
 * sources, the weight is one too, and what it shares with anything else, such as the error of the official scale, is
 * exact.
 *
 * A scale's gain acts on the car, not on the reading: the errors of gains are taken at the loads the fit says, three
 * times over. At the readings, a low reading would look the surer for being low.
 */

import { dot } from "../numbers/plain";
import { type Uncertain, u, uncertain, weightedSum } from "../numbers/uncertain";
import { type Averaged, averaged, type Guess, guesses, spreadOf } from "./average";
import { covariances, type Steady, steady } from "./covariances";
import { about, type Evidence, expandedBy, sharedWith, valuesOf, weightedBy } from "./evidence";
import { BEYOND_CHANCE, Candidates, columnOf, named } from "./misfit";
import {
  at,
  bestWeights,
  cleared,
  leastTelling,
  type Matrix,
  precision,
  row,
  swept,
  times,
  type Vector,
} from "./precision";

const PASSES = 3;
/** The source that holds the doubt about changes nobody wrote down, beside the errors of the looks. */
export const UNLOGGED = "unlogged";

/**
 * What the looks tell: the inverse of their covariance, parts of unknown mass swept out.
 *
 * `beside`: beside their mean. `freedom`: how many independent things that are. `nothing_new`: looks that tell nothing
 * the later ones do not. `doubts`: the standard uncertainty of each look alone, kg.
 */
export type Told = {
  readonly matrix: Matrix;
  readonly beside: Matrix;
  readonly freedom: number;
  readonly nothing_new: readonly number[];
  readonly doubts: Vector;
};

/**
 * All looks together. `weight` in kg.
 *
 * `values`: the weight now by each look. `told`: what they tell when nothing changed; `settled`: when changes beyond
 * the surest two may have any size. `names`: what is named as not fitting, the surest first. `lower`: the last look is
 * named or, where there are only two to tell, differs by more than chance lets it: the lower answer counts. `cautious`:
 * the weight with the doubt of the answers that count only, for asking how low it may be.
 */
export type Fusion = {
  readonly evidence: Evidence;
  readonly values: Vector;
  readonly told: Told;
  readonly settled: Told;
  readonly names: readonly number[];
  readonly lower: boolean;
  readonly found: Candidates;
  readonly sets: readonly Guess[];
  readonly mean: Averaged;
  readonly weight: Uncertain;
  readonly cautious: Uncertain;
};

/** The surest weight from the evidence. */
export function fused(given: Evidence): Fusion {
  const values = valuesOf(given);
  let evidence = given;
  const same = steady(given);
  let told = toldBy(evidence, same);
  for (let pass = 0; pass < PASSES; pass++) {
    const mean = dot(bestWeights(told.matrix), values);
    const totals = evidence.counted.map(({ loads }) => loads.loads.total?.value ?? mean);
    evidence = about(
      evidence,
      totals.map((load, look) => load - (at(values, look) - mean)),
    );
    told = toldBy(evidence, same);
  }
  const least = leastTelling(told.matrix);
  const names = named(told.beside, values, told.freedom);
  const settled = without(told, names.slice(2));
  const found = new Candidates(settled.beside, values, least);
  const last = values.length - 2;
  const lower = names.includes(last) || (told.freedom === 1 && found.better(last) > BEYOND_CHANCE);
  const sets = guesses(found, told.freedom, lower);
  const mean = averaged(found, sets, bestWeights(settled.matrix));
  const bare = weightedBy(evidence, mean.weights);
  const weight = doubted(bare, spreadOf(found, sets, mean, mean));
  const cautious = doubted(bare, spreadOf(found, sets, mean, mean, true));
  return { evidence, values, told, settled, names, lower, found, sets, mean, weight, cautious };
}

/** The weight with the doubt of changes beside its own. */
function doubted(weight: Uncertain, variance: number): Uncertain {
  if (!(variance > 0)) return weight;
  return uncertain(weight.value, { ...weight.sources, [UNLOGGED]: Math.sqrt(variance) });
}

function toldBy(evidence: Evidence, same: Steady): Told {
  const shared = covariances(evidence, same);
  const [inverse, dropped] = precision(shared);
  const last = inverse.length - 1;
  // Nothing is in doubt at all: the last look is as good as any.
  if (dropped.length === inverse.length) (inverse[last] as number[])[last] = 1;
  const nothing_new = dropped.length === inverse.length ? dropped.slice(0, -1) : dropped;
  const least = leastTelling(inverse);
  let matrix: Matrix = inverse;
  let freedom = last - nothing_new.length;
  for (const part of evidence.flat) {
    if (dot(part, times(matrix, part)) <= least) continue;
    matrix = swept(matrix, part, least);
    freedom -= 1;
  }
  matrix = cleared(matrix, least);
  const doubts = shared.map((each, look) => Math.sqrt(at(each, look)));
  return { matrix, beside: besideMean(matrix), freedom, nothing_new, doubts };
}

function besideMean(matrix: Matrix): Matrix {
  return swept(
    matrix,
    matrix.map(() => 1),
    0,
  );
}

/** What is left when these changes may have any size. */
function without(told: Told, names: readonly number[]): Told {
  let { matrix } = told;
  for (const name of names) matrix = swept(matrix, columnOf(matrix.length, name), leastTelling(told.matrix));
  return { ...told, matrix, beside: besideMean(matrix) };
}

/** An item (a scale's gain) with what the looks tell of it, for use beside the cautious weight. */
export function learned(fusion: Fusion, item: Uncertain): Uncertain {
  const { found, sets, mean } = fusion;
  const shared = sharedWith(fusion.evidence, item);
  const byLooks = averaged(
    found,
    sets,
    times(fusion.settled.beside, shared).map((each) => -each),
  );
  const terms = expandedBy(fusion.evidence, byLooks.weights);
  const known = weightedSum([item, ...terms.map(([each]) => each)], [1, ...terms.map(([, weight]) => weight)]);
  const common = fusion.cautious.sources[UNLOGGED] ?? 0;
  const across = common ? spreadOf(found, sets, mean, byLooks, true) / common : 0;
  const own = Math.sqrt(Math.max(0, spreadOf(found, sets, byLooks, byLooks, true) - across * across));
  const sources: Record<string, number> = { ...known.sources };
  if (across) sources[UNLOGGED] = across;
  if (own) sources[`${UNLOGGED}:gain`] = own;
  return uncertain(known.value, sources);
}

/** Standard uncertainty of the weight if this look (kg, at the weight now) were there too. */
export function uWith(fusion: Fusion, look: Uncertain): number {
  const shared = sharedWith(fusion.evidence, look);
  const now = u(fusion.weight) * u(fusion.weight);
  const fresh = u(look) * u(look) - dot(shared, times(fusion.settled.beside, shared));
  const across = dot(fusion.mean.weights, shared);
  const apart = now + fresh - 2 * across;
  return apart > 0 ? Math.sqrt(Math.max(0, now * fresh - across * across) / apart) : u(fusion.weight);
}

/** A look less what the others say; null when they say nothing of it. */
export function residualOf({ told, values }: Fusion, look: number): Uncertain | null {
  const own = at(row(told.beside, look), look);
  if (own <= leastTelling(told.matrix)) return null;
  return uncertain(dot(row(told.beside, look), values) / own, { looks: Math.sqrt(1 / own) });
}

/** The size of a named change (kg, more in the car is positive), the others named taken out. */
export function sizeOf(fusion: Fusion, name: number): Uncertain {
  const shape = columnOf(fusion.values.length, name);
  const image = times(besideOthers(fusion, name), shape);
  const own = dot(image, shape);
  return weightedBy(
    fusion.evidence,
    image.map((each) => each / own),
  );
}

/** What the looks tell beside their mean and all named changes but this one. */
export function besideOthers({ told, names }: Fusion, name: number): Matrix {
  return without(
    told,
    names.filter((other) => other !== name),
  ).beside;
}
