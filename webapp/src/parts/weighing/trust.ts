/** How far a scale's calibration is trusted, in words. */

import { showPercent } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import type { ScaleModel } from "../../core/weighing/scale";

export function trustWords(model: ScaleModel | undefined): { shown: string; from: string } {
  if (!model) return { shown: "", from: "" };
  const checks = model.checks.length;
  const from = model.assumed ? "assumed, not checked" : checks === 1 ? "from 1 check" : `from ${checks} checks`;
  return { shown: `± ${showPercent(expanded(model.gain))}`, from };
}
