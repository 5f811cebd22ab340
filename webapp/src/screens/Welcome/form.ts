/** What the first start asks for, and what of it cannot be used as typed. */
import { readingOf, troubleIn } from "../../parts/words/reading";
import { type ScaleKind, usualScale } from "../../parts/words/scaleKinds";

export type MassUnit = "kg" | "lb" | "lb oz";
export type Start = { car: string; massUnit: MassUnit; minimum: string; kind: ScaleKind | null; division: string };

/** A whole car is never typed in ounces: bare numbers are pounds. */
export function bare(massUnit: MassUnit): string {
  return massUnit === "lb oz" ? "lb" : massUnit;
}

/** Why the minimum cannot be used; null when it can, or may wait. */
export function minimumTrouble({ minimum, massUnit }: Start): string | null {
  return troubleIn("The class minimum", readingOf("mass", minimum, bare(massUnit), true));
}

/** Why the scale's steps cannot be used; null when they can, or are not known. */
export function divisionTrouble({ kind, division, massUnit }: Start): string | null {
  return kind && troubleIn("The steps", readingOf("mass", division, usualScale(kind, massUnit).unit, true));
}
