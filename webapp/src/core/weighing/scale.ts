/**
 * How far a scale may be off: one look at its display, and its gain.
 *
 * A scale shows s = (1 + g)·m, rounded to its division. The rounding of a look is a rectangle one division wide,
 * u = d/√12 (JCGM 100:2008, F.2.2.1), with the scale's own repeatability where somebody noted it or repeats show it
 * (`repeats`). The gain g is one error shared by every reading of that scale, `cal:<scale>`: it adds up over ten parts
 * instead of averaging out.
 *
 * The gain comes from checks with known masses, ĝ = Σ k(s−k)/u² ÷ Σ k²/u²: least squares of s − k against k, so that
 * the heavy check decides. A known mass is an error of its own, `known:<its name>`, shared by every scale checked with
 * it. Without checks, or when the checks tell less than is assumed anyway, the gain is zero ± an assumption by kind of
 * scale.
 */

import { type Garage, type Scale, type ScaleCheck, type Warned, warned } from "../garage/records";
import { dot, plainSum } from "../numbers/plain";
import type { Quantity } from "../numbers/quantity";
import { rectangular, type Uncertain, u, uncertain } from "../numbers/uncertain";
import { NONE, repeatsTo, type Scatter, scattersOn } from "./repeats";

/** The scale of a weighing that names none: all of them count as one scale, since most often they are. */
export const UNNAMED = "";

// Relative standard uncertainty of the gain: common practice, no source.
export const ASSUMED_GAIN: Readonly<Record<string, number>> = {
  kitchen: 0.003,
  bench: 0.002,
  hanging: 0.01,
  bathroom: 0.01,
  corner_pads: 0.002,
  axle_pads: 0.005,
  platform: 0.001,
};
const ASSUMED_GAIN_UNNAMED = 0.02;
const FAR_OFF = 0.2; // a scale this far off is a slip of the finger or of the unit, not a gain
const ASSUMED_KNOWN_WITHIN = 0.01; // of a known mass nobody said the tolerance of; common practice, no source

/**
 * What is known of one scale's errors. `gain` is relative; `division`, `repeatability`, `capacity` are kg.
 *
 * `assumed`: the gain is the assumption for its kind. `checks`: the checks that were used, by id; `checked`: when the last
 * of them was made, as it was written. `repeatability` is as noted, 0 where nobody did; `of_parts` and `of_car` are what
 * repeats on it show.
 */
export type ScaleModel = {
  readonly id: string;
  readonly gain: Uncertain;
  readonly assumed: boolean;
  readonly division: number | null;
  readonly repeatability: number;
  readonly capacity: number | null;
  readonly checks: readonly string[];
  readonly warnings: readonly Warned[];
  readonly of_parts: Scatter;
  readonly of_car: Scatter;
  readonly checked: string | null;
};

/** Standard deviation (kg) of a part's reading on lifting it on again: as noted, with what repeats show. */
export const partRepeats = (model: ScaleModel): number => repeatsTo(model.repeatability, 0, model.of_parts);

/** The division in kg: the scale's own, else the place of the last digit typed. */
export function divisionFor(model: ScaleModel, shown: Quantity): number {
  return model.division ?? shown.last_digit;
}

/** Standard uncertainty of one look at the display, kg. */
export function lookOf(model: ScaleModel, shown: Quantity): number {
  return Math.sqrt(square(divisionFor(model, shown)) / 12 + square(partRepeats(model)));
}

/** The model of every scale of the garage by id, and of `UNNAMED`. */
export function scaleModels(garage: Garage): Map<string, ScaleModel> {
  const models = new Map<string, ScaleModel>();
  const { parts, car } = scattersOn(garage);
  const shown = (id: string): Shown => ({ of_parts: parts.get(id) ?? NONE, of_car: car.get(id) ?? NONE });
  for (const [id, scale] of garage.scales) {
    models.set(id, scaleModel(scale, garage.checks_of.get(id) ?? [], shown(id)));
  }
  return models.set(UNNAMED, { ...unnamed(), ...shown(UNNAMED) });
}

type Shown = Pick<ScaleModel, "of_parts" | "of_car">;

/** One scale from its record, its checks (in order of id), and what repeats on it show. */
function scaleModel(scale: Scale, checks: readonly ScaleCheck[], shown: Shown): ScaleModel {
  const allowance = ASSUMED_GAIN[scale.kind] ?? ASSUMED_GAIN_UNNAMED;
  const bare = model(scale, uncertain(0, { [`cal:${scale.id}`]: allowance }), shown);
  const near = checks.filter(({ shown, known }) => Math.abs(shown.value - known.value) <= FAR_OFF * known.value);
  const slips = checks.filter((check) => !near.includes(check));
  const said = slips.map((check) => warned("check_far_off", { scale: scale.id, check: check.id }));
  if (near.length === 0) return { ...bare, warnings: said };
  const [gain, warnings] = gainOf(
    bare,
    distinctLooks(near, knownLoad, (check) => check.shown.value),
  );
  const all = [...said, ...warnings];
  if (u(gain) > allowance) return { ...bare, warnings: [...all, warned("checks_too_rough", { scale: scale.id })] };
  const checked = near.reduce((last, { at }) => (at && at > last ? at : last), "") || null;
  const used = near.map((check) => check.id);
  return { ...bare, gain, assumed: false, checks: used, warnings: all, checked };
}

