/**
 * How a number is written for a person; it alone has anything rounded (`rounded`).
 *
 * A driver in gloves reads it at arm's length, so: no more digits than the value deserves, the unit last, a true
 * minus sign (−), and no thousands marks, so that what is shown can be typed back.
 *
 * - With its uncertainty U (95 %): U keeps two digits when its first is 1, else one; the value ends at the same
 *   place: "912.4 ± 1.2 kg", "3.1 ± 0.8 kg", "910 ± 30 kg".
 * - Without: a fixed number of decimals for each unit: kg 2, lb 2, oz 1, g 0, mm 0, in 2, L 1.
 * - Two units: "15 lb 6 oz", "3 lb 4.5 oz", "23 lb" when nothing is left over, "−3 oz" below a pound. With U it is
 *   "15 lb 6 oz ± 2 oz"; when U is a pound or more, ounces say nothing and pounds stand alone: "2011 ± 3 lb".
 * - Rounding is half away from zero, of the exact value of the double. Nothing is shown as "−0". What is to be kept in
 *   hand is rounded up, and so is a U that has no place for the digits it deserves [JCGM 100:2008, 7.2.6].
 *
 * The functions named `show…` give text. `layOut` gives the same text in parts, for big figures beside small units.
 */

import { DIMENSIONS, type Kind } from "../../generated/units";
import { factor } from "./quantity";
import { compare, divide, fromNumber, multiply, type Ratio, ratio } from "./ratio";
import { digitsOf, marginPlaces, rounded, sign } from "./rounded";
import { expanded, type Uncertain, u, uncertain } from "./uncertain";

/** `sign`: "", "−" or "+". `parts` and `within`: [digits, unit]; `within` is what follows ±, or empty. */
export type Shown = {
  readonly sign: string;
  readonly parts: readonly Piece[];
  readonly within: readonly Piece[];
  readonly text: string;
};
export type Piece = readonly [string, string];
/** A result as `calc` gives it: `value` and `u` in SI, `shown` in the unit asked for. */
export type Result = { value: number; unit: string; u: number; shown: string };

const COMPOUND_PLACES = 1;
export const COMPOUND_MOST = 2;
export const PLAIN_MOST = 4;
const FINER = 5; // common practice, no source
const HUNDRED = ratio(100n);
/** A mass in `unit` ("kg", "g", "lb", "oz", "lb oz" …). `U`: expanded uncertainty in kg. `signed` writes "+" too. */
export function showMass(kg: number | Ratio, unit: string, U: number | null = null, signed = false): string {
  return layOut("mass", kg, unit, U, signed).text;
}

/** A mass to keep in hand: rounded up, to the place that `U` (kg) deserves, so that it is never too little. */
export function showGuard(kg: number, unit: string, U: number | null = null): string {
  const { sign: before, parts } = layOut("mass", kg, unit, U, false, true);
  return before + join(parts);
}

/** What to keep above the minimum, rounded up, to about a digit more than `U` (kg), what the weight is known to. */
export function showInHand(kg: number, unit: string, U: number): string {
  return showGuard(kg, unit, U / FINER);
}

/** A mass alone, to the nearest of the place that `U` (kg) deserves: as it is typed, without a "±". */
export function showClaim(kg: number, unit: string, U: number): string {
  const { sign: before, parts } = layOut("mass", kg, unit, U);
  return before + join(parts);
}

/** A doubt alone (kg), in the form it has behind a "±": "0.4 kg", "12 oz", "3 lb". */
export function showDoubt(U: number, unit: string): string {
  return join(layOut("mass", 0, unit, U).within);
}

/** A length in `unit` ("mm", "in", "ft in" …). `U`: expanded uncertainty in m. */
export function showLength(m: number | Ratio, unit: string, U: number | null = null, signed = false): string {
  return layOut("length", m, unit, U, signed).text;
}

/** A volume in `unit` ("L", "gal_us", "gal_imp"). `U`: expanded uncertainty in m³. */
export function showVolume(m3: number | Ratio, unit: string, U: number | null = null, signed = false): string {
  return layOut("volume", m3, unit, U, signed).text;
}

/** A share as per cent with one decimal, or as its `U` (a fraction too) deserves: "51.3 ± 0.4 %". */
export function showPercent(fraction: number | Ratio, U: number | null = null): string {
  const margin = marginOf(U, ratio(1n, 100n));
  return single(multiply(exactOf(fraction), HUNDRED), margin, "%", [1, 4], false).text;
}

/** A probability as per cent that never claims certainty: "less than 0.1 %", "3.2 %", "more than 99.9 %". */
export function showChance(probability: number): string {
  const exact = multiply(fromNumber(probability), HUNDRED);
  if (compare(exact, ratio(1n, 10n)) < 0) return "less than 0.1 %";
  return compare(exact, ratio(999n, 10n)) > 0 ? "more than 99.9 %" : showPercent(probability);
}

