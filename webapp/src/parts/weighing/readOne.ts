/** One weighing read by itself, saved or still being typed, counted or replaced: what it alone says of the mass. */
import { known, lists, type Plain } from "../../answers";
import { readGarage } from "../../core/garage/garage";
import type { Warned, Weighing } from "../../core/garage/records";
import { type ScaleModel, UNNAMED } from "../../core/weighing/scale";
import { type Reading, readWeighing } from "../../core/weighing/weighing";
import { laidRepeats } from "../weighIn/laidRepeats";

/** `reading` is null when it cannot be read; `warnings` then say why. `model`: what is known of its scale's errors. */
export type ReadOne = {
  weighing: Weighing | null;
  reading: Reading | null;
  model: ScaleModel | null;
  warnings: readonly Warned[];
};

export function readOne(record: Plain): ReadOne {
  const { scales = [] } = lists.value;
  // Alone: neither what it replaces nor what it was of matters for what the display said.
  const alone = { ...record, of: null, replaces: null, deleted: null };
  const garage = readGarage({ scales, weighings: [alone], ...laidRepeats(record.id, record.id) });
  const weighing = garage.weighings.get(record.id) ?? null;
  if (!weighing) return { weighing, reading: null, model: null, warnings: garage.warnings };
  const model = known.value.scales.get(weighing.scale ?? UNNAMED) ?? null;
  const result = model && readWeighing(weighing, model, garage);
  if (!result) return { weighing, reading: null, model, warnings: garage.warnings };
  if ("mass" in result) return { weighing, reading: result, model, warnings: result.warnings };
  return { weighing, reading: null, model, warnings: [result] };
}
