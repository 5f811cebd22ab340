/**
 * Several readings of one thing: their mean, and whether they agree.
 *
 * The weighted mean by generalised least squares, with what the readings share: readings of one scale share its gain,
 * scales checked with one known mass share that. Shared errors are taken at the mean, not at each reading: at the
 * readings, a low reading would look the more certain for being low, and pull the mean under all of them (known as
 * Peelle's puzzle). Readings of one scale then share all of their gain's error, so they can be averaged first; what is
 * left is one small system, a row a scale.
 *
 * A spread beyond one division and beyond what the uncertainties explain widens the mean by the Birge ratio, but only
 * the part the readings do not share: no spread can tell of an error that all of them have in common.
 */

import { dot, plainSum } from "../numbers/plain";
import { type Uncertain, uncertain } from "../numbers/uncertain";

const BEYOND = 1.5;
const PASSES = 3; // the mean moves the shared errors by their own tiny size; the third pass changes nothing

/** One reading as the mean needs it: value, own standard uncertainty and division of one piece, kg. */
export type Look = {
  readonly weighing: string;
  readonly scale: string;
  readonly value: number;
  readonly own: number;
  readonly division: number;
};

/** `spread`: largest less smallest reading, kg. `ratio`: the Birge ratio applied, 1 when the readings agree. */
export type Mean = { readonly mass: Uncertain; readonly spread: number; readonly ratio: number };

/** The readings of one scale, averaged: `gain` maps sources to relative standard deviations. */
type Scale = {
  readonly looks: readonly Look[];
  readonly value: number;
  readonly variance: number;
  readonly gain: Readonly<Record<string, number>>;
  readonly misfit: number; // chi-squared of its readings about their average
  readonly spread: number;
  readonly division: number;
};

/** The mean of at least one look; `gains` by scale id. Looks come in order of id. */
export function weightedMean(of: string, looks: readonly Look[], gains: ReadonlyMap<string, Uncertain>): Mean {
  const groups = new Map<string, Look[]>();
  for (const look of looks) {
    const group = groups.get(look.scale);
    if (group) group.push(look);
    else groups.set(look.scale, [look]);
  }
  const scales = [...groups].map(([scale, group]) => averaged(group, gains.get(scale) as Uncertain));
  const { value, weights, misfit } = fitted(scales);
  const sources = gainSources(scales, weights, value);
  const own = ownVariance(scales, weights);
  const ratio = beyondADivision(scales) ? Math.sqrt(Math.max(1, misfit / (looks.length - 1))) : 1;
  if (ratio > 1) {
    const unshared = own + (scales.length > 1 ? ofScales(sources) : 0);
    sources[`spread:${of}`] = Math.sqrt((ratio * ratio - 1) * unshared);
  }
  // Nobody else has these roundings: of several looks one source is left, not one for each of ten thousand weighings.
  sources[looks.length === 1 ? `round:${looks[0]?.weighing}` : `looks:${of}`] = Math.sqrt(own);
  return { mass: uncertain(value, sources), spread: spreadOf(looks), ratio };
}

function spreadOf(looks: readonly Look[]): number {
  let [least, most] = [Infinity, -Infinity];
  for (const look of looks) {
    least = Math.min(least, look.value);
    most = Math.max(most, look.value);
  }
  return most - least;
}

function averaged(looks: readonly Look[], gain: Uncertain): Scale {
  let [weight, total, misfit, division] = [0, 0, 0, 0];
  for (const look of looks) {
    weight += 1 / (look.own * look.own);
    total += look.value / (look.own * look.own);
    division = Math.max(division, look.division);
  }
  const value = looks.length === 1 ? (looks[0] as Look).value : total / weight;
  for (const look of looks) {
    misfit += ((look.value - value) / look.own) * ((look.value - value) / look.own);
  }
  const relative: Record<string, number> = {};
  for (const source in gain.sources) relative[source] = (gain.sources[source] as number) / (1 + gain.value);
  return { looks, value, variance: 1 / weight, gain: relative, misfit, spread: spreadOf(looks), division };
}

/**
 * Whether two looks on one scale, or the averages of two scales, differ by more than the coarser division.
 *
 * A display differs by whole divisions, so half a division more than one leaves out what computing adds to one.
 */