/** Odds as whole per cent, never none and never all: "60 %". */
export function showOdds(probability: number): string {
  const exact = fromNumber(Math.min(Math.max(probability, 0.01), 0.99));
  return single(multiply(exact, HUNDRED), null, "%", [0, 0], false).text;
}

/** A number in a unit of no table ("kg m²", "kg/kW", none) with two decimals, or as its `U` deserves. */
export function showPlain(value: number | Ratio, label = "", U: number | null = null, signed = false): string {
  return single(exactOf(value), marginOf(U, ratio(1n)), label, [2, PLAIN_MOST], signed).text;
}

/** A result as `calc` gives it: `{value, unit, u, shown}`, value and u in SI, `shown` in `unit`. */
export function number(item: Uncertain | number, kind: Kind | "fraction", unit: string, k = 2): Result {
  const held = typeof item === "number" ? uncertain(item) : item;
  const margin = expanded(held, k);
  if (kind === "fraction") {
    return { value: held.value, unit: "1", u: u(held), shown: showPercent(held.value, margin) };
  }
  const shown = layOut(kind, held.value, unit, margin).text;
  return { value: held.value, unit: DIMENSIONS[kind].si, u: u(held), shown };
}

/**
 * The value in `unit` as parts. Two units with a space between ("lb oz", "ft in") are shown together.
 *
 * `up` rounds towards more instead of to the nearest.
 */
export function layOut(
  kind: Kind,
  si: number | Ratio,
  unit: string,
  U: number | null = null,
  signed = false,
  up = false,
): Shown {
  const [large, small] = unit.split(" ") as [string, string?];
  const one = factor(kind, small ?? large);
  const exact = divide(exactOf(si), one);
  const margin = marginOf(U, one);
  if (small === undefined) {
    const named = DIMENSIONS[kind].units[unit];
    if (!named) throw new RangeError(`no unit ${unit} of ${kind}`);
    return single(exact, margin, named.label, [named.places, named.most_places], signed, up);
  }
  const many = divide(factor(kind, large), one).n;
  if (margin && rounded(margin, 0) >= many) {
    return single(divide(exact, ratio(many)), divide(margin, ratio(many)), large, [0, 0], signed, up);
  }
  return double(exact, margin, many, [large, small], signed, COMPOUND_PLACES, up);
}

/** `places`: decimals without a margin, and the most with one. */
export function single(
  exact: Ratio,
  margin: Ratio | null,
  label: string,
  places: [number, number],
  signed: boolean,
  up = false,
): Shown {
  const [ends, within] = margin ? marginPlaces(margin, places[1]) : [places[0], null];
  const scaled = rounded(exact, ends, up);
  const around: Piece[] = within === null ? [] : [[digitsOf(within, ends), label]];
  return shown(sign(scaled, signed), [[digitsOf(scaled, ends), label]], around);
}

/** `exact` and `margin` in the smaller unit, of which the larger has `many`. */
export function double(
  exact: Ratio,
  margin: Ratio | null,
  many: bigint,
  labels: readonly [string, string],
  signed: boolean,
  places = COMPOUND_PLACES,
  up = false,
): Shown {
  const [ends, within] = margin ? marginPlaces(margin, COMPOUND_MOST) : [places, null];
  const scaled = rounded(exact, ends, up);
  const size = scaled < 0n ? -scaled : scaled;
  const whole = size / (many * 10n ** BigInt(ends));
  const rest = size % (many * 10n ** BigInt(ends));
  const dropped = within === null ? digitsOf(rest, ends).replace(/\.0+$/, "") : digitsOf(rest, ends);
  const pieces: Piece[] = [];
  if (whole !== 0n) pieces.push([`${whole}`, labels[0]]);
  if (whole === 0n || rest !== 0n || within !== null) pieces.push([dropped, labels[1]]);
  return shown(sign(scaled, signed), pieces, within === null ? [] : [[digitsOf(within, ends), labels[1]]]);
}

function shown(sign: string, parts: readonly Piece[], within: readonly Piece[]): Shown {
  const [first, around] = [parts[0], within[0]];
  const text =
    parts.length === 1 && first && around
      ? `${first[0]} ± ${around[0]} ${first[1]}`
      : around
        ? `${join(parts)} ± ${join(within)}`
        : join(parts);
  return { sign, parts, within, text: (sign + text).replace(/ +$/, "") };
}

function join(parts: readonly Piece[]): string {
  return parts.map(([digits, unit]) => `${digits} ${unit}`).join(" ");
}

export function exactOf(value: number | Ratio): Ratio {
  return typeof value === "number" ? fromNumber(value) : value;
}

/** U in the unit that has `one` of SI; null when there is none. */
export function marginOf(U: number | null, one: Ratio): Ratio | null {
  if (U === null || U === 0) return null;
  if (!(U > 0)) throw new RangeError(`an uncertainty cannot be ${U}`);
  return divide(fromNumber(U), one);
}
