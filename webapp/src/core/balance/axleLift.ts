/**
 * Height of the centre of gravity from axle loads, level and with one axle raised [ISO 10392:2011].
 *
 * With one axle raised by H the car is tilted by θ, sin θ = H / L, and load moves to the axle left on the ground:
 *
 *     h = (R_f b + R_r a) / L + L ΔF / (m tan θ)        a = x_cg, b = L − a, R the heights of the axle centres
 *
 * ΔF is what the axle on the ground gained. Loads are scale readings, so g cancels; all are of one scale, so its gain
 * cancels too (ΔF / m). H is how far the centre of the raised axle rose; tan θ divides, and H / L in its place biases
 * the answer. Brakes off, gearbox in neutral, suspension blocked, tank full or empty, nobody in the car.
 *
 * A small lift moves little load: one kilogram of error is about 9 mm of height at 0.6 m lift of a 1250 kg car. Where
 * the answer would be no better than knowing nothing of the car, it is refused, and `outlook` tells which rise would do.
 * A common error of printed examples is to misplace the tangent: this is checked by building the tilted car, not by
 * such a print.
 */

import "../../laterErrors";
import { type Warned, warned } from "../garage/records";
import { derived, expanded, rectangular, scale, subtract, type Uncertain, uncertain } from "../numbers/uncertain";

const WIDEST = 0.06; // m; U (95 %), half of what the track alone tells (core/balance/height): common practice, no source
const WIDE = 0.025; // m; U beyond which more lift is worth the trouble: common practice, no source
const TRIED = 20; // rises an outlook tries in every metre
const HIGHEST = 1.5; // m, to which it looks however long the car: no axle is raised further
const WORTH_RAISING = 1.4; // times a rise, from where a higher one tells clearly more: common practice, no source
const [MANY_TIMES, HIGH, CHOICES] = [3, 0.6, 4]; // of the first rise that does, m, rows: common practice, no source
const ABOVE_AXLES = 0.22; // m, of the centre, where only the doubt of a lift is foreseen: common practice, no source
export const LIFT_WITHIN = 0.003; // m, half-width of the rise as measured with a tape: common practice, no source
export type Raised = "rear" | "front";

/** The car's own lengths, m: wheelbase and the heights of its axle centres above the ground. */
export type Axles = {
  readonly wheelbase: Uncertain;
  readonly radius_front: Uncertain;
  readonly radius_rear: Uncertain;
};

/**
 * `height` (m) of the centre of gravity above the ground, level; null for `reason`. `tilt`: tan θ.
 *
 * `moved`: load that moved to the axle on the ground, kg. `least`, `enough`: as of `Outlook`.
 */
export type LiftedCar = {
  readonly height: Uncertain | null;
  readonly tilt: number | null;
  readonly moved: Uncertain | null;
  readonly least: number | null;
  readonly enough: number | null;
  readonly reason: Warned | null;
  readonly warnings: readonly Warned[];
};

/**
 * How well lifts of a car would tell its height: for every rise (m) the U (m, 95 %), to half the wheelbase at most.
 *
 * `least`: the first rise that tells it at all (± `WIDEST`); `enough`: the first within ± `WIDE`; null: none does.
 */
export type Outlook = {
  readonly rises: readonly (readonly [rise: number, margin: number])[];
  readonly least: number | null;
  readonly enough: number | null;
};

/** The first rise that would tell clearly more than this one, with its margin; null: none does. */
export function higherThan({ rises }: Outlook, rise: number): readonly [rise: number, margin: number] | null {
  return rises.find(([each]) => each >= WORTH_RAISING * rise) ?? null;
}

/** The rises worth choosing among, a few: from the first that would do to one that asks much of hoist and stands. */
export function choicesOf({ rises, least, enough }: Outlook): Outlook["rises"] {
  const first = enough ?? least;
  if (first === null) return [];
  const some = rises.filter(([rise]) => rise >= first && rise <= Math.max(MANY_TIMES * first, HIGH));
  const step = Math.max(1, Math.ceil(some.length / CHOICES));
  return some.filter((_, at) => at % step === 0);
}

