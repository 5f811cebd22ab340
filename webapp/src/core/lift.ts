/**
 * Height of the centre of gravity from weighing one axle with the other raised [ISO 10392:2011].
 *
 * With one axle raised by H the car is tilted by θ, sin θ = H / L, and load moves to the axle left on the ground:
 *
 *     h = (R_f b + R_r a) / L + L ΔF / (m tan θ)        a = x_cg, b = L − a, R the heights of the axle centres
 *
 * ΔF is what the axle on the ground gained. Loads are scale readings, so g cancels; all are of one scale, so its gain
 * cancels too (ΔF / m). H is how far the centre of the raised axle rose; tan θ divides, and H / L in its place biases
 * the answer. Brakes off, gearbox in neutral, suspension blocked, tank full or empty.
 *
 * Each reading is the sum of so many looks: with two pads, four looks for the difference. A small lift moves little
 * load: one kilogram of error is about 9 mm of height at 0.6 m lift of a 1250 kg car. Where the answer would be no
 * better than knowing nothing of the car, it is refused. A common error of printed examples is to misplace the tangent:
 * this is checked by building the tilted car, not by such a print.
 */

import { isWarned } from "./condition";
import type { Quantity } from "./quantity";
import { type Car, type Garage, type Warned, warned } from "./records";
import { type ScaleModel, UNNAMED, divisionFor } from "./scale";
import { wholeCarGain } from "./tradeScale";
import { type Uncertain, derived, expanded, rectangular, resolution, subtract, uncertain } from "./uncertain";
import { repeatability } from "./weighIn";
import { type Masses, masses } from "./weighing";

const WIDEST = 0.06; // m; U (95 %), half of what the track alone tells (core/balance): common practice, no source
const WIDE = 0.025; // m; U beyond which more lift is worth the trouble: common practice, no source
const LIFT_WITHIN = 0.003; // m, half-width of the rise as measured with a tape: common practice, no source
/** Under one axle; else one. */
const PADS: Readonly<Record<string, number>> = { corner_pads: 2, bathroom: 2, kitchen: 2, bench: 2, hanging: 2 };

/**
 * As read: `front` and `rear` with the car level, `tilted` the axle on the ground, the other raised by `height`.
 *
 * `raised`: "rear" or "front". `height_within`: half-width of `height`. `scale`: id. Each load is of a whole axle.
 */
export type LiftReadings = {
  readonly front: Quantity | null;
  readonly rear: Quantity | null;
  readonly tilted: Quantity | null;
  readonly height: Quantity | null;
  readonly height_within: Quantity | null;
  readonly raised: "rear" | "front";
  readonly scale: string | null;
};

/** The car's own lengths, m: wheelbase and the heights of its axle centres above the ground. */
export type Axles = {
  readonly wheelbase: Uncertain;
  readonly radius_front: Uncertain;
  readonly radius_rear: Uncertain;
};

/**
 * `height` (m) of the centre of gravity above the ground, level; null for `reason`. `tilt`: tan θ.
 *
 * `moved`: load that moved to the axle on the ground, kg. `enough`: a rise (m) that would tell the height within
 * ± `WIDE` if the loads alone were in doubt; null when no rise below half the wheelbase would.
 */
export type Lift = {
  readonly height: Uncertain | null;
  readonly tilt: number | null;
  readonly moved: Uncertain | null;
  readonly enough: number | null;
  readonly reason: Warned | null;
  readonly warnings: readonly Warned[];
};

/** The height of the garage's car from one lift. Never throws over data: what cannot be told has a reason. */
export function lift(garage: Garage, readings: LiftReadings, known: Masses = masses(garage)): Lift {
  const axles = axlesOf(garage.car);
  if (isWarned(axles)) return refused(axles);
  const { front, rear, tilted, height } = readings;
  const model = known.scales.get(readings.scale ?? UNNAMED);
  if (!front || !rear || !tilted || !height || !model) return refused(warned("lift_missing"));
  const load = loader(garage, model, front.value + rear.value);
  const within = Math.max(readings.height_within?.value ?? LIFT_WITHIN, 0.5 * height.last_digit);
  const rise = uncertain(height.value, { "lift:height": rectangular(within) });
  return axleLift(axles, load("front", front), load("rear", rear), load("tilted", tilted), rise, readings.raised);
}

