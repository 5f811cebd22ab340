/**
 * The records of a garage as the core sees them: typed, read, references resolved.
 *
 * One type a kind, with the fields the core computes with; the journal's own table (`generated/kinds`) says what each
 * field means. A field nobody filled is null. Masses, lengths and volumes are `Quantity` (exact, SI), money and hours
 * are exact ratios. A warning is `{code, data}` with a code of the error table; nothing here ever throws over data.
 */

import type { ErrorCode } from "../../errors";
import type { Quantity } from "../numbers/quantity";
import type { Ratio } from "../numbers/ratio";
import type { Sheet, SheetHole } from "../sheet/sheetRecords";

/** Something a person should know about a result; `code` is of the error table, `data` fills its sentence. */
export type Warned = { readonly code: ErrorCode; readonly data: Readonly<Record<string, unknown>> };

export function warned(code: ErrorCode, data: Record<string, unknown> = {}): Warned {
  return { code, data };
}

export type Car = {
  id: string;
  name: string | null;
  wheelbase: Quantity | null;
  track_front: Quantity | null;
  track_rear: Quantity | null;
  tyre_radius_front: Quantity | null;
  tyre_radius_rear: Quantity | null;
  tank_size: Quantity | null;
  tank_x: Quantity | null;
  tank_y: Quantity | null;
  tank_z: Quantity | null;
  fuel_kind: string | null;
  fuel_per_lap: Quantity | null;
  driver_x: Quantity | null;
  driver_y: Quantity | null;
  driver_z: Quantity | null;
  beltline: Quantity | null;
  power: Ratio | null;
  power_unit: "kW" | "hp" | "PS" | null;
  length: Quantity | null;
  width: Quantity | null;
  height: Quantity | null;
  front_overhang: Quantity | null;
  roll_front: Ratio | null;
  front_from: Ratio | null;
  front_to: Ratio | null;
  left_from: Ratio | null;
  left_to: Ratio | null;
  ballast_for: "mass" | "centre" | "cross" | null;
  ballast_more: Quantity | null;
  book_weight: Quantity | null;
  book_weight_from: string | null;
};

export type Scale = {
  id: string;
  name: string | null;
  kind: string;
  division: Quantity | null;
  capacity: Quantity | null;
  unit: string | null;
  repeatability: Quantity | null;
  accuracy_class: string | null;
};

/** A mass known from elsewhere, and what the scale showed for it. */
export type ScaleCheck = {
  id: string;
  scale: string;
  known_name: string | null;
  known: Quantity;
  known_within: Quantity | null;
  shown: Quantity;
};

/** `count` is how many pieces the record stands for; every mass of it, weighed or claimed, is of one piece. */
export type Part = {
  id: string;
  car: string | null;
  name: string | null;
  zone: string | null;
  x: Quantity | null;
  y: Quantity | null;
  z: Quantity | null;
  place_within: Quantity | null;
  length: Quantity | null;
  width: Quantity | null;
  count: number | null;
  whereabouts: string | null;
  asking: Ratio | null;
  sold_for: Ratio | null;
  instead_of: string | null;
  unsprung: boolean | null;
  rotating: boolean | null;
  with_bolts: boolean | null;
  claim: Quantity | null;
  claim_basis: string | null;
  claim_within: Quantity | null;
};

export type Weighing = {
  id: string;
  of: string | null;
  method: string;
  shown: Quantity;
  shown_empty: Quantity | null;
  shown_far: Quantity | null;
  pieces: number | null;
  scale: string | null;
  with_bolts: boolean | null;
  at: string | null;
};

export type Driver = {
  id: string;
  name: string | null;
  claim: Quantity | null;
  claim_basis: string | null;
  claim_within: Quantity | null;
};

export type Stage = { id: string; car: string | null; name: string | null; rank: number | null };

export type Job = {
  id: string;
  car: string | null;
  name: string | null;
  state: string | null;
  stage: string | null;
  trim: string | null;
  hours: Ratio | null;
  money: Ratio | null;
  fitted_on: string | null;
  ruling: string | null;
};

export type JobPart = { id: string; job: string; part: string; way: "off" | "on"; count: number | null };

export type LooseEnd = {
  id: string;
  job: string;
  sort: string | null;
  text: string | null;
  closed: boolean | null;
};

export type WeighIn = {
  id: string;
  car: string | null;
  layout: "corners" | "axles" | "total";
  lf: Quantity | null;
  rf: Quantity | null;
  lr: Quantity | null;
  rr: Quantity | null;
  front: Quantity | null;
  rear: Quantity | null;
  total: Quantity | null;
  scale: string | null;
  fuel: Quantity | null;
  fuel_within: Quantity | null;
  driver_in: boolean | null;
  driver: string | null;
  ballast: Quantity | null;
  trim: "road" | "event";
  official: boolean | null;
  jobs: readonly string[] | null;
  at: string | null;
};

/** One axle of the car of a weigh-in raised by `height`; `tilted`: what the axle left on the ground then carried. */
export type Lift = {
  id: string;
  car: string | null;
  weigh_in: string;
  raised: "front" | "rear";
  tilted: Quantity;
  height: Quantity;
  height_within: Quantity | null;
  scale: string | null;
  at: string | null;
};

/** Where ballast may be fixed: `fitted` blocks of `block` each are there now, `most` is what the place takes. */
export type BallastPlace = {
  id: string;
  car: string | null;
  name: string | null;
  x: Quantity | null;
  y: Quantity | null;
  z: Quantity | null;
  block: Quantity | null;
  most: number | null;
  fitted: number | null;
};

export type ClassSheet = {
  id: string;
  car: string | null;
  name: string | null;
  minimum: Quantity | null;
  driver: string | null;
  fuel: string | null;
  fuel_stated: Quantity | null;
  adders: Quantity | null;
  scale_division: Quantity | null;
  scale_rounding: string | null;
  risk: Ratio | null;
};

/** Records by id, in order of id. */
export type ById<T> = ReadonlyMap<string, T>;

/**
 * Everything the core needs of one garage, for one car and one trim.
 *
 * `jobs`, `stages`, `weigh_ins`, `ballast_places`, `class_sheets` and what hangs on them are those of `car` (or of no
 * named car). Replaced and deleted facts are gone, and what pointed to a replaced one points to its successor.
 * `retired`: ids of the drivers and scales that were deleted; what was weighed on or of them stays weighed.
 */
export type Garage = {
  readonly car: Car | null;
  readonly trim: "road" | "event";
  readonly retired: ReadonlySet<string>;
  readonly cars: ById<Car>;
  readonly drivers: ById<Driver>;
  readonly scales: ById<Scale>;
  readonly scale_checks: ById<ScaleCheck>;
  readonly stages: ById<Stage>;
  readonly parts: ById<Part>;
  readonly weighings: ById<Weighing>;
  readonly jobs: ById<Job>;
  readonly job_parts: ById<JobPart>;
  readonly loose_ends: ById<LooseEnd>;
  readonly weigh_ins: ById<WeighIn>;
  readonly lifts: ById<Lift>;
  readonly ballast_places: ById<BallastPlace>;
  readonly sheets: ById<Sheet>;
  readonly sheet_holes: ById<SheetHole>;
  readonly class_sheets: ById<ClassSheet>;
  readonly weighings_of: ReadonlyMap<string, readonly Weighing[]>;
  readonly checks_of: ReadonlyMap<string, readonly ScaleCheck[]>;
  readonly parts_of: ReadonlyMap<string, readonly JobPart[]>;
  readonly holes_of: ReadonlyMap<string, readonly SheetHole[]>;
  readonly warnings: readonly Warned[];
};
