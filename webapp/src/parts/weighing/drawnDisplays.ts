/**
 * What the displays of scales show: unit and step, as a person sees them (common practice, no source).
 *
 * `sample`: a reading such a display could show, so that a person knows theirs at sight.
 */
import type { Values } from "../../journal/kinds";
import { readingOf } from "../words/reading";

export type MassUnit = NonNullable<Values<"scale">["unit"]>;
export type Display = { unit: MassUnit; division: string; sample: string };

const display = (unit: MassUnit, division: string, sample: string): Display => ({ unit, division, sample });

const METRIC: readonly Display[] = [
  display("g", "1 g", "420 g"),
  display("g", "5 g", "1235 g"),
  display("kg", "0.01 kg", "4.27 kg"),
  display("kg", "0.1 kg", "82.4 kg"),
  display("kg", "0.5 kg", "231.5 kg"),
  display("kg", "1 kg", "912 kg"),
];
const IMPERIAL: readonly Display[] = [
  display("oz", "1/8 oz", "6 3/8 oz"),
  display("oz", "0.1 oz", "12.4 oz"),
  display("lb oz", "1 oz", "3 lb 4 oz"),
  display("lb", "0.1 lb", "18.7 lb"),
  display("lb", "0.2 lb", "181.6 lb"),
  display("lb", "1 lb", "543 lb"),
];

/** Every drawn display, those of the garage's own system of units first. */
export function displaysFor(massUnit: string): readonly Display[] {
  return ["kg", "g"].includes(massUnit) ? [...METRIC, ...IMPERIAL] : [...IMPERIAL, ...METRIC];
}

/** What is said of a scale's display so far: both may be missing. */
export type Said = { unit?: string | null; division?: string | null };

/** Whether a scale has just this display. */
export function isOf({ unit, division }: Said, { unit: drawnUnit, division: drawn }: Display): boolean {
  if (unit !== drawnUnit || !division) return false;
  const [said, step] = [readingOf("mass", division, unit), readingOf("mass", drawn, drawnUnit)];
  return said.state === "read" && step.state === "read" && said.value === step.value;
}

/** Steps as a display that counts in fractions shows them: its keypad needs halves and eighths. */
export function showsFractions({ division }: Said): boolean {
  return division?.includes("/") ?? false;
}