/** The lengths of the car, each known to its last digit; or which are missing. */
export function axlesOf(car: Car | null): Axles | Warned {
  if (!car?.wheelbase) return warned("wheelbase_unknown");
  if (!car.tyre_radius_front || !car.tyre_radius_rear) return warned("radius_unknown");
  const length = (field: string, { value, last_digit }: Quantity) =>
    uncertain(value, { [`round:${car.id}:${field}`]: resolution(last_digit) });
  return {
    wheelbase: length("wheelbase", car.wheelbase),
    radius_front: length("tyre_radius_front", car.tyre_radius_front),
    radius_rear: length("tyre_radius_rear", car.tyre_radius_rear),
  };
}

/** What makes loads of readings, each of a whole axle, with the scale's gain taken out. */
function loader(garage: Garage, model: ScaleModel, level: number): (name: string, shown: Quantity) => Uncertain {
  const gain = wholeCarGain(garage, model, level);
  const looks = Math.sqrt(PADS[garage.scales.get(model.id)?.kind ?? ""] ?? 1);
  const through = 1 + gain.value;
  return (name, shown) => {
    const load = shown.value / through;
    const sources: Record<string, number> = {};
    for (const [source, part] of Object.entries(gain.sources)) sources[source] = (-load * part) / through;
    sources[`round:lift:${name}`] = (looks * resolution(divisionFor(model, shown))) / through;
    sources[`rep:lift:${name}`] = repeatability(garage, model) / Math.sqrt(2);
    return uncertain(load, sources);
  };
}

/** The height from axle loads (any unit of force or mass, one for all) and the rise (m) of the raised axle. */
export function axleLift(
  axles: Axles, front: Uncertain, rear: Uncertain, tilted: Uncertain, rise: Uncertain, raised: "rear" | "front" = "rear",
): Lift {
  const [wheelbase, mass] = [axles.wheelbase.value, front.value + rear.value];
  if (rise.value >= wheelbase) return refused(warned("lift_above_wheelbase"));
  if (rise.value <= 0 || mass <= 0) return refused(warned("lift_missing"));
  const tilt = rise.value / Math.sqrt(wheelbase * wheelbase - rise.value * rise.value);
  const moved = subtract(tilted, raised === "rear" ? front : rear);
  const told = { height: null, tilt, moved, enough: null, reason: null, warnings: [] };
  if (moved.value < -expanded(moved)) return { ...told, reason: warned("lift_wrong_way") };
  const height = heightOf(axles, front, rear, moved, rise, tilt);
  const margin = expanded(height);
  const enough = enoughOf(wheelbase, moved, mass);
  if (moved.value <= expanded(moved) || margin > WIDEST) return { ...told, enough, reason: warned("lift_too_small") };
  return { ...told, height, enough, warnings: margin > WIDE ? [warned("lift_wide")] : [] };
}

function refused(reason: Warned): Lift {
  return { height: null, tilt: null, moved: null, enough: null, reason, warnings: [] };
}

/** The formula, with its derivatives. The shares of both axles weigh their radii: (R_f F_f + R_r F_r) / m. */
function heightOf(
  axles: Axles, front: Uncertain, rear: Uncertain, moved: Uncertain, rise: Uncertain, tilt: number,
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

/** The rise at which the doubt of the moved load alone leaves ± WIDE. */
function enoughOf(wheelbase: number, moved: Uncertain, mass: number): number | null {
  const needed = (expanded(moved) * wheelbase) / (mass * WIDE);
  const rise = (wheelbase * needed) / Math.sqrt(1 + needed * needed);
  return rise < 0.5 * wheelbase ? rise : null;
}
