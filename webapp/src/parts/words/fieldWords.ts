/** What a field and a value are called in front of people. */

import { KINDS } from "../../generated/kinds";
import type { Value } from "../../journal/garage";
import { own } from "../../own";
import { refName } from "./naming";
import { unitWord } from "./units";

const FIELD_WORDS: Record<string, string> = {
  track_front: "front track",
  track_rear: "rear track",
  tyre_radius_front: "front tyre radius",
  tyre_radius_rear: "rear tyre radius",
  tank_x: "where the tank sits, along",
  tank_y: "where the tank sits, across",
  tank_z: "height of the tank",
  fuel_per_lap: "fuel a lap takes",
  fuel_kind: "fuel",
  driver_x: "where the driver sits, along",
  driver_y: "where the driver sits, across",
  driver_z: "height of the driver's seat",
  book_weight: "weight by the book",
  book_weight_from: "where the book weight is from",
  accuracy_class: "accuracy class",
  x: "place along the car",
  y: "place across the car",
  z: "height",
  place_within: "place good to",
  front_overhang: "front overhang",
  count: "how many",
  yard: "which yard",
  asking: "asking price",
  instead_of: "instead of",
  unsprung: "unsprung",
  with_bolts: "with its bolts",
  claim: "weight as claimed",
  claim_basis: "how the claim is known",
  claim_within: "claim good to",
  claim_from: "where the claim is from",
  fitted_on: "fitted on",
  way: "off or on",
  sort: "kind",
  closed: "done",
  deleted: "withdrawn",
  driver: "driver in or out",
  fuel_stated: "fuel as stated",
  adders: "added to the minimum",
  scale_division: "official scale's division",
  scale_rounding: "official scale's rounding",
  risk: "risk taken",
  front_from: "front share, at least",
  front_to: "front share, at most",
  left_from: "left share, at least",
  left_to: "left share, at most",
  ballast_for: "what ballast is chosen for",
  ballast_more: "how much more ballast than the least",
  block: "weight of one block",
  most: "how many blocks it takes",
  fitted: "blocks fitted",
  clause: "clause",
  density_low: "density from",
  density_high: "density to",
  mass_unit: "unit of weight",
  length_unit: "unit of length",
  volume_unit: "unit of volume",
  hazards: "cautions",
};

export function fieldWord(field: string): string {
  return own(FIELD_WORDS, field) ?? field.replaceAll("_", " ");
}

/** A value of a field in words. */
export function valueWords(kind: string, field: string, value: Value): string {
  const type = own(own(KINDS, kind)?.fields ?? {}, field)?.type;
  if (value === null) return "nothing";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (type === "ref") return refName(value);
  if (Array.isArray(value))
    return value.length ? value.map((each) => (type === "refs" ? refName(each) : plain(each))).join(", ") : "none";
  if (type === "choice") return unitWord(plain(value)).replaceAll("_", " ");
  return plain(value);
}

/** What was set aside may hold anything JSON can say. */
function plain(value: unknown): string {
  return typeof value === "string" ? value : JSON.stringify(value);
}
