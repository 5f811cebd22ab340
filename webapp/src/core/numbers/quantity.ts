/**
 * What a person typed for a mass, a length or a volume, read exactly or refused with a sentence.
 *
 * Read: a number and a unit (`18 lb`, `0.25oz`, `420 g`, `98 1/4"`), a fraction (`6 3/8 oz`, `6⅜ oz`, `6-3/8 oz`,
 * `1/2 in`), two units in falling order (`3 lb 4.5 oz`, `8 ft 2 in`, `1 kg 200 g`, `11 st 6 lb`), or a bare number
 * when the unit was picked beside it (`52`). Capitals, missing spaces, dots after units, `lbs`, `pounds`, `#` and
 * the fractions on a phone's keyboard are all fine; the server's `core/numbers/units` lists every word, and
 * `generated/units` is its copy, with exact ratios.
 *
 * Refused, each with a code of the error table and what to type instead: nothing, too long, a decimal comma,
 * an exponent, a minus sign before anything but a place on an axis, zero where a thing must weigh something, a sum
 * or a count, a number with a gap, a unit of something else, a word that could mean two units, a missing unit, two
 * units in the wrong order or of two systems, sixteen ounces after pounds, two fractions, and sizes no car has.
 * Nothing is guessed.
 */

import { DIMENSIONS, type Dimension, type Kind } from "../../generated/units";
import { add, compare, divide, multiply, negate, type Ratio, ratio, toNumber, ZERO } from "./ratio";
import {
  type Digits,
  LONGEST,
  QuantityError,
  readDigits,
  refuseAtSight,
  sameMarks,
  tidy,
  trim,
  unitWord,
} from "./typed";

export type { Kind } from "../../generated/units";
export { QuantityError } from "./typed";

/**
 * A reading as typed and as read.
 *
 * `exact`: the value in SI units; `value`: its nearest double. `unit`: the unit it was typed in ("kg", "lb oz",
 * "gal_us" …). `reads`: the reading spelled out ("6 3/8 oz"). `last_digit`: the place of the last typed digit in SI
 * units (0.1 lb for "18.5 lb", 1/8 oz for "6 3/8 oz"), which stands in for a scale division nobody noted.
 */
export type Quantity = {
  readonly kind: Kind;
  readonly exact: Ratio;
  readonly value: number;
  readonly text: string;
  readonly unit: string;
  readonly reads: string;
  readonly last_digit: number;
};

/** A number and the name of its unit. */
type Part = readonly [Digits, string];

/** The true minus sign, as shown; either sign may be typed. */
export const MINUS = "\u2212";

/** Of every dimension: word → name of the unit it means. */
const NAMES = new Map(Object.values(DIMENSIONS).map((dimension) => [dimension, namesOf(dimension)]));
const FACTORS = new Map(Object.entries(DIMENSIONS).flatMap(([kind, { units }]) => factorsOf(kind, units)));

const PIECE = /([0-9.][0-9./ ]*)((?:[^0-9.]|\.(?![0-9]))*)/g;

/** A typed mass in kg. `positive` refuses zero. Throws `QuantityError`. */
export function readMass(text: string, defaultUnit: string | null = null, positive = false): Quantity {
  return read("mass", text, defaultUnit, positive);
}

/** A typed length in m. `positive` refuses zero. Throws `QuantityError`. */
export function readLength(text: string, defaultUnit: string | null = null, positive = false): Quantity {
  return read("length", text, defaultUnit, positive);
}

/** A typed place along an axis in m: a length that may be less than nothing (left of the centreline). */
export function readPosition(text: string, defaultUnit: string | null = null): Quantity {
  return read("length", text, defaultUnit, false, true);
}

/**
 * Read `text` as a quantity of `kind`; a bare number takes `defaultUnit`, any word the table knows.
 *
 * `positive` refuses zero; `signed` takes a minus sign. Throws `QuantityError`.
 */