/** The height from axle loads (any unit of force or mass, one for all) and the rise (m) of the raised axle. */
export function axleLift(
  axles: Axles,
  front: Uncertain,
  rear: Uncertain,
  tilted: Uncertain,
  rise: Uncertain,
  raised: Raised = "rear",
): LiftedCar {
  const [wheelbase, mass] = [axles.wheelbase.value, front.value + rear.value];
  if (rise.value >= wheelbase) return refused(warned("lift_above_wheelbase"));
  if (rise.value <= 0 || mass <= 0 || tilted.value <= 0) return refused(warned("lift_missing"));
  const tilt = rise.value / Math.sqrt(wheelbase * wheelbase - rise.value * rise.value);
  const moved = subtract(tilted, raised === "rear" ? front : rear);
  const told = { height: null, tilt, moved, least: null, enough: null, reason: null, warnings: [] };
  if (moved.value < -expanded(moved)) return { ...told, reason: warned("lift_wrong_way") };
  const height = heightOf(axles, front, rear, moved, rise, tilt);
  const margin = expanded(height);
  const { least, enough } = outlook(axles, front, rear, tilted, raised);
  const ahead = { ...told, least, enough };
  if (moved.value <= expanded(moved) || margin > WIDEST) return { ...ahead, reason: warned("lift_too_small") };
  return { ...ahead, height, warnings: margin > WIDE ? [warned("lift_wide")] : [] };
}

export function refused(reason: Warned): LiftedCar {
  return { height: null, tilt: null, moved: null, least: null, enough: null, reason, warnings: [] };
}

/** The formula, with its derivatives. The shares of both axles weigh their radii: (R_f F_f + R_r F_r) / m. */
function heightOf(
  axles: Axles,
  front: Uncertain,
  rear: Uncertain,
  moved: Uncertain,
  rise: Uncertain,
  tilt: number,
): Uncertain {
  const [long, mass] = [axles.wheelbase.value, front.value + rear.value];
  const [radiusFront, radiusRear] = [axles.radius_front.value, axles.radius_rear.value];
  const line = (radiusFront * front.value + radiusRear * rear.value) / mass;
  const above = (long * moved.value) / (mass * tilt);
  // d(L / tan θ)/dL and /dH, with L / tan θ = L √(L² − H²) / H.
  const flat = Math.sqrt(long * long - rise.value * rise.value);
  const byLong = (moved.value / mass) * (flat / rise.value + (long * long) / (rise.value * flat));
  const byRise = (-moved.value / mass) * (long / flat + (long * flat) / (rise.value * rise.value));
  const items = [axles.wheelbase, axles.radius_front, axles.radius_rear, front, rear, moved, rise];
  const partials = [
    byLong,
    front.value / mass,
    rear.value / mass,
    (radiusFront - line - above) / mass,
    (radiusRear - line - above) / mass,
    long / (mass * tilt),
    byRise,
  ];
  return derived(line + above, items, partials);
}

/** What rises would tell. `tilted`: how the axle on the ground is read, at any load (not zero). */
export function outlook(
  axles: Axles,
  front: Uncertain,
  rear: Uncertain,
  tilted: Uncertain,
  raised: Raised = "rear",
): Outlook {
  const highest = Math.min(0.5 * axles.wheelbase.value, HIGHEST);
  const rises = Array.from({ length: Math.trunc(highest * TRIED) }, (_, n) => {
    const rise = (n + 1) / TRIED;
    return [rise, foreseen(axles, front, rear, tilted, rise, raised)] as const;
  });
  const first = (most: number) => rises.find(([, margin]) => margin <= most)?.[0] ?? null;
  return { rises, least: first(WIDEST), enough: first(WIDE) };
}

/** U (m) of the height by a lift not made yet. The doubt of the reading grows with the load, so its gain cancels. */
function foreseen(
  axles: Axles,
  front: Uncertain,
  rear: Uncertain,
  tilted: Uncertain,
  rise: number,
  raised: Raised,
): number {
  const wheelbase = axles.wheelbase.value;
  const onGround = raised === "rear" ? front : rear;
  const tilt = rise / Math.sqrt(wheelbase * wheelbase - rise * rise);
  const load = onGround.value + ((front.value + rear.value) * ABOVE_AXLES * tilt) / wheelbase;
  const moved = subtract(scale(tilted, load / tilted.value), onGround);
  const risen = uncertain(rise, { "lift:height": rectangular(LIFT_WITHIN) });
  return expanded(heightOf(axles, front, rear, moved, risen, tilt));
}
