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
import { factor, type Quantity, readNumber } from "./quantity";
import { compare, divide, fromNumber, multiply, type Ratio, ratio } from "./ratio";
import { digitsOf, exponentOf, marginPlaces, rounded, sign } from "./rounded";
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
const COMPOUND_MOST = 2;
const PLAIN_MOST = 4;
const HOURS_MOST = 3;
const FINER = 5; // common practice, no source
const FOOT2 = ratio(9_290_304n, 100_000_000n);
const HUNDRED = ratio(100n);
/** Shown beside a reading typed in the other system, when the garage does not count in that system itself. */
const BESIDE_METRIC: Readonly<Record<string, string>> = {
  kg: "lb",
  g: "oz",
  t: "lb",
  mm: "in",
  cm: "in",
  m: "in",
  L: "gal_us",
  ml: "gal_us",
};
const BESIDE_OTHERS: Readonly<Record<Kind, string>> = { mass: "kg", length: "mm", volume: "L" };
/** Label, one in m², decimals, and the least that is shown in it, in m². */
type Area = readonly [string, Ratio, number, Ratio];
const AREAS: Readonly<Record<string, readonly [Area, Area]>> = {
  mm: [
    ["m²", ratio(1n), 2, ratio(1n, 10n)],
    ["cm²", ratio(1n, 10_000n), 1, ratio(0n)],
  ],
  in: [
    ["ft²", FOOT2, 2, FOOT2],
    ["in²", divide(FOOT2, ratio(144n)), 1, ratio(0n)],
  ],
};

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

/** A length to the nearest `step` (a plain decimal, in `unit`), or the next above: "1240 mm" of 1.2368 and "10". */
export function showStepped(m: number, unit: string, step: string, up = false): string {
  const width = readNumber(step);
  const steps = rounded(divide(divide(fromNumber(m), factor("length", unit)), width), 0, up);
  const places = step.split(".")[1]?.length ?? 0;
  const label = DIMENSIONS.length.units[unit]?.label ?? unit;
  return single(multiply(ratio(steps), width), null, label, [places, places], false).text;
}

/** An area beside lengths in `lengthUnit`: "0.42 m²", "25.0 cm²", "4.52 ft²", "12.5 in²". `U` in m². */
export function showArea(m2: number, lengthUnit: string, U: number | null = null): string {
  const exact = fromNumber(m2);
  const [large, small] = AREAS[lengthUnit] as readonly [Area, Area];
  const [label, one, places] = compare(exact, large[3]) >= 0 ? large : small;
  return single(divide(exact, one), marginOf(U, one), label, [places, PLAIN_MOST], false).text;
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

/** An amount with two decimals, none when it is whole: "120 EUR", "12.50 EUR". Text must be a plain decimal. */
export function showMoney(amount: string | number | Ratio, currency = "", signed = false): string {
  const exact = typeof amount === "string" ? readNumber(amount) : exactOf(amount);
  const places = rounded(exact, 2) % 100n === 0n ? 0 : 2;
  return single(exact, null, currency, [places, places], signed).text;
}

/** Hours as they were typed, without zeros at the end: "0.25 h", "2.5 h", "3 h". */
export function showHours(hours: string | number | Ratio): string {
  const exact = typeof hours === "string" ? readNumber(hours) : exactOf(hours);
  let places = HOURS_MOST;
  while (places && rounded(exact, places) % 10n === 0n) places--;
  return single(exact, null, "h", [places, places], false).text;
}

/** A number in a unit of no table ("kg m²", "kg/kW", none) with two decimals, or as its `U` deserves. */
export function showPlain(value: number | Ratio, label = "", U: number | null = null, signed = false): string {
  return single(exactOf(value), marginOf(U, ratio(1n)), label, [2, PLAIN_MOST], signed).text;
}

/**
 * The reading as it was read, and in the other system: "6 3/8 oz · 0.181 kg".
 *
 * `unit`: the unit the garage counts in; it is the other one when it is of the other system. The second value
 * ends where the typed one does.
 */
export function showBoth(reading: Quantity, unit: string | null = null): string {
  return `${reading.reads} · ${other(reading, unit)}`;
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

function other(reading: Quantity, unit: string | null): string {
  const units = DIMENSIONS[reading.kind].units;
  const metric = (name: string) => units[name.split(" ")[0] ?? ""]?.metric;
  const typed = reading.unit.split(" ").pop() ?? "";
  const beside = (metric(typed) ? BESIDE_METRIC[typed] : undefined) ?? BESIDE_OTHERS[reading.kind];
  const [large, small] = (unit && metric(unit) !== metric(typed) ? unit : beside).split(" ") as [string, string?];
  const one = factor(reading.kind, small ?? large);
  const most = small === undefined ? (units[large]?.most_places ?? 0) : COMPOUND_MOST;
  const exact = divide(reading.exact, one);
  const places = Math.min(placesBeside(reading, exact, one), most);
  if (small === undefined) return single(exact, null, units[large]?.label ?? large, [places, places], false).text;
  return double(exact, null, divide(factor(reading.kind, large), one).n, [large, small], false, places).text;
}

/** Decimals of `exact` that tell what was typed: to its last digit, a fraction to a third of it, two digits at least. */
function placesBeside(reading: Quantity, exact: Ratio, one: Ratio): number {
  const thirds = ratio(reading.reads.includes("/") ? 3n : 1n);
  const lastDigit = divide(divide(fromNumber(reading.last_digit), one), thirds);
  const size = exact.n < 0n ? ratio(-exact.n, exact.d) : exact;
  return Math.max(-exponentOf(lastDigit), size.n === 0n ? 0 : 1 - exponentOf(size), 0);
}

/** `places`: decimals without a margin, and the most with one. */
function single(
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
function double(
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

function exactOf(value: number | Ratio): Ratio {
  return typeof value === "number" ? fromNumber(value) : value;
}

/** U in the unit that has `one` of SI; null when there is none. */
function marginOf(U: number | null, one: Ratio): Ratio | null {
  if (U === null || U === 0) return null;
  if (!(U > 0)) throw new RangeError(`an uncertainty cannot be ${U}`);
  return divide(fromNumber(U), one);
}