export function read(
  kind: Kind,
  text: string,
  defaultUnit: string | null = null,
  positive = false,
  signed = false,
): Quantity {
  const dimension = DIMENSIONS[kind];
  return telling(text, kind, dimension.example, () => {
    const [size, negative] = plain(text, signed);
    const parts = partsOf(dimension, size, defaultUnit);
    checkCompound(kind, parts);
    const sum = parts.reduce((whole, [number, unit]) => add(whole, multiply(number.exact, factor(kind, unit))), ZERO);
    checkSize(dimension, sum, positive);
    const exact = negative ? negate(sum) : sum;
    const [number, unit] = parts[parts.length - 1] as Part;
    const last_digit = toNumber(multiply(number.place, factor(kind, unit)));
    const units = parts.map(([, name]) => name).join(" ");
    const reads = (exact.n < 0n ? MINUS : "") + spell(dimension, parts);
    return { kind, exact, value: toNumber(exact), text, unit: units, reads, last_digit };
  });
}

/** A plain decimal without a unit, as money, hours and fractions are kept; a leading minus is allowed. */
export function readNumber(text: string): Ratio {
  return telling(text, "number", "12.50", () => {
    const [size, negative] = plain(text, true);
    const { exact } = readDigits(size);
    return negative ? negate(exact) : exact;
  });
}

/** One `unit` in SI units, exactly. */
export function factor(kind: Kind, unit: string): Ratio {
  const known = FACTORS.get(`${kind} ${unit}`);
  if (!known) throw new RangeError(`no unit ${unit} of ${kind}`);
  return known;
}

function factorsOf(kind: string, units: Dimension["units"]): [string, Ratio][] {
  return Object.entries(units).map(([name, unit]) => [
    `${kind} ${name}`,
    ratio(BigInt(unit.ratio[0]), BigInt(unit.ratio[1])),
  ]);
}

function namesOf(dimension: Dimension): Map<string, string> {
  const units = Object.entries(dimension.units);
  return new Map(units.flatMap(([name, unit]) => unit.words.map((word) => [word, name] as const)));
}

/** Runs `read`; a refusal learns what was typed and what a good answer looks like. */
function telling<T>(text: string, kind: string, example: string, read: () => T): T {
  try {
    return read();
  } catch (refusal) {
    if (!(refusal instanceof QuantityError)) throw refusal;
    const typed = Array.from(text).slice(0, LONGEST).join("");
    throw new QuantityError(refusal.code, { typed, kind, example, ...refusal.data });
  }
}

/** [the text without a minus sign, whether it had one that counts]. */
function plain(text: string, signed: boolean): [string, boolean] {
  const tidied = tidy(text);
  const negative = tidied.startsWith("-");
  if (negative && !signed) {
    throw new QuantityError("quantity_negative", { instead: tidied.replace(/^[- ]+|[- ]+$/g, "") });
  }
  const size = negative ? trim(tidied.slice(1)) : tidied;
  refuseAtSight(size);
  return [size, negative];
}

function partsOf(dimension: Dimension, text: string, defaultUnit: string | null): Part[] {
  const pieces = [...text.matchAll(PIECE)];
  if (pieces.map((piece) => piece[0]).join("") !== text) throw new QuantityError("quantity_unreadable");
  const numbers = pieces.map((piece) => readDigits(trim(piece[1] ?? "")));
  const words = pieces.map((piece) => unitWord(piece[2] ?? ""));
  const [number, word] = [numbers[0] as Digits, words[0] as string];
  if (pieces.length === 1) return [[number, unitOf(dimension, number, word, defaultUnit)]];
  return pair(numbers, compoundUnits(dimension, numbers, words));
}

/** The unit `word` names; `defaultUnit` stands in for a missing word and decides an unclear one. */
function unitOf(dimension: Dimension, number: Digits, word: string, defaultUnit: string | null): string {
  const standIn = unitWord(sameMarks(defaultUnit ?? ""));
  const named = NAMES.get(dimension)?.get(standIn);
  if (named && dimension.unclear[word]?.includes(named)) return named;
  const several = standIn === "" ? [] : standIn.split(" ");
  const known = several.flatMap((part) => NAMES.get(dimension)?.get(part) ?? []);
  if (word === "" && !named && known.length === several.length) {
    const asked = known.length ? known : dimension.asked;
    throw new QuantityError("quantity_unit_missing", { instead: choices(dimension, number, asked) });
  }
  return unitNamed(dimension, number, word || standIn);
}

