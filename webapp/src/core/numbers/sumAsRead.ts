/**
 * The plain sum of readings, exact and in the units they were typed in: beside the rounded result with its ± stands what
 * one gets by adding up the displays on paper. Pounds and ounces come out as pounds and ounces.
 */

import { factor, MINUS, type Quantity } from "./quantity";
import { add, compare, divide, multiply, negate, powerOfTen, type Ratio, ratio, ZERO } from "./ratio";

/** A reading and whether it is added (1) or taken off (-1). */
export type Term = readonly [Quantity, 1 | -1];

const MOST_PLACES = 8;
const FINEST = 64n; // of a typed fraction's lower number
const OUNCES = 16n; // in a pound

/** Null without a reading, and where pounds and kilograms meet: they have no sum on paper. */
export function sumAsRead(terms: readonly Term[]): string | null {
  const units = new Set(terms.map(([{ unit }]) => unit));
  const sum = terms.reduce((all, [{ exact }, sign]) => add(all, sign > 0 ? exact : negate(exact)), ZERO);
  const sign = compare(sum, ZERO) < 0 ? MINUS : "";
  const size = sign ? negate(sum) : sum;
  const hasFraction = terms.some(([{ reads }]) => reads.includes("/"));
  const places = Math.max(0, ...terms.map(([{ reads }]) => /\.(\d+)/.exec(reads)?.[1]?.length ?? 0));
  const within = (unit: string) => written(divide(size, factor("mass", unit)), places, hasFraction);
  const [only] = units;
  const text =
    units.size === 1 && only !== "lb oz"
      ? withUnit(within(only!), only!)
      : [...units].every((unit) => ["lb", "oz", "lb oz"].includes(unit))
        ? units.size && compound(size, places, hasFraction)
        : [...units].every((unit) => ["g", "kg"].includes(unit))
          ? withUnit(within("kg"), "kg")
          : null;
  return text ? sign + text : null;
}

function withUnit(number: string | null, unit: string): string | null {
  return number && `${number} ${unit}`;
}

function compound(size: Ratio, places: number, hasFraction: boolean): string | null {
  const ounces = divide(size, factor("mass", "oz"));
  const pounds = ounces.n / ounces.d / OUNCES;
  const rest = written(add(ounces, ratio(-pounds * OUNCES)), places, hasFraction);
  if (rest === null) return null;
  return pounds ? `${pounds} lb ${rest} oz` : `${rest} oz`;
}

/**
 * A number that is not below zero, exact: as a ruler's fraction where such were typed; else with as many places as were
 * typed or as it takes; thirds and their like stay what they are.
 */
function written(number: Ratio, places: number, hasFraction: boolean): string | null {
  const isFine = hasFraction && number.d > 1n && number.d <= FINEST;
  if (isFine && (number.d & (number.d - 1n)) === 0n) return mixed(number);
  for (let at = places; at <= MOST_PLACES; at++) {
    const { n, d } = multiply(number, powerOfTen(at));
    if (d !== 1n) continue;
    const digits = String(n).padStart(at + 1, "0");
    return at ? `${digits.slice(0, -at)}.${digits.slice(-at)}` : digits;
  }
  return isFine ? mixed(number) : null;
}

function mixed({ n, d }: Ratio): string {
  const whole = n / d;
  return `${whole ? `${whole} ` : ""}${n % d}/${d}`;
}
