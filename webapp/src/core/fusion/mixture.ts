/**
 * A spread of answers about one value, as chances under a bound and as quantiles.
 *
 * Where the evidence leaves more than one answer, no symmetric interval says what may be relied on: the chance to be
 * under a bound is Σ p Φ((bound − value) / u) over the answers, and what to keep in hand for a risk is a quantile of
 * that. Answers within a fifth of the least doubt of any are taken together, with their mean and their variance.
 */

import { cumulative } from "../numbers/normal";
import type { Column } from "./precision";

const APART = 0.2;
const HALVINGS = 60;
const FAR = 9; // standard uncertainties

/** Answers taken together: their `chance`, how far `off` the value they are, `more`: of variance than it has. */
export type Lump = { readonly chance: number; readonly off: number; readonly more: number };
export type Spread = readonly Lump[];
export const CERTAIN: Spread = [{ chance: 1, off: 0, more: 0 }];

/** The answers as a few lumps, in order of `off`. `about`: the variance of the value they are about. */
export function spreadOf(chance: Column, off: Column, variance: Column, about: number): Spread {
  const width =
    APART *
    Math.sqrt(
      Math.max(
        0,
        variance.reduce((a, b) => Math.min(a, b)),
      ),
    );
  // By place: their chance, and how it weights off, variance and the square of off about the place.
  const found = new Map<number, [number, number, number]>();
  off.forEach((each, n) => {
    // Most answers are off by nothing or nearly so: that is the middle of a lump, not where two meet.
    const place = width > 0 ? Math.floor(each / width + 0.5) : n;
    const apart = each - place * width;
    const p = chance[n] as number;
    const sums = found.get(place) ?? [0, 0, 0];
    sums[0] += p;
    sums[1] += p * apart;
    sums[2] += p * (Math.max(0, variance[n] as number) + apart * apart);
    found.set(place, sums);
  });
  const places = [...found].sort(([a], [b]) => a - b);
  return places.map(([place, [whole, first, second]]) => {
    const mean = first / whole;
    const inner = second / whole - (width > 0 ? mean * mean : 0);
    return { chance: whole, off: place * width + mean, more: inner - about };
  });
}

/** The chance to be under a bound. `variance`: of the value. */
export function chanceBelow(bound: number, value: number, variance: number, spread: Spread): number {
  return spread.reduce((sum, { chance, off, more }) => sum + chance * below(bound - value - off, variance + more), 0);
}

function below(short: number, variance: number): number {
  return variance > 0 ? cumulative(short / Math.sqrt(variance)) : Number(short > 0);
}

/** The least value, to the last digits, at which the chance to be under the bound is no more than the risk. */
export function valueFor(bound: number, variance: number, spread: Spread, risk: number): number {
  const reach = FAR * Math.sqrt(Math.max(0, ...spread.map(({ more }) => variance + more)));
  const offs = spread.map(({ off }) => off);
  let low = bound - Math.max(...offs) - reach;
  let high = bound - Math.min(...offs) + reach;
  for (let n = 0; n < HALVINGS; n++) {
    const middle = 0.5 * (low + high);
    if (chanceBelow(bound, middle, variance, spread) > risk) low = middle;
    else high = middle;
  }
  return high;
}
