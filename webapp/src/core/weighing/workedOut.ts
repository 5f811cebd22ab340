/**
 * A part that was worked out before it was made, and weighed after: what the scale says against what was reckoned.
 *
 * The difference carries the doubt of both. When it is larger than both allow (twice the standard uncertainty of the
 * difference), something was not as reckoned, and the usual causes are named (common practice, no source).
 */

import { WORKED_OUT_SENTENCES } from "../../generated/workedOutSentences";
import type { Part } from "../garage/records";
import { layOut, showMass } from "../numbers/shown";
import { expanded, subtract, type Uncertain } from "../numbers/uncertain";
import { sizeOf, teller } from "../words/said";
import { claimed } from "./claims";
import type { Mass } from "./weighing";

const said = teller(WORKED_OUT_SENTENCES);

/** Masses of one piece, kg. `difference`: weighed − worked out. `beyond`: more than both doubts allow. */
export type Against = {
  readonly worked_out: Uncertain;
  readonly weighed: Uncertain;
  readonly difference: Uncertain;
  readonly beyond: boolean;
  readonly with_bolts: boolean;
};

/** What was weighed against what was worked out; null unless there are both. */
export function against(part: Part, { mass, basis, readings }: Mass): Against | null {
  const claim = claimed(part);
  if (claim?.[1] !== "worked_out" || !mass || basis !== "weighed") return null;
  const difference = subtract(mass, claim[0]);
  const beyond = isBeyond(difference);
  const bolts = readings.some((reading) => reading.with_bolts);
  return { worked_out: claim[0], weighed: mass, difference, beyond, with_bolts: bolts };
}

/** More than its doubt, and still so to the digit in which both are shown: 0.02 ± 0.02 is none. */
function isBeyond(difference: Uncertain): boolean {
  const U = expanded(difference);
  const shown = layOut("mass", Math.abs(difference.value), "kg", U);
  return Math.abs(difference.value) > U && JSON.stringify(shown.parts) !== JSON.stringify(shown.within);
}

/** The difference in one sentence. `unit`: a unit of mass. */
export function againstSentence({ difference, beyond, with_bolts: bolts }: Against, unit: string): string {
  if (!beyond) return said("agree", { difference: showMass(difference.value, unit, expanded(difference), true) }).text;
  const heavier = bolts ? "heavier_with_bolts" : "heavier";
  return said(difference.value > 0 ? heavier : "lighter", sizeOf(difference, unit)).text;
}
