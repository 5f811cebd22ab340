/**
 * What this garage's guesses and quotes have run off by: learned from the parts that were weighed later.
 *
 * Each such part tells x = ln(claim ÷ weighed mass): above zero where the claim was high, the same size for twice and
 * for half. The x of one basis are taken as normal, of unknown mean (the bias) and unknown variance, with the conjugate
 * prior (normal-inverse-χ²: Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3; Murphy 2007, Conjugate Bayesian
 * analysis of the Gaussian distribution, 5):
 *
 *     bias     m = n·x̄ ÷ (κ + n)                                          prior mean 0
 *     spread²  v = (w·s² + Σ(x − x̄)² + κ·n ÷ (κ + n)·x̄²) ÷ (w + n)        s: what is assumed without a lesson
 *     bias_u²    = v ÷ (κ + n)
 *
 * The server's `lessons.py` says where κ and w are from, and why one wild claim is left out and how (the Hampel
 * identifier: Davies and Gather 1993). The mass is claim ÷ e^m.
 */

import type { Garage, Part } from "../garage/records";
import { dot, plainSum } from "../numbers/plain";
import { rectangular, u } from "../numbers/uncertain";
import { basisOf, CLAIM_WITHIN, SHARED } from "./claims";
import type { Basis, Mass } from "./weighing";

type Teaching = keyof typeof SHARED;

/**
 * What claims of one basis have run off by, from `parts` of them that were weighed later.
 *
 * `bias`: of ln(claim ÷ mass), above zero where claims run high, ± `bias_u`; `spread`: the standard deviation of that
 * logarithm from claim to claim. `factor`: mass ÷ claim when the bias is taken out, e^−bias.
 */
export type Lesson = {
  readonly basis: Teaching;
  readonly parts: number;
  readonly bias: number;
  readonly bias_u: number;
  readonly spread: number;
  readonly factor: number;
};
export type Lessons = { readonly [B in Basis]?: Lesson };

// With fewer, the prior has as much say as the garage; nothing is learned then, for what is done is said.
const LEAST = 3;
const BIAS_WEIGHT = 1; // κ, parts
const SPREAD_WEIGHT = 4; // w, parts
const FAR = 3; // robust standard deviations
const OF_MEDIAN = 1.4826; // a standard deviation in median deviations from the median, of normal numbers
const ROUGH = 0.5; // of the spread assumed: a weighing less sure than that tells nothing of a claim

/** Whether claims are corrected by what they have run off by: unless the garage says that they count as typed. */
export function learns({ garages }: Garage): boolean {
  return garages.values().next().value?.claims !== "typed";
}

/** By basis, what there is to learn. `of`: what every part weighs, by id. */
export function lessonsOf(parts: Iterable<Part>, of: ReadonlyMap<string, Mass>): Lessons {
  const off: Record<Teaching, number[]> = { guessed: [], quoted: [] };
  for (const part of parts) {
    const { mass, basis } = of.get(part.id) as Mass;
    const found = off[basisOf(part) as Teaching];
    // A stated half-width is its writer's own word on a claim, and the others are not judged by it.
    if (!part.claim || part.claim_within || !mass || basis !== "weighed" || !found) continue;
    const isRough = u(mass) > ROUGH * assumedOf(basisOf(part)) * mass.value;
    if (!isRough) found.push(Math.log(part.claim.value / mass.value));
  }
  const lessons: { [B in Teaching]?: Lesson } = {};
  for (const basis in SHARED) {
    const lesson = learned(basis as Teaching, off[basis as Teaching]);
    if (lesson) lessons[basis as Teaching] = lesson;
  }
  return lessons;
}

function assumedOf(basis: Basis): number {
  return rectangular(CLAIM_WITHIN[basis] as number);
}

/** What claims of one basis teach, from ln(claim ÷ mass) of each; null of fewer than `LEAST` that are sound. */
export function learned(basis: Teaching, off: readonly number[]): Lesson | null {
  const assumed = assumedOf(basis);
  const sound = withoutSlips(off, assumed);
  const parts = sound.length;
  if (parts < LEAST) return null;
  const mean = plainSum(sound) / parts;
  const around = sound.map((x) => x - mean);
  const weight = BIAS_WEIGHT + parts;
  const pulled = ((BIAS_WEIGHT * parts) / weight) * mean * mean;
  const variance = (SPREAD_WEIGHT * assumed * assumed + dot(around, around) + pulled) / (SPREAD_WEIGHT + parts);
  const bias = (parts * mean) / weight;
  return {
    basis,
    parts,
    bias: toABillionth(bias),
    bias_u: toABillionth(Math.sqrt(variance / weight)),
    spread: toABillionth(Math.sqrt(variance)),
    factor: toABillionth(Math.exp(-bias)),
  };
}

function withoutSlips(off: readonly number[], assumed: number): readonly number[] {
  const middle = median(off);
  const far = FAR * Math.max(assumed, OF_MEDIAN * median(off.map((x) => Math.abs(x - middle))));
  return off.filter((x) => Math.abs(x - middle) <= far);
}

/** The middle one, of an even number the mean of the two. NaN of none. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}

/** Logarithms differ between languages in their last digit; masses made with these do not. */
function toABillionth(figure: number): number {
  return Math.floor(figure * 1e9 + 0.5) / 1e9;
}
