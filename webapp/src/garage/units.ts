/** The units this garage thinks in, and the words a keypad offers for them. */

import { own } from "../own";
import { garage } from "./garage";

export type Measure = "mass" | "length" | "volume";

const SETTING = { mass: "mass_unit", length: "length_unit", volume: "volume_unit" } as const;
const FALLBACK = { mass: "kg", length: "mm", volume: "L" } as const;
const WORD: Record<string, string> = { gal_us: "US gal", gal_imp: "imp gal" };

/** The garage's unit of a measure, by its name in the record ("lb oz", "gal_us"). */
export function unitOf(kind: Measure): string {
  return garage.value.of("garage")[0]?.values[SETTING[kind]] ?? FALLBACK[kind];
}

export const massUnit = (): string => unitOf("mass");

/** Nobody weighs a car in grams or ounces: a bare number is kilograms, or pounds. */
export const bareUnit = (): string => (massUnit() === "kg" || massUnit() === "g" ? "kg" : "lb");

/** A unit as people write it: "gal_us" is "US gal". */
export function unitWord(unit: string): string {
  return own(WORD, unit) ?? unit;
}

export const KEYPAD_UNITS: Record<Measure, readonly string[]> = {
  mass: ["lb", "oz", "kg", "g"],
  length: ["in", "ft", "mm", "cm"],
  volume: ["L", "US gal", "imp gal"],
};

/** Units in which people write halves and eighths. */
export function takesFractions(unit: string): boolean {
  return ["lb", "oz", "lb oz", "in", "ft", "US gal", "imp gal"].includes(unitWord(unit));
}