function beyondADivision(scales: readonly Scale[]): boolean {
  return scales.some((a, at) => {
    if (a.spread > BEYOND * a.division) return true;
    return scales.slice(at + 1).some((b) => Math.abs(a.value - b.value) > BEYOND * Math.max(a.division, b.division));
  });
}

type Fit = { readonly value: number; readonly weights: readonly number[]; readonly misfit: number };

/** The mean, each scale's weight in it, and chi-squared of all the readings. */
function fitted(scales: readonly Scale[]): Fit {
  const misfit = plainSum(scales.map((scale) => scale.misfit));
  if (scales.length === 1) return { value: (scales[0] as Scale).value, weights: [1], misfit };
  const values = scales.map((scale) => scale.value);
  let value = dot(
    scales.map(() => 1 / scales.length),
    values,
  );
  let weights: number[] = [];
  for (let pass = 0; pass < PASSES; pass++) {
    weights = weightsOf(scales, value);
    value = dot(weights, values);
  }
  const off = values.map((one) => one - value);
  return { value, weights, misfit: misfit + dot(off, solved(factored(scales, value), off)) };
}

/**
 * The weights of the surest mean among those that lie between the averages.
 *
 * Strongly shared errors can ask for a weight below zero, and then the mean may lie outside of all readings, where
 * nobody would believe it; such a scale is left out.
 */
function weightsOf(scales: readonly Scale[], value: number): number[] {
  const counted = [...scales];
  for (;;) {
    const ones = counted.map(() => 1);
    const found = solved(factored(counted, value), ones);
    const least = found.indexOf(Math.min(...found));
    if ((found[least] as number) < 0) {
      counted.splice(least, 1);
      continue;
    }
    const whole = dot(found, ones);
    const shares = new Map(counted.map((scale, at) => [scale, (found[at] as number) / whole]));
    return scales.map((scale) => shares.get(scale) ?? 0);
  }
}

/** The Cholesky factor of the covariance of the scales' averages. */
function factored(scales: readonly Scale[], value: number): number[][] {
  const root: number[][] = [];
  scales.forEach((scale, i) => {
    const row: number[] = [];
    for (let j = 0; j < i; j++) {
      const above = root[j] as number[];
      row.push((shared(scale, scales[j] as Scale, value) - dot(row, above)) / (above[j] as number));
    }
    // Never below the scale's own variance, whatever rounding does to the difference.
    const pivot = scale.variance + shared(scale, scale, value) - dot(row, row);
    row.push(Math.sqrt(Math.max(scale.variance, pivot)));
    root.push(row);
  });
  return root;
}

function shared(a: Scale, b: Scale, value: number): number {
  let total = 0;
  for (const source in a.gain) total += (a.gain[source] as number) * (b.gain[source] ?? 0);
  return value * value * total;
}

/** x with (root · rootᵀ) x = right. */
function solved(root: readonly (readonly number[])[], right: readonly number[]): number[] {
  const x = [...right];
  root.forEach((row, i) => {
    x[i] = ((x[i] as number) - dot(row, x.slice(0, i))) / (row[i] as number);
  });
  for (let i = root.length - 1; i >= 0; i--) {
    let below = 0;
    for (let j = i + 1; j < root.length; j++) below += (root[j]?.[i] as number) * (x[j] as number);
    x[i] = ((x[i] as number) - below) / (root[i]?.[i] as number);
  }
  return x;
}

function gainSources(scales: readonly Scale[], weights: readonly number[], value: number): Record<string, number> {
  const sources: Record<string, number> = {};
  scales.forEach((scale, at) => {
    for (const source in scale.gain) {
      const part = value * (weights[at] as number) * (scale.gain[source] as number);
      sources[source] = (sources[source] ?? 0) - part;
    }
  });
  return sources;
}

/** Variance of the mean by what no two looks share. */
function ownVariance(scales: readonly Scale[], weights: readonly number[]): number {
  return dot(
    weights.map((weight) => weight * weight),
    scales.map((scale) => scale.variance),
  );
}

/** Variance by the scales' own gains, which differ from scale to scale. */
function ofScales(sources: Readonly<Record<string, number>>): number {
  let total = 0;
  for (const source in sources) {
    if (source.startsWith("cal:")) total += (sources[source] as number) * (sources[source] as number);
  }
  return total;
}
