/** Which scales are offered for what: by their kind, a part never on corner pads, a car never on a kitchen scale. */

import { garage, type Rec } from "../../garage/garage";
import type { Values } from "../../journal/kinds";
import { optionsFrom } from "../words/fieldWords";

type Use = "part" | NonNullable<Values<"weigh_in">["layout"]>;
type Kind = NonNullable<Values<"scale">["kind"]>;

/** A platform takes one wheel at a time on no level floor: it gives axles and totals. */
const SUITS: Readonly<Record<Kind, readonly Use[]>> = {
  kitchen: ["part"],
  hanging: ["part"],
  bench: ["part"],
  bathroom: ["part", "corners", "axles", "total"],
  corner_pads: ["corners", "axles", "total"],
  axle_pads: ["axles", "total"],
  platform: ["part", "axles", "total"],
};

export function suits({ values: { kind } }: Rec<"scale">, use: Use): boolean {
  return !kind || SUITS[kind].includes(use);
}

export function scalesFor(use: Use): Rec<"scale">[] {
  return garage.value.of("scale").filter((scale) => suits(scale, use));
}

/** As a form offers them, with the one that is chosen already whatever it is. */
export function scaleOptions(use: Use, chosen: string | null | undefined) {
  return optionsFrom(garage.value.of("scale").filter((scale) => scale.id === chosen || suits(scale, use)));
}
