/**
 * One value of one record, read as its field's type says.
 *
 * Quantities are read by `core/numbers/quantity`, everything else is checked for its shape only. What does not fit
 * throws `QuantityError` (with its sentence) or `Misfit`; the reader of the garage makes warnings of both.
 */

import type { Field } from "../../generated/kinds";
import { type Kind, type Quantity, QuantityError, read, readNumber } from "../numbers/quantity";
import { compare, type Ratio, ratio } from "../numbers/ratio";

/** A value of the wrong shape. */
export class Misfit extends Error {}

// Zero is a reading a scale may show, but not a size these can have.
const POSITIVE = new Set([
  "division",
  "capacity",
  "known",
  "minimum",
  "scale_division",
  "claim",
  "wheelbase",
  "track_front",
  "track_rear",
  "tyre_radius_front",
  "tyre_radius_rear",
  "tank_size",
  "fuel_per_lap",
  "length",
  "width",
  "height",
  "diameter",
  "thickness",
  "block",
]);
// Places on an axis, which may lie in front of the front axle or left of the centreline.
const SIGNED = new Set(["x", "y", "tank_x", "tank_y", "driver_x", "driver_y"]);

type Span = readonly [least: Ratio, most: Ratio, words: string];

// Metres that a car's own sizes keep within, wide enough for published ones; beyond them a unit has slipped.
const TRACK: Span = [ratio(1n, 2n), ratio(3n), "0.5 m to 3 m"];
const RADIUS: Span = [ratio(1n, 10n), ratio(1n), "100 mm to 1000 mm"];
const LIKELY: Readonly<Record<string, Span>> = {
  wheelbase: [ratio(1n), ratio(6n), "1 m to 6 m"],
  track_front: TRACK,
  track_rear: TRACK,
  tyre_radius_front: RADIUS,
  tyre_radius_rear: RADIUS,
};

/** The value of a field. `unit` is what a bare mass was typed in. Throws `QuantityError` or `Misfit`. */
export function readField(name: string, spec: Field, value: unknown, unit: string | null): unknown {
  const type = spec.type;
  if (type === "mass" || type === "length" || type === "volume") {
    const signs = { positive: POSITIVE.has(name), signed: SIGNED.has(name) };
    return likely(name, readOnce(type, asTyped(value), type === "mass" ? unit : null, signs));
  }
  const plain = PLAIN[type];
  if (!plain) throw new Misfit();
  return plain(value, spec);
}

/** The size itself, if a car can have it as its `name`. Throws `QuantityError`. */
export function likely(name: string, size: Quantity): Quantity {
  const span = LIKELY[name];
  if (!span || (compare(size.exact, span[0]) >= 0 && compare(size.exact, span[1]) <= 0)) return size;
  throw new QuantityError("size_unlikely", { typed: size.text, kind: size.kind, span: span[2] });
}

// A text met before is not read again: the garage is read anew after every change, and hardly a text in it is new.
const MET = new Map<string, Map<string, Quantity | QuantityError>>();
const MOST_MET = 50_000;

type Signs = { positive: boolean; signed: boolean };

function readOnce(kind: Kind, text: string, unit: string | null, signs: Signs): Quantity {
  const way = `${kind}, ${signs.positive ? "positive" : signs.signed ? "signed" : "zero or more"}, ${unit ?? ""}`;
  let met = MET.get(way);
  if (!met || met.size > MOST_MET) {
    met = new Map();
    MET.set(way, met);
  }
  let found = met.get(text);
  if (found === undefined) {
    found = readOrRefuse(kind, text, unit, signs);
    met.set(text, found);
  }
  if (found instanceof QuantityError) throw found;
  return found;
}

function readOrRefuse(kind: Kind, text: string, unit: string | null, signs: Signs): Quantity | QuantityError {
  try {
    return read(kind, text, unit, signs.positive, signs.signed);
  } catch (error) {
    if (error instanceof QuantityError) return error;
    throw error;
  }
}

/** A quantity as typed: a string, or `{value, unit}` with the value a string or a number. */
function asTyped(value: unknown): string {
  if (typeof value === "string") return value;
  if (typeof value !== "object" || value === null) throw new Misfit();
  const { value: number, unit } = value as { value?: unknown; unit?: unknown };
  if (typeof unit !== "string" || (typeof number !== "string" && typeof number !== "number")) throw new Misfit();
  return `${number} ${unit}`;
}

function text(value: unknown): string {
  if (typeof value !== "string") throw new Misfit();
  return value;
}

/** Exact: money is never a float. */
function decimal(value: unknown): Ratio {
  return readNumber(text(value));
}

function hours(value: unknown): Ratio {
  const read = decimal(value);
  if (read.n < 0n) throw new Misfit();
  return read;
}

function whole(value: unknown, spec: Field): number {
  const least = spec.type === "count" ? 1 : 0;
  if (typeof value !== "number" || !Number.isInteger(value) || value < least || value > spec.most) throw new Misfit();
  return value;
}

function flag(value: unknown): boolean {
  if (typeof value !== "boolean") throw new Misfit();
  return value;
}

function choice(value: unknown, spec: Field): string {
  if (!spec.of.includes(text(value))) throw new Misfit();
  return value as string;
}

function references(value: unknown): string[] {
  if (!Array.isArray(value)) throw new Misfit();
  return [...new Set(value.map(text))].sort();
}

const PLAIN: Readonly<Record<string, (value: unknown, spec: Field) => unknown>> = {
  text,
  moment: text,
  ref: text,
  money: decimal,
  hours,
  fraction: decimal,
  count: whole,
  integer: whole,
  flag,
  choice,
  refs: references,
};
