/**
 * The records of a garage as the core sees them: typed, read, references resolved.
 *
 * Their types are made of the table of kinds, with the fields the core computes with. A field nobody filled is null;
 * one that a record means nothing without (a name is not one) never is. Masses, lengths and volumes are `Quantity`
 * (exact, SI), money and hours are exact ratios. A warning is `{code, data}` with a code of the error table; nothing
 * here ever throws over data.
 */

import type { ErrorCode } from "../../errors";
import type { FieldsOf, KindName, TABLE, ValueOf } from "../../journal/kinds";
import type { Quantity } from "../numbers/quantity";
import type { Ratio } from "../numbers/ratio";

/** Something a person should know about a result; `code` is of the error table, `data` fills its sentence. */
export type Warned = { readonly code: ErrorCode; readonly data: Readonly<Record<string, unknown>> };

export function warned(code: ErrorCode, data: Record<string, unknown> = {}): Warned {
  return { code, data };
}

type CoreKind = { [K in KindName]: (typeof TABLE)[K] extends { kept: true } ? never : K }[KindName];
type Read<F> = F extends { type: "mass" | "length" | "volume" }
  ? Quantity
  : F extends { type: "money" | "hours" | "fraction" }
    ? Ratio
    : F extends { type: "refs" }
      ? readonly string[]
      : ValueOf<F>;
type OrNull<F> = F extends { required: true } ? (F extends { type: "text" } ? null : never) : null;
type CoreRecord<F> = { id: string } & {
  [N in keyof F as F[N] extends { kept: true } ? never : N]: Read<F[N]> | OrNull<F[N]>;
};

export type Car = CoreRecord<FieldsOf<"car">>;
export type Driver = CoreRecord<FieldsOf<"driver">>;
export type Scale = CoreRecord<FieldsOf<"scale">>;
export type ScaleCheck = CoreRecord<FieldsOf<"scale_check">>;
export type Part = CoreRecord<FieldsOf<"part">>;
export type Weighing = CoreRecord<FieldsOf<"weighing">>;
export type Stage = CoreRecord<FieldsOf<"stage">>;
export type Job = CoreRecord<FieldsOf<"job">>;
export type JobPart = CoreRecord<FieldsOf<"job_part">>;
export type WeighIn = CoreRecord<FieldsOf<"weigh_in">>;
export type Repeat = CoreRecord<FieldsOf<"repeat">>;
export type Omission = CoreRecord<FieldsOf<"omission">>;
export type Lift = CoreRecord<FieldsOf<"lift">>;
export type BallastPlace = CoreRecord<FieldsOf<"ballast_place">>;
export type ClassSheet = CoreRecord<FieldsOf<"class_sheet">>;
export type Sheet = CoreRecord<FieldsOf<"sheet">>;
export type SheetHole = CoreRecord<FieldsOf<"sheet_hole">>;
export type SheetForm = Pick<Sheet, "form" | "width" | "height" | "diameter" | "corners">;

/** Every record by plural kind and id, in order of id. */
type Records = { readonly [K in CoreKind as `${K}s`]: ReadonlyMap<string, CoreRecord<FieldsOf<K>>> };

/**
 * Everything the core needs of one garage, for one car and one trim.
 *
 * `jobs`, `stages`, `weigh_ins`, `ballast_places`, `class_sheets` and what hangs on them are those of `car` (or of no
 * named car). Replaced and deleted facts are gone, and what pointed to a replaced one points to its successor.
 * `retired`: ids of the drivers and scales that were deleted; what was weighed on or of them stays weighed.
 */
export type Garage = Records & {
  readonly car: Car | null;
  readonly trim: "road" | "event";
  readonly retired: ReadonlySet<string>;
  readonly weighings_of: ReadonlyMap<string, readonly Weighing[]>;
  readonly checks_of: ReadonlyMap<string, readonly ScaleCheck[]>;
  readonly parts_of: ReadonlyMap<string, readonly JobPart[]>;
  readonly holes_of: ReadonlyMap<string, readonly SheetHole[]>;
  readonly repeats_of: ReadonlyMap<string, readonly Repeat[]>;
  readonly omissions_of: ReadonlyMap<string, readonly Omission[]>;
  readonly warnings: readonly Warned[];
};
