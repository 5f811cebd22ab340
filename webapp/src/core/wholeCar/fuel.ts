/**
 * Fuel: from litres in the tank to kilograms, with the range a fuel's density may have.
 *
 * Nobody in a paddock knows the density of what is in the tank; the standards only bound it. The density is one error
 * source, `fuel-density`, shared by every tank of fuel a car is weighed with, so that it cancels between a weigh-in with
 * a full tank and a class that weighs with a full tank. How well the litres are known is each weigh-in's own.
 */

import { multiply, rectangular, type Uncertain, uncertain } from "../numbers/uncertain";

const LITRE = 0.001; // m³
const ETHANOL = 793.7; // kg/m³ at 15 °C; 6.61 lb/gal in the US DOE AFDC fuel property table
const WITHIN_SHARE = 0.1; // litres read off a gauge: common practice, no source
const WITHIN_LEAST = 1 * LITRE;

/** A fuel's density lies evenly between `low` and `high`, kg/m³. */
export type Density = { readonly low: number; readonly high: number };

/** Density (kg/m³) of a volume share of ethanol in petrol of the density given, mixing ideally. */
export function blend(ethanol: number, petrol: number): number {
  return ethanol * ETHANOL + (1 - ethanol) * petrol;
}

const PETROL: Density = { low: 720, high: 775 }; // EN 228 limits at 15 °C
// What pumps sell as E85 holds 51 to 83 % ethanol (ASTM D5798, from memory).
const E85: Density = { low: blend(0.51, PETROL.low), high: blend(0.83, PETROL.high) };
const DIESEL: Density = { low: 802.8, high: 886.7 }; // 6.7 to 7.4 lb/gal, No. 2 diesel, US DOE AFDC fuel property table
const DENSITIES: ReadonlyMap<string, Density> = new Map([
  ["petrol", PETROL],
  ["e85", E85],
  ["diesel", DIESEL],
]);
const UNKNOWN: Density = { low: PETROL.low, high: DIESEL.high }; // the car does not say what it burns

/** The density range of `petrol`, `e85` or `diesel`; the range of all of them when the kind is not known. */
export function densityOf(kind: string | null): Density {
  return DENSITIES.get(kind ?? "") ?? UNKNOWN;
}

/** Mass (kg) of `volume` m³ of fuel, known to ± `within` m³ (a rectangle) under the error source named. */
export function fuelMass(volume: number, kind: string | null, within: number | null = null, source = ""): Uncertain {
  const { low, high } = densityOf(kind);
  const middle = 0.5 * (low + high);
  const sources: Record<string, number> = { "fuel-density": volume * rectangular(0.5 * (high - low)) };
  if (within) sources[source] = middle * rectangular(within);
  return uncertain(volume * middle, sources);
}

/** Mass (kg) of a volume (m³) known with error sources of its own. */
export function massOf(volume: Uncertain, kind: string | null): Uncertain {
  const { low, high } = densityOf(kind);
  return multiply(volume, uncertain(0.5 * (low + high), { "fuel-density": rectangular(0.5 * (high - low)) }));
}

/** Half-width (m³) taken for litres nobody said the accuracy of: a tenth of them, at least one litre. */
export function assumedWithin(volume: number): number {
  return Math.max(WITHIN_SHARE * volume, WITHIN_LEAST);
}
