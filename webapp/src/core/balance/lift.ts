/**
 * Axle lifts of a garage: the height of the centre of gravity from a lift's record, or from readings as they are.
 *
 * A lift belongs to a level weigh-in: the car stands as it stood there, and only one axle is raised. With corner pads
 * each axle is the sum of two looks, so the load that moved is the difference of four. The scale of the lift is that of
 * the weigh-in unless another is named; then its own gain no longer cancels, and counts. The sum itself is
 * `core/balance/axleLift`.
 */

import "../../laterErrors";
import { order } from "../garage/order";
import { type Car, type Garage, type Lift, type Warned, type WeighIn, warned } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { rectangular, resolution, type Uncertain, uncertain } from "../numbers/uncertain";
import { divisionFor, type ScaleModel, UNNAMED } from "../weighing/scale";
import { wholeCarGain } from "../weighing/tradeScale";
import { type Masses, masses } from "../weighing/weighing";
import { isWarned } from "../wholeCar/condition";
import { LOOKS, lengthOf, loadsOf, lookAt, modelFor, type Reading, repeatability } from "../wholeCar/weighIn";
import {
  type Axles,
  axleLift,
  LIFT_WITHIN,
  type LiftedCar,
  type Outlook,
  outlook as outlookOf,
  type Raised,
  refused,
} from "./axleLift";
import { meanTrack } from "./place";

// Of the mean track, between which the centres of closed cars lie; common practice, no source.
const LIKELY = [0.15, 0.6] as const;
const FULL = 0.95; // of a tank in which fuel has nowhere to run: common practice, no source
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
  readonly raised: Raised;
  readonly scale: string | null;
};

/** The height of the garage's car from one lift. Never throws over data: what cannot be told has a reason. */
export function lift(garage: Garage, readings: LiftReadings, known: Masses = masses(garage)): LiftedCar {
  const axles = axlesOf(garage.car);
  if (isWarned(axles)) return refused(axles);
  const { front, rear, tilted, height } = readings;
  const model = known.scales.get(readings.scale ?? UNNAMED);
  if (!front || !rear || !tilted || !height || !model) return refused(warned("lift_missing"));
  const gain = wholeCarGain(garage, model, front.value + rear.value);
  const look = reader(garage, model, gain, padsOf(garage, model));
  return axleLift(
    axles,
    look("lift:front", front.value, front),
    look("lift:rear", rear.value, rear),
    look("lift:tilted", tilted.value, tilted),
    riseOf(height, readings.height_within, "lift:height"),
    readings.raised,
  );
}

/** The height from a lift of the garage and the axle loads of its weigh-in. Never throws over data. */
export function liftOf(garage: Garage, record: Lift, known: Masses = masses(garage)): LiftedCar {
  const weighed = garage.weigh_ins.get(record.weigh_in) as WeighIn;
  const level = levelOf(garage, weighed, record.scale, known);
  if (isWarned(level)) return refused(level);
  const tilted = level.look(`${record.id}:tilted`, record.tilted.value, record.tilted);
  const rise = riseOf(record.height, record.height_within, `lift:${record.id}:height`);
  const found = axleLift(level.axles, level.front, level.rear, tilted, rise, record.raised);
  return { ...found, warnings: [...found.warnings, ...unlikely(garage.car, found), ...aboutCar(garage, weighed)] };
}

/** Lifts as they were made: by their stated time (those without one last), then by id. */
export function liftsInOrder(garage: Garage): Lift[] {
  return [...garage.lifts.values()].sort((a, b) => {
    const undated = Number(a.at === null) - Number(b.at === null);
    return undated || order(String(a.at), String(b.at)) || order(a.id, b.id);
  });
}

