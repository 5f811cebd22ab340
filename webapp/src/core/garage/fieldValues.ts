/**
 * One value of one record, read as its field's type says.
 *
 * Quantities are read by `core/numbers/quantity`, everything else is checked for its shape only. What does not fit
 * throws `QuantityError` (with its sentence) or `Misfit`; the reader of the garage makes warnings of both.
 */

import type { Field } from "../../journal/kinds";
import { type Kind, type Quantity, QuantityError, read, readNumber } from "../numbers/quantity";
import { compare, type Ratio } from "../numbers/ratio";

/** m; nothing of a car lies farther than this from where its axes begin: common practice, no source. */
export const FARTHEST = 10;

/** A value of the wrong shape. */
export class Misfit extends Error {}

/** The value of a field. `unit` is what a bare mass was typed in. Throws `QuantityError` or `Misfit`. */
export function readField(spec: Field, value: unknown, unit: string | null): unknown {
  const type = spec.type;
  if (type === "mass" || type === "length" || type === "volume")
    return likely(spec, readOnce(type, asTyped(value), type === "mass" ? unit : null, spec.sign));
  const plain = PLAIN[type];
  if (!plain) throw new Misfit();
  return plain(value, spec);
}

/** The size itself, if it lies where its field's do; beyond, a unit has slipped. Throws `QuantityError`. */
export function likely(spec: Field, size: Quantity): Quantity {
  if (!spec.likely) return size;
  const [least, most] = spec.likely.map((text) => readOnce(size.kind, text, null).exact) as [Ratio, Ratio];
  if (compare(size.exact, least) >= 0 && compare(size.exact, most) <= 0) return size;
  throw new QuantityError("size_unlikely", { typed: size.text, kind: size.kind, span: spec.likely.join(" to ") });
}

// A text met before is not read again: the garage is read anew after every change, and hardly a text in it is new.
const MET = new Map<string, Map<string, Quantity | QuantityError>>();
const MOST_MET = 50_000;

function readOnce(kind: Kind, text: string, unit: string | null, sign?: Field["sign"]): Quantity {
  const way = `${kind}, ${sign ?? "zero or more"}, ${unit ?? ""}`;
  let met = MET.get(way);
  if (!met || met.size > MOST_MET) {
    met = new Map();
    MET.set(way, met);
  }
  let found = met.get(text);
  if (found === undefined) {
    found = readOrRefuse(kind, text, unit, sign);
    met.set(text, found);
  }
  if (found instanceof QuantityError) throw found;
  return found;
}

function readOrRefuse(kind: Kind, text: string, unit: string | null, sign: Field["sign"]): Quantity | QuantityError {
  try {
    return read(kind, text, unit, sign === "positive", sign === "any");
  } catch (error) {
    if (error instanceof QuantityError) return error;
    throw error;
  }
}

/** A quantity as typed: a string, or `{value, unit}` with the value a string or a number. */
function asTyped(value: unknown): string {
  if (typeof value === "string") return value;
  const { value: number, unit } = Object(value) as { value?: unknown; unit?: unknown };
  if (typeof unit !== "string" || (typeof number !== "string" && typeof number !== "number")) throw new Misfit();
  return `${number} ${unit}`;
}

function text(value: unknown): string {
  if (typeof value !== "string") throw new Misfit();
  return value;
}

/** Exact: money is never a float. */
function decimal(value: unknown, { sign }: Field): Ratio {
  const read = readNumber(text(value));
  if (sign !== "any" && (read.n < 0n || (sign === "positive" && read.n === 0n))) throw new Misfit();
  return read;
}

function whole(value: unknown, spec: Field): number {
  const least = spec.type === "count" ? 1 : 0;
  if (typeof value !== "number" || !Number.isInteger(value) || value < least || value > spec.most!) throw new Misfit();
  return value;
}

function flag(value: unknown): boolean {
  if (typeof value !== "boolean") throw new Misfit();
  return value;
}

function choice(value: unknown, spec: Field): string {
  if (!spec.of!.includes(text(value))) throw new Misfit();
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
  hours: decimal,
  fraction: decimal,
  count: whole,
  integer: whole,
  flag,
  choice,
  refs: references,
  choices: (value, spec) => references(value).map((each) => choice(each, spec)),
};