/** By the assumption for its kind. */
function model(scale: Scale, gain: Uncertain, shown: Shown): ScaleModel {
  return {
    id: scale.id,
    gain,
    assumed: true,
    division: scale.division?.value ?? null,
    repeatability: scale.repeatability?.value ?? 0,
    capacity: scale.capacity?.value ?? null,
    checks: [],
    warnings: [],
    checked: null,
    ...shown,
  };
}

function unnamed(): Omit<ScaleModel, keyof Shown> {
  const gain = uncertain(0, { "cal:": ASSUMED_GAIN_UNNAMED });
  const nothing = { division: null, repeatability: 0, capacity: null, checks: [], warnings: [], checked: null };
  return { id: UNNAMED, gain, assumed: true, ...nothing };
}

/**
 * One item for all looks at one load that show the same: they share their rounding, so looking again tells nothing.
 *
 * Once any of them differs, more than the rounding is at work and each look counts.
 */
export function distinctLooks<T>(
  items: readonly T[],
  load: (item: T) => string,
  shows: (item: T) => string | number,
): readonly T[] {
  if (items.length < 2) return items;
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(load(item));
    if (group) group.push(item);
    else groups.set(load(item), [item]);
  }
  const alike = (group: readonly T[]) => group.every((item) => shows(item) === shows(group[0] as T));
  return [...groups.values()].flatMap((group) => (alike(group) ? group.slice(0, 1) : group));
}

function knownSource(check: ScaleCheck): string {
  return `known:${check.known_name || check.id}`;
}

function knownLoad(check: ScaleCheck): string {
  return `${knownSource(check)}|${check.known.value}`;
}

/** Standard uncertainty of the known mass: a rectangle of the half-width stated, or assumed. */
function knownU(check: ScaleCheck): number {
  return rectangular(check.known_within?.value ?? ASSUMED_KNOWN_WITHIN * check.known.value);
}

/** The weighted gain with its sources, and a warning when the checks contradict each other. */
function gainOf(bare: ScaleModel, checks: readonly ScaleCheck[]): [Uncertain, readonly Warned[]] {
  const variances = checks.map((check) => square(lookOf(bare, check.shown)) + square(knownU(check)));
  const [gain, shares] = leastSquares(checks, variances);
  let looks = 0;
  const sources: Record<string, number> = {};
  checks.forEach((check, at) => {
    const share = shares[at] as number;
    looks += square(share * lookOf(bare, check.shown));
    const source = knownSource(check);
    sources[source] = (sources[source] ?? 0) - share * (1 + gain) * knownU(check);
  });
  const ratio = disagreement(bare, checks, gain, variances);
  const spread = (square(ratio) - 1) * (looks + sumOfSquares(sources));
  const estimate = uncertain(gain, { [`cal:${bare.id}`]: Math.sqrt(looks + spread), ...sources });
  return [estimate, ratio > 1 ? [warned("checks_disagree", { scale: bare.id, ratio })] : []];
}

/** The gain, and the share each check's error s − k has in it. */
function leastSquares(checks: readonly ScaleCheck[], variances: readonly number[]): [number, number[]] {
  let weight = 0;
  checks.forEach((check, at) => {
    weight += (check.known.value * check.known.value) / (variances[at] as number);
  });
  const shares = checks.map((check, at) => check.known.value / (variances[at] as number) / weight);
  const gain = dot(
    shares,
    checks.map((check) => check.shown.value - check.known.value),
  );
  return [gain, shares];
}

/** The Birge ratio when a check is off the fitted line by more than a division, else 1. */
function disagreement(
  bare: ScaleModel,
  checks: readonly ScaleCheck[],
  gain: number,
  variances: readonly number[],
): number {
  let chiSquared = 0;
  let beyond = false;
  checks.forEach((check, at) => {
    const off = check.shown.value - check.known.value * (1 + gain);
    chiSquared += (off * off) / (variances[at] as number);
    beyond = beyond || Math.abs(off) > divisionFor(bare, check.shown);
  });
  return beyond && checks.length > 1 ? Math.sqrt(Math.max(1, chiSquared / (checks.length - 1))) : 1;
}

function square(x: number): number {
  // Not **: powers may differ by a digit between the languages, products do not.
  return x * x;
}

function sumOfSquares(sources: Readonly<Record<string, number>>): number {
  return plainSum(Object.values(sources).map(square));
}
