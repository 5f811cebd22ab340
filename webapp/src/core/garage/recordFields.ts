/** Which fields of each kind the core reads: all of its record's, whose types are in `core/garage/records`. */

import type { Sheet, SheetHole } from "../sheet/sheetRecords";
import type * as records from "./records";

type Wanted<T> = readonly Exclude<keyof T, "id">[];

const CLAIM = ["claim", "claim_basis", "claim_within"] as const;

const CAR: Wanted<records.Car> = [
  "name",
  "wheelbase",
  "track_front",
  "track_rear",
  "tyre_radius_front",
  "tyre_radius_rear",
  "tank_size",
  "tank_x",
  "tank_y",
  "tank_z",
  "fuel_kind",
  "fuel_per_lap",
  "driver_x",
  "driver_y",
  "driver_z",
  "beltline",
  "length",
  "width",
  "height",
  "front_overhang",
  "power",
  "power_unit",
  "roll_front",
  "front_from",
  "front_to",
  "left_from",
  "left_to",
  "ballast_for",
  "ballast_more",
  "book_weight",
  "book_weight_from",
];
const DRIVER: Wanted<records.Driver> = ["name", ...CLAIM];
const SCALE: Wanted<records.Scale> = [
  "name",
  "kind",
  "division",
  "capacity",
  "unit",
  "repeatability",
  "accuracy_class",
];
const SCALE_CHECK: Wanted<records.ScaleCheck> = ["scale", "known_name", "known", "known_within", "shown"];
const STAGE: Wanted<records.Stage> = ["car", "name", "rank"];
const PART: Wanted<records.Part> = [
  "car",
  "name",
  "zone",
  "x",
  "y",
  "z",
  "place_within",
  "length",
  "width",
  "count",
  "whereabouts",
  "asking",
  "sold_for",
  "instead_of",
  "unsprung",
  "rotating",
  "with_bolts",
  ...CLAIM,
];
const WEIGHING: Wanted<records.Weighing> = [
  "of",
  "method",
  "shown",
  "shown_empty",
  "shown_far",
  "pieces",
  "scale",
  "with_bolts",
  "at",
];
const JOB: Wanted<records.Job> = ["car", "name", "state", "stage", "trim", "hours", "money", "fitted_on", "ruling"];
const JOB_PART: Wanted<records.JobPart> = ["job", "part", "way", "count"];
const LOOSE_END: Wanted<records.LooseEnd> = ["job", "sort", "text", "closed"];
const WEIGH_IN: Wanted<records.WeighIn> = [
  "car",
  "layout",
  "lf",
  "rf",
  "lr",
  "rr",
  "front",
  "rear",
  "total",
  "scale",
  "fuel",
  "fuel_within",
  "driver_in",
  "driver",
  "ballast",
  "trim",
  "official",
  "jobs",
  "at",
];
const LIFT: Wanted<records.Lift> = ["car", "weigh_in", "raised", "tilted", "height", "height_within", "scale", "at"];
const BALLAST_PLACE: Wanted<records.BallastPlace> = ["car", "name", "x", "y", "z", "block", "most", "fitted"];
const SHEET_FORM = ["form", "width", "height", "diameter", "corners"] as const;
const SHEET: Wanted<Sheet> = [
  "part",
  "material",
  ...SHEET_FORM,
  "thickness",
  "measured",
  "gauge",
  "gauge_table",
  "density_low",
  "density_high",
  "within",
];
const SHEET_HOLE: Wanted<SheetHole> = ["sheet", ...SHEET_FORM, "count"];
const CLASS_SHEET: Wanted<records.ClassSheet> = [
  "car",
  "name",
  "minimum",
  "driver",
  "fuel",
  "fuel_stated",
  "adders",
  "scale_division",
  "scale_rounding",
  "risk",
];

/** Field names by kind, in the order the kinds are read: a reference that is required leads to a kind further up. */
export const WANTED: Readonly<Record<string, readonly string[]>> = {
  car: CAR,
  driver: DRIVER,
  scale: SCALE,
  scale_check: SCALE_CHECK,
  stage: STAGE,
  part: PART,
  weighing: WEIGHING,
  job: JOB,
  job_part: JOB_PART,
  loose_end: LOOSE_END,
  weigh_in: WEIGH_IN,
  lift: LIFT,
  ballast_place: BALLAST_PLACE,
  sheet: SHEET,
  sheet_hole: SHEET_HOLE,
  class_sheet: CLASS_SHEET,
};
