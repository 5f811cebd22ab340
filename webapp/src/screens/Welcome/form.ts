/** What the first start asks for, and what of it cannot be used as typed. */
import type { Values } from "../../journal/kinds";
import type { Display } from "../../parts/weighing/drawnDisplays";
import { readingOf, troubleIn } from "../../parts/words/reading";

export type MassUnit = "kg" | "lb" | "lb oz";
export type ScaleKind = NonNullable<Values<"scale">["kind"]>;
export type Start = {
  car: string;
  massUnit: MassUnit;
  minimum: string;
  kind: ScaleKind | null;
  unit: Display["unit"] | null;
  division: string;
};

/** A whole car is never typed in ounces: bare numbers are pounds. */
export function bare(massUnit: MassUnit): string {
  return massUnit === "lb oz" ? "lb" : massUnit;
}

/** Why the minimum cannot be used; null when it can, or may wait. */
export function minimumTrouble({ minimum, massUnit }: Start): string | null {
  return troubleIn("The class minimum", readingOf("mass", minimum, bare(massUnit), true));
}

/** Why the scale cannot be used; null when it can, or none is named. */
export function scaleTrouble({ kind, unit, division }: Start): string | null {
  if (!kind) return unit ? "Say what kind of scale it is, or “Not sure yet”." : null;
  return troubleIn("The steps", readingOf("mass", division, unit, true));
}