function unitNamed(dimension: Dimension, number: Digits, word: string): string {
  const unclear = Object.hasOwn(dimension.unclear, word) ? dimension.unclear[word] : undefined;
  if (unclear) {
    throw new QuantityError("quantity_unit_unclear", { unit: word, instead: choices(dimension, number, unclear) });
  }
  const name = NAMES.get(dimension)?.get(word);
  if (name) return name;
  const labels = dimension.asked.map((unit) => label(dimension, unit));
  const units = `${labels.slice(0, -1).join(", ")} or ${labels[labels.length - 1]}`;
  throw new QuantityError("quantity_unit_unknown", { unit: word, units });
}

/** The units of two or more parts: in falling order, of one system, the last one not left out. */
function compoundUnits(dimension: Dimension, numbers: readonly Digits[], words: readonly string[]): string[] {
  const units = words.flatMap((word, at) => (word ? [unitNamed(dimension, numbers[at] as Digits, word)] : []));
  if (units.length < words.length) {
    throw new QuantityError("quantity_unit_missing", { instead: completed(dimension, numbers, units) });
  }
  if (falling(dimension, units)) return units;
  if (falling(dimension, [...units].reverse())) {
    const instead = spell(dimension, pair(numbers, units).reverse());
    throw new QuantityError("quantity_order", { instead });
  }
  throw new QuantityError("quantity_mix", { units: units.map((unit) => label(dimension, unit)).join(" and ") });
}

/** `3 lb 4` may have meant `3 lb 4 oz`. */
function completed(dimension: Dimension, numbers: readonly Digits[], units: readonly string[]): string {
  const last = units[units.length - 1];
  const follower = last !== undefined && units.length === numbers.length - 1 ? dimension.smaller[last] : undefined;
  return follower ? spell(dimension, pair(numbers, [...units, follower])) : dimension.example;
}

function falling(dimension: Dimension, units: readonly string[]): boolean {
  return units.slice(1).every((small, at) => dimension.smaller[units[at] as string] === small);
}

/** `3.5 lb 4 oz` could mean two things, and `3 lb 45 oz` is most likely a slip for 4.5. */
function checkCompound(kind: Kind, parts: readonly Part[]): void {
  parts.slice(1).forEach(([following, small], at) => {
    const [number, large] = parts[at] as Part;
    if (/[./]/.test(number.reads))
      throw new QuantityError("quantity_two_fractions", { part: `${number.reads} ${large}` });
    const most = Number(divide(factor(kind, large), factor(kind, small)).n);
    if (compare(following.exact, ratio(BigInt(most))) < 0) return;
    throw new QuantityError("quantity_carry", { part: `${following.reads} ${small}`, unit: small, large, most });
  });
}

function checkSize(dimension: Dimension, exact: Ratio, positive: boolean): void {
  if (positive && exact.n === 0n) throw new QuantityError("quantity_zero");
  const [limit, most] = dimension.most;
  if (compare(exact, ratio(BigInt(limit))) > 0) throw new QuantityError("quantity_absurd", { most });
}

function pair(numbers: readonly Digits[], units: readonly string[]): Part[] {
  return numbers.map((number, at) => [number, units[at] as string]);
}

function choices(dimension: Dimension, number: Digits, units: readonly string[]): string {
  return units.map((unit) => spell(dimension, [[number, unit]])).join(" or ");
}

function spell(dimension: Dimension, parts: readonly Part[]): string {
  return parts.map(([number, unit]) => `${number.reads} ${label(dimension, unit)}`).join(" ");
}

function label(dimension: Dimension, unit: string): string {
  return dimension.units[unit]?.label ?? unit;
}
