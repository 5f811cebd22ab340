/** A question about a reading in words: what is odd, what would explain it, and what it is held against. */

import type { Quantity } from "../../core/numbers/quantity";
import { showMass } from "../../core/numbers/shown";
import type { Display, Misread } from "../../core/weighing/display";
import type { Known } from "../../core/weighing/known";
import type { Slip } from "../../core/weighing/slips";
import { massUnit } from "../../garage/units";
import { own } from "../../own";
import { refName } from "../words/naming";

const WORDS: Readonly<Record<string, string>> = { kg: "kilograms", lb: "pounds", g: "grams", oz: "ounces" };

/** Units in a sentence: "pounds", "pounds and ounces". */
export function unitsWord(unit: string): string {
  return unit
    .split(" ")
    .map((each) => own(WORDS, each) ?? each)
    .join(" and ");
}

/** Why a display cannot have shown a reading. */
export function misreadWords(shown: Quantity, { why }: Misread, { unit, division, capacity }: Display): string {
  if (why === "unit") return `This scale shows ${unitsWord(unit ?? "")}; this is in ${unitsWord(shown.unit)}.`;
  if (why === "capacity") return `${shown.reads} is more than this scale can weigh (${capacity?.reads}).`;
  return `This scale counts in steps of ${division?.reads}; it cannot show ${shown.reads}.`;
}

/** Which slip would explain looks. `before` and `after`: those of them that change, as read and without the slip. */
export function slipWords(slip: Slip, before: readonly Quantity[], after: readonly Quantity[]): string {
  const [first, other] = [before[0]?.reads ?? "", after[0]?.reads ?? ""];
  if (slip.sort === "point") return `${first} looks like ${other} with its point in the wrong place.`;
  const digits = before.map(({ reads }) => reads.slice(0, reads.lastIndexOf(" "))).join(" and ");
  const looks = before.length > 1 ? "look" : "looks";
  const inUnit = showMass(after[0]?.value ?? 0, slip.from);
  return `${digits} ${looks} like ${unitsWord(slip.to)} read as ${unitsWord(slip.from)}: ${other} = ${inUnit}.`;
}

/** The same of several readings at once: "kilograms read as pounds". */
export function slipName(slip: Slip): string {
  return slip.sort === "unit" ? `${unitsWord(slip.to)} read as ${unitsWord(slip.from)}` : "a point in the wrong place";
}

/** What a reading is held against. */
export function againstWords({ why, basis, of, value }: Known): string {
  const mass = showMass(value, massUnit());
  switch (why) {
    case "itself":
      return OWN[basis ?? "guessed"].replace("%", mass);
    case "alike":
      return `${refName(of)} weighs ${mass}.`;
    case "twin":
      return `${refName(of)} weighs ${mass}, and one takes the place of the other.`;
    case "person":
      return "Hardly anybody weighs that.";
    case "car":
      return basis ? `Until now the car weighs ${mass}.` : `The class asks for ${mass}.`;
    case "weigh_in":
      return `At another weigh-in it weighed ${mass}.`;
    case "check":
      return `What was put on weighs ${mass}.`;
  }
}

const OWN = {
  weighed: "It weighed % before.",
  worked_out: "It was worked out at %.",
  quoted: "It is quoted at %.",
  guessed: "It was guessed at %.",
};
