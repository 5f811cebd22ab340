/**
 * Where ballast often goes, as a first guess at the place: to be measured before the car relies on it.
 *
 * `x` in wheelbases behind the front axle, `y` in tracks right of the centreline, `z` in metres above the ground: the
 * floor pans and wells of common road cars (common practice, no source).
 */
import { showStepped } from "../../core/numbers/shownLater";
import type { Values } from "../../journal/kinds";

export type Spot = { name: string; x: number; y: number; z: number };

export const SPOTS: readonly Spot[] = [
  { name: "Nose", x: -0.2, y: 0, z: 0.35 },
  { name: "Left footwell", x: 0.3, y: -0.28, z: 0.18 },
  { name: "Right footwell", x: 0.3, y: 0.28, z: 0.18 },
  { name: "Under the left seat", x: 0.53, y: -0.27, z: 0.2 },
  { name: "Under the right seat", x: 0.53, y: 0.27, z: 0.2 },
  { name: "Tunnel", x: 0.5, y: 0, z: 0.25 },
  { name: "Behind the left seat", x: 0.76, y: -0.25, z: 0.25 },
  { name: "Behind the right seat", x: 0.76, y: 0.25, z: 0.25 },
  { name: "Spare wheel well", x: 1.15, y: 0, z: 0.25 },
  { name: "Boot floor, left", x: 1.15, y: -0.3, z: 0.35 },
  { name: "Boot floor, right", x: 1.15, y: 0.3, z: 0.35 },
];

type Sizes = { wheelbase: number | null; track: number | null; unit: string };

/** What a spot sets in the form; along and across only where the car's own size is known. */
export function typedAt({ name, x, y, z }: Spot, { wheelbase, track, unit }: Sizes): Values<"ballast_place"> {
  return {
    name,
    ...(wheelbase ? { x: typed(x * wheelbase, unit) } : {}),
    ...(track ? { y: typed(y * track, unit) } : {}),
    z: typed(z, unit),
  };
}

function typed(metres: number, unit: string): string {
  const far = showStepped(Math.abs(metres), unit, unit === "in" ? "0.5" : "10");
  return metres < 0 ? `-${far}` : far;
}