/** What lifting an axle of the car of this weigh-in would tell, before it is done; or why nothing would. */
export function outlook(
  garage: Garage,
  weighIn: string,
  raised: Raised = "rear",
  scale: string | null = null,
  known: Masses = masses(garage),
): Outlook | Warned {
  const record = garage.weigh_ins.get(weighIn);
  if (!record) return warned("lift_missing");
  const level = levelOf(garage, record, scale, known);
  if (isWarned(level)) return level;
  const onGround = raised === "rear" ? level.front : level.rear;
  const typed = record[LOOKS[record.layout].at(raised === "rear" ? 0 : -1) as Reading] as Quantity;
  return outlookOf(level.axles, level.front, level.rear, level.look("outlook", onGround.value, typed), raised);
}

/** The lengths of the car, each known to its last digit; or which are missing. */
export function axlesOf(car: Car | null): Axles | Warned {
  const wheelbase = lengthOf(car, "wheelbase");
  if (!wheelbase) return warned("wheelbase_unknown");
  const [front, rear] = [lengthOf(car, "tyre_radius_front"), lengthOf(car, "tyre_radius_rear")];
  return front && rear ? { wheelbase, radius_front: front, radius_rear: rear } : warned("radius_unknown");
}

function riseOf(height: Quantity, within: Quantity | null, source: string): Uncertain {
  const half = within ? within.value : LIFT_WITHIN;
  return uncertain(height.value, { [source]: rectangular(Math.max(half, 0.5 * height.last_digit)) });
}

/** One axle read, its scale's gain taken out. `typed` tells the division of a scale that has none noted. */
type Look = (name: string, shown: number, typed: Quantity) => Uncertain;

/** How a scale reads one axle of a car as the sum of `pads` looks. */
function reader(garage: Garage, model: ScaleModel, gain: Uncertain, pads: number): Look {
  const [steps, repeats] = [Math.sqrt(pads), repeatability(garage, model) / Math.sqrt(2)];
  return (name, shown, typed) => {
    const rounding = steps * resolution(divisionFor(model, typed));
    return lookAt(name, shown / (1 + gain.value), gain, rounding, repeats);
  };
}

function padsOf(garage: Garage, model: ScaleModel): number {
  return PADS[garage.scales.get(model.id)?.kind ?? ""] ?? 1;
}

/** The car standing level, as weighed, and what reads the axle left on the ground. */
type Level = { readonly axles: Axles; readonly front: Uncertain; readonly rear: Uncertain; readonly look: Look };

/** `scale`: id of the one that reads the lift; that of the weigh-in when null. Else why there is nothing to lift. */
function levelOf(garage: Garage, record: WeighIn, scale: string | null, known: Masses): Level | Warned {
  const axles = axlesOf(garage.car);
  if (isWarned(axles)) return axles;
  const { loads, gain } = loadsOf(garage, record, known);
  const same = scale === null || scale === record.scale;
  const model = same ? modelFor(record, known) : known.scales.get(scale);
  if (!model) return warned("lift_missing");
  const { front, rear, total } = loads;
  if (!total || !front || !rear || front.value <= 0 || rear.value <= 0) {
    return warned("axles_unknown", { weigh_in: record.id });
  }
  const pads = same && record.layout === "corners" ? 2 : padsOf(garage, model);
  const look = reader(garage, model, same ? gain : wholeCarGain(garage, model, total.value), pads);
  return { axles, front, rear, look };
}

/** A height no car has comes from a slipped reading, whatever its doubt. */
function unlikely(car: Car | null, { height }: LiftedCar): Warned[] {
  const track = meanTrack(car);
  if (!height || track === null) return [];
  return height.value >= LIKELY[0] * track && height.value <= LIKELY[1] * track ? [] : [warned("lift_unlikely")];
}

/** What of the car's load makes a lift worse or dangerous: somebody in it, fuel that can run to the low end. */
function aboutCar(garage: Garage, record: WeighIn): Warned[] {
  const [fuel, tank] = [record.fuel?.value ?? null, garage.car?.tank_size?.value ?? null];
  const still = fuel !== null && (fuel === 0 || (tank !== null && fuel >= FULL * tank));
  return [
    ...(record.driver_in ? [warned("lift_driver_in", { weigh_in: record.id })] : []),
    ...(still ? [] : [warned("lift_fuel_moves", { weigh_in: record.id })]),
  ];
}
