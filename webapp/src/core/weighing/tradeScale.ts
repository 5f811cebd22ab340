/**
 * A trade scale's legal tolerance, and what it says of the gain for a whole car.
 *
 * A scale of a legal accuracy class may be off by so many divisions, more of them as the load grows. When the person
 * enters the class of a scale and its division, that is a better bound than an assumption by kind. Two traditions
 * disagree above 4000 divisions; the wider one, NIST Handbook 44 (2.20, Table 6, maintenance), is taken: it holds
 * everywhere the steps of OIML R 76 in service do. Home scales are certified to neither.
 *
 * A platform nobody said the class of is taken to be no better than class III allows: knowing less never asks for less.
 */

import type { Garage } from "../garage/records";
import { rectangular, type Uncertain, uncertain } from "../numbers/uncertain";
import { ASSUMED_GAIN, type ScaleModel } from "./scale";

type Steps = readonly (readonly [number, number])[];

/** Accuracy class → (up to so many divisions of load, off by so many divisions). Class IIII from memory. */
const STEPS: Readonly<Record<string, Steps>> = {
  III: [
    [500, 1],
    [2000, 2],
    [4000, 3],
    [Infinity, 5],
  ],
  IIII: [
    [50, 1],
    [200, 2],
    [400, 3],
    [Infinity, 5],
  ],
};

export const ASSUMED_DIVISION = 1; // kg, of a platform for cars nobody noted the step of: common practice, no source

/** How far (kg) a scale in service may be off at this load (kg). */
export function tolerance(accuracyClass: string, division: number, load: number): number {
  const steps = STEPS[accuracyClass] ?? [];
  const step = steps.find(([most]) => load <= most * division);
  return (step?.[1] ?? Infinity) * division;
}

/**
 * The gain to take for a whole car of about `load` kg: from checks, else the legal class, else as assumed.
 *
 * `division`: the scale's, kg, where somebody else than its record states it.
 */
export function wholeCarGain(
  garage: Garage,
  model: ScaleModel,
  load: number,
  division: number | null = null,
): Uncertain {
  const named = garage.scales.get(model.id);
  const step = division || model.division;
  if (!model.assumed || !named || load <= 0) return model.gain;
  const source = `cal:${model.id}`;
  if (named.accuracy_class && step) return uncertain(0, { [source]: relative(named.accuracy_class, step, load) });
  return named.kind === "platform" ? platformGain(source, load, step) : model.gain;
}

/** Whether the gain of a whole car is taken from the legal class by the scale's own record. */
export function gainByClass(garage: Garage, model: ScaleModel): boolean {
  return model.assumed && Boolean(garage.scales.get(model.id)?.accuracy_class && model.division);
}

/** The gain assumed of a platform of unknown class, from the named source: no tighter than class III in service. */
export function platformGain(source: string, load: number, division: number | null = null): Uncertain {
  const assumed = ASSUMED_GAIN.platform as number;
  const legal = load > 0 ? relative("III", division || ASSUMED_DIVISION, load) : assumed;
  return uncertain(0, { [source]: Math.max(assumed, legal) });
}

function relative(accuracyClass: string, division: number, load: number): number {
  return rectangular(tolerance(accuracyClass, division, load)) / load;
}
