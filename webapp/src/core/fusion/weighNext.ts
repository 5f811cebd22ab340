/**
 * What one more weigh-in now would do to the doubt: on each scale a car can stand on, and on a platform.
 *
 * A look that has not happened yet has no value, only doubts: the scale's gain, which other weigh-ins on it share, its
 * steps and how it repeats a car, the litres in the tank and the driver as at the last weigh-in. Put beside the looks
 * that are there it gives the uncertainty they would have together.
 */

import { order } from "../garage/order";
import type { Garage, Scale, WeighIn } from "../garage/records";
import { resolution, type Uncertain, u, uncertain, weightedSum } from "../numbers/uncertain";
import type { ScaleModel } from "../weighing/scale";
import { ASSUMED_DIVISION, platformGain, wholeCarGain } from "../weighing/tradeScale";
import type { Masses } from "../weighing/weighing";
import { driverIn, isDriverSaid } from "../wholeCar/aboard";
import { assumedWithin, fuelMass } from "../wholeCar/fuel";
import type { Weighed } from "../wholeCar/weighed";
import { ASSUMED_REPEATABILITY, lookAt, repeatability } from "../wholeCar/weighIn";
import type { Fusion } from "./fusion";
import { uWith } from "./inquiry";

const LOOKS: Readonly<Record<string, number>> = { corner_pads: 4, axle_pads: 2, platform: 1 };

/** One more weigh-in on this scale (null: a platform nobody knows): u of the weight now, and with it, kg. */
export type Next = { readonly scale: string | null; readonly u_now: number; readonly u_then: number };

/** What one more weigh-in would give, the best first. */
export function weighNext(garage: Garage, known: Masses, fusion: Fusion): Next[] {
  const last = (fusion.evidence.counted.at(-1) as Weighed).record;
  const load = fusion.weight.value;
  const scales = [...garage.scales.values()];
  const looks: [string | null, Uncertain][] = scales
    .filter(({ id, kind }) => !garage.retired.has(id) && (LOOKS[kind] !== undefined || id === last.scale))
    .map((scale) => [scale.id, lookOn(garage, known.scales.get(scale.id) as ScaleModel, scale, load)]);
  if (!scales.some(({ kind }) => kind === "platform")) looks.push([null, onPlatform(load)]);
  const aboard = aboardOf(garage, known, last);
  const u_now = u(fusion.weight);
  const found = looks.map(([scale, look]) => ({ scale, u_now, u_then: uWith(fusion, atTarget(fusion, look, aboard)) }));
  return found.sort((a, b) => {
    return (
      a.u_then - b.u_then || Number(a.scale === null) - Number(b.scale === null) || order(a.scale ?? "", b.scale ?? "")
    );
  });
}

function lookOn(garage: Garage, model: ScaleModel, scale: Scale, load: number): Uncertain {
  const rounding = resolution(model.division || ASSUMED_DIVISION) * Math.sqrt(LOOKS[scale.kind] ?? 1);
  return lookAt("next", load, wholeCarGain(garage, model, load), rounding, repeatability(garage, model));
}

function onPlatform(load: number): Uncertain {
  const repeats = ASSUMED_REPEATABILITY.platform as number;
  return lookAt("next", load, platformGain("cal:next", load), resolution(ASSUMED_DIVISION), repeats);
}

/** Fuel and driver as far as they were said at the last weigh-in, the litres read anew. */
function aboardOf(garage: Garage, known: Masses, last: WeighIn): Uncertain {
  const driver = (isDriverSaid(last) ? driverIn(garage, last, known) : null) ?? uncertain(0);
  if (last.fuel === null) return driver;
  const within = last.fuel_within ? last.fuel_within.value : assumedWithin(last.fuel.value);
  const fuel = fuelMass(last.fuel.value, garage.car?.fuel_kind ?? null, within, "fuel:next");
  return weightedSum([driver, fuel], [1, 1]);
}

/** The look as one at the weight now: what is aboard out, what the class weighs with in. */
function atTarget(fusion: Fusion, look: Uncertain, aboard: Uncertain): Uncertain {
  const { sources } = weightedSum([look, aboard, fusion.evidence.target], [1, -1, 1]);
  return uncertain(fusion.weight.value, sources);
}
