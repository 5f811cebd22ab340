/**
 * The car as a drawing needs it: its own dimensions in metres, and what stands in for those nobody measured.
 *
 * What is not known is taken from the wheelbase in the proportions of a small closed car (common practice, no source), and the
 * drawing says which. Without a wheelbase nothing can be drawn to scale, and nothing is.
 */
import { meanTrack } from "../../core/balance/place";
import type { Car } from "../../core/garage/records";

/** Metres. `front`, `rear`: x of the two ends. `half`: of the width. `assumed`: what nobody measured, in words. */
export type Shape = {
  front: number;
  rear: number;
  half: number;
  height: number;
  wheelbase: number;
  trackFront: number;
  trackRear: number;
  radiusFront: number;
  radiusRear: number;
  /** Null where nobody measured it: a line nobody measured is not drawn. */
  beltline: number | null;
  assumed: readonly string[];
};

// Of the wheelbase, but the width of the mean track. Common practice, no source.
const OVERHANG = 0.3;
const LENGTH = 1.57;
const TRACK = 0.6;
const WIDTH = 1.16;
const HEIGHT = 0.55;
const RADIUS = 0.122;

/** `sketch`: the wheelbase of a drawing that only shows which end is which, of a car nobody has measured. */
export function shapeOf(car: Car | null, sketch?: number): Shape | null {
  const wheelbase = car?.wheelbase?.value ?? sketch;
  if (!wheelbase) return null;
  const assumed: string[] = [];
  const or = (known: number | null | undefined, words: string, otherwise: number) => {
    if (known == null && !assumed.includes(words)) assumed.push(words);
    return known ?? otherwise;
  };
  const overhang = or(car?.front_overhang?.value, "overhang", OVERHANG * wheelbase);
  const track = or(meanTrack(car), "tracks", TRACK * wheelbase);
  const radius = (own: number | undefined, other: number | undefined) => or(own ?? other, "tyres", RADIUS * wheelbase);
  const [front, rear] = [car?.tyre_radius_front?.value, car?.tyre_radius_rear?.value];
  return {
    front: -overhang,
    rear: Math.max(or(car?.length?.value, "length", LENGTH * wheelbase) - overhang, wheelbase),
    half: 0.5 * or(car?.width?.value, "width", WIDTH * track),
    height: or(car?.height?.value, "height", HEIGHT * wheelbase),
    wheelbase,
    trackFront: car?.track_front?.value ?? track,
    trackRear: car?.track_rear?.value ?? track,
    radiusFront: radius(front, rear),
    radiusRear: radius(rear, front),
    beltline: car?.beltline?.value ?? null,
    assumed,
  };
}

/** How true the drawing is, in a sentence. */
export function scaleWords({ assumed }: Shape): string {
  if (!assumed.length) return "To scale, from the car's own dimensions.";
  const last = assumed[assumed.length - 1];
  const list = assumed.length > 1 ? `${assumed.slice(0, -1).join(", ")} and ${last}` : last;
  return `To scale in wheelbase; ${list} drawn as on most small cars, until measured.`;
}
