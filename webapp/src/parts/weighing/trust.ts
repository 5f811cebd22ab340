/** How far a scale's calibration is trusted, in words. */

import { book } from "../../answers";
import { showDoubt, showPercent } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { partRepeats, type ScaleModel } from "../../core/weighing/scale";
import { repeatability } from "../../core/wholeCar/weighIn";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";

export function trustWords(model: ScaleModel | undefined): { shown: string; from: string } {
  if (!model) return { shown: "", from: "" };
  const checks = model.checks.length;
  const from = model.assumed ? "assumed, not checked" : checks === 1 ? "from 1 check" : `from ${checks} checks`;
  return { shown: `± ${showPercent(expanded(model.gain))}`, from };
}

/** What repeats on it show, with what was noted of it: "A part repeats to 0.9 g, from 9 readings." */
export function repeatWords(model: ScaleModel | undefined): string[] {
  if (!model?.id) return []; // of scales without a name nobody knows whether they are one
  const unit = garage.value.one("scale", model.id)?.values.unit ?? massUnit();
  const words = (what: string, kg: number, readings: number) =>
    `${what} repeats ${kg ? `to ${showDoubt(kg, unit)}` : "as finely as it shows"}, from ${readings} readings.`;
  const { of_parts, of_car } = model;
  return [
    ...(of_parts.freedom ? [words("A part", partRepeats(model), of_parts.readings)] : []),
    ...(of_car.freedom ? [words("The whole car", repeatability(book.value, model), of_car.readings)] : []),
  ];
}
