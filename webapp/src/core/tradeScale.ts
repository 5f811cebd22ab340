/**
 * A trade scale's legal tolerance, and what it says of the gain for a whole car.
 *
 * A scale of a legal accuracy class may be off by so many divisions, more of them as the load grows. When the person
 * enters the class of a scale and its division, that is a better bound than an assumption by kind. Two traditions
 * disagree above 4000 divisions; the wider one, NIST Handbook 44 (2.20, Table 6, maintenance), is taken: it holds
 * everywhere the steps of OIML R 76 in service do. Home scales are certified to neither.
 */

import type { Garage } from "./records";
import type { ScaleModel } from "./scale";
import { type Uncertain, rectangular, uncertain } from "./uncertain";

type Steps = readonly (readonly [number, number])[];

/** Accuracy class → (up to so many divisions of load, off by so many divisions). Class IIII from memory. */
const STEPS: Readonly<Record<string, Steps>> = {
  III: [[500, 1], [2000, 2], [4000, 3], [Infinity, 5]],
  IIII: [[50, 1], [200, 2], [400, 3], [Infinity, 5]],
};

/** How far (kg) a scale in service may be off at this load (kg). */
export function tolerance(accuracyClass: string, division: number, load: number): number {
  const steps = STEPS[accuracyClass] ?? [];
  const step = steps.find(([most]) => load <= most * division);
  return (step?.[1] ?? Infinity) * division;
}

/** The gain to take for a whole car of about `load` kg: from checks, else the legal class, else as assumed. */
export function wholeCarGain(garage: Garage, model: ScaleModel, load: number): Uncertain {
  const accuracyClass = garage.scales.get(model.id)?.accuracy_class;
  if (!model.assumed || !accuracyClass || !model.division || load <= 0) return model.gain;
  const off = rectangular(tolerance(accuracyClass, model.division, load));
  return uncertain(0, { [`cal:${model.id}`]: off / load });
}
